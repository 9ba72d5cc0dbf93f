import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** A load test and an estimate that each decide, in opposite directions: one of the two readings is wrong. */
export const conflictingEvidence: Rule = {
  code: "conflicting-evidence",
  stage: "conflict",
  source: "crankworthy-policy",
  standing: "our-choice",
  weigh: ({ policy, ability, reachesServiceable, loadTest, chargeSufficient }) => {
    if (!ability || reachesServiceable === undefined) return undefined;
    const estimateHigh = reachesServiceable >= policy.acceptProbability;
    const estimateLow = chargeSufficient && 1 - reachesServiceable >= policy.rejectProbability;
    if (!((loadTest === "passed" && estimateLow) || (loadTest === "failed" && estimateHigh)))
      return undefined;
    return {
      findings: [finding("ability-evidence-disagrees", "warning", { loadTest, ratio: ability.ratio.value })],
      decision: { condition: "not-established", action: "repeat" },
    };
  },
};
