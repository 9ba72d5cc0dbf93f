import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Will it start this engine on the coldest morning: told beside the verdict, it never makes a sound battery worn. */
export const requirement: Rule = {
  code: "requirement",
  stage: "fitness",
  source: "crankworthy-policy",
  standing: "our-choice",
  weigh: ({ evidence: { startProbability }, policy }) => {
    if (startProbability === undefined) return undefined;
    const shown = { probability: startProbability };
    if (startProbability >= policy.acceptProbability)
      return { findings: [finding("requirement-met", "note", shown)] };
    return {
      findings: [
        1 - startProbability >= policy.rejectProbability
          ? finding("requirement-not-met", "warning", shown)
          : finding("requirement-undecided", "note", shown),
      ],
    };
  },
};
