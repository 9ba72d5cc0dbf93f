import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/**
 * Plates above the acid: heat and gas on charge, and every reading speaks of a smaller battery, so that a low one condemns
 * nothing until the acid is up, charged and measured again.
 */
export const lowElectrolyte: Rule = {
  code: "low-electrolyte",
  stage: "hazard",
  source: "workshop-practice",
  standing: "common-practice",
  weigh: ({ evidence, policy, loadTest, reachesServiceable }) => {
    if (!evidence.electrolyteLow) return undefined;
    const findings = [finding("electrolyte-low", "warning")];
    const shownAble = loadTest === "passed" || (reachesServiceable ?? 0) >= policy.acceptProbability;
    const measured = reachesServiceable !== undefined || loadTest !== "none";
    // A failed cell stays with its own rule: nobody is asked to charge it.
    if (shownAble || !measured || evidence.missingCell) return { findings };
    return { findings, decision: { condition: "not-established", action: "charge-then-repeat" } };
  },
};
