import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Nothing valid measured what the battery can deliver: a rest voltage tells charge, not ability. */
export const noAbilityEvidence: Rule = {
  code: "no-ability-evidence",
  stage: "fitness",
  source: "crankworthy-policy",
  standing: "our-choice",
  weigh: ({ ability, loadTest }) =>
    ability || loadTest !== "none"
      ? undefined
      : {
          findings: [finding("missing-ability-measurement", "warning")],
          decision: { condition: "not-established", action: "repeat" },
        },
};
