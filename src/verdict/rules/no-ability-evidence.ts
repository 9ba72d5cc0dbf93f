import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Nothing valid measured what the battery can deliver: a rest voltage tells charge, not ability. */
export const noAbilityEvidence: Rule = {
  code: "no-ability-evidence",
  stage: "fitness",
  source: "crankworthy-policy",
  standing: "our-choice",
  weigh: ({ evidence, ability, loadTest, untestable }) =>
    // Nobody is asked to load a frozen or damaged battery, or one of another voltage.
    ability || loadTest !== "none" || untestable
      ? undefined
      : {
          findings: evidence.abilityNotComparable ? [] : [finding("missing-ability-measurement", "warning")],
          decision: { condition: "not-established", action: "repeat" },
        },
};
