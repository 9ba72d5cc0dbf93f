import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** One cell's gravity far below the others. It condemns only after a completed charge. */
export const cellSpread: Rule = {
  code: "cell-spread",
  stage: "cells",
  source: "tm-9-6140",
  standing: "read",
  weigh: ({ evidence, policy, loadTest }) => {
    const { cells } = evidence;
    if (!cells || cells.exceedProbability < 0.5) return undefined;
    const shown = { spread: cells.spread, weakestCell: cells.weakestCell };
    const limit = {
      value: policy.cellSpread,
      unit: "1",
      source: "tm-9-6140",
      standing: "our-choice",
    } as const;
    const proven =
      evidence.chargeCompleted && cells.mixed && cells.exceedProbability >= policy.rejectProbability;
    if (!proven) return { findings: [finding("cell-spread-unproven", "warning", shown, limit)] };
    return {
      findings: [finding("cell-spread", "defect", shown, limit)],
      decision:
        loadTest === "passed"
          ? { condition: "not-established", action: "repeat" }
          : { condition: "internally-failed", action: "retire" },
    };
  },
};
