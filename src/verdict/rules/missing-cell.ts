import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Rest voltage short of a whole cell. It condemns only after a completed charge: six empty cells read the same. */
export const missingCell: Rule = {
  code: "missing-cell",
  stage: "cells",
  source: "tm-9-6140",
  standing: "read",
  weigh: ({ evidence, policy, loadTest, reachesServiceable }) => {
    const { missingCell } = evidence;
    if (!missingCell) return undefined;
    const shown = { cells: missingCell.cells, shortfallVolts: missingCell.shortfallVolts };
    // Full ability at the rest voltage of five cells: one of the two readings is wrong, and a charge tells which.
    const contradicted = loadTest === "passed" || (reachesServiceable ?? 0) >= policy.acceptProbability;
    const unproven = [finding("cell-missing-unproven", "warning", shown)];
    if (contradicted)
      return {
        findings: unproven,
        decision: {
          condition: "not-established",
          action: evidence.chargeCompleted ? "repeat" : "charge-then-repeat",
        },
      };
    if (!evidence.chargeCompleted) return { findings: unproven };
    return {
      findings: [finding("cell-missing", "defect", shown)],
      decision: { condition: "internally-failed", action: "retire" },
    };
  },
};
