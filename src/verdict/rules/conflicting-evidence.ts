import { conformanceProbability } from "../conformance.js";
import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Two readings of ability that each decide, in opposite directions, a load test or two estimates: one is wrong. */
export const conflictingEvidence: Rule = {
  code: "conflicting-evidence",
  stage: "conflict",
  source: "crankworthy-policy",
  standing: "our-choice",
  weigh: ({ evidence, policy, loadTest, chargeSufficient, doubtedInVehicle }) => {
    let high = loadTest === "passed";
    let low = loadTest === "failed";
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    for (const { ratio } of evidence.abilities) {
      const reaches = conformanceProbability(ratio, { lower: policy.serviceableFraction });
      if (reaches >= policy.acceptProbability) high = true;
      // Short of charge, or with a fault in the vehicle to blame, a low estimate contradicts nothing.
      else if (chargeSufficient && !doubtedInVehicle && 1 - reaches >= policy.rejectProbability) low = true;
      lowest = Math.min(lowest, ratio.value);
      highest = Math.max(highest, ratio.value);
    }
    if (!high || !low || evidence.abilities.length === 0) return undefined;
    return {
      findings: [
        finding("ability-evidence-disagrees", "warning", {
          lowest,
          highest,
          ...(loadTest !== "none" && { loadTest }),
        }),
      ],
      decision: { condition: "not-established", action: "repeat" },
    };
  },
};
