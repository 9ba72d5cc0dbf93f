import type { SourceId } from "../../sources/index.js";
import { finding } from "../finding.js";
import type { DecisionPolicy } from "../policy.js";
import { provenSpread, type Rule } from "../rule.js";

/** Where each selectable limit was read. */
const SPREAD_SOURCES = {
  0.05: "tm-5-3805-281-spread",
  0.03: "marine-manual-spread",
  0.025: "tm-9-6140-spread",
} as const satisfies Record<DecisionPolicy["cellSpread"], SourceId>;

/** One cell's gravity far below the others. It condemns only after a completed charge. */
export const cellSpread: Rule = {
  code: "cell-spread",
  stage: "cells",
  source: "tm-5-3805-281-spread",
  standing: "read",
  weigh: ({ evidence, policy, loadTest }) => {
    const { cells } = evidence;
    if (!cells || cells.exceedProbability < 0.5) return undefined;
    const shown = { spread: cells.spread, weakestCell: cells.weakestCell };
    const limit = {
      value: policy.cellSpread,
      unit: "1",
      source: SPREAD_SOURCES[policy.cellSpread],
      standing: "read",
    } as const;
    if (!provenSpread(evidence, policy))
      return { findings: [finding("cell-spread-unproven", "warning", shown, limit)] };
    return {
      findings: [finding("cell-spread", "defect", shown, limit)],
      decision:
        loadTest === "passed"
          ? { condition: "not-established", action: "repeat" }
          : { condition: "internally-failed", action: "retire" },
    };
  },
};
