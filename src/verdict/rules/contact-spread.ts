import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Readings that repeat well while the clamps stay and differ once they are set anew: contact resistance, not the battery. */
export const contactSpread: Rule = {
  code: "contact-spread",
  stage: "measurement",
  source: "crankworthy-policy",
  standing: "our-choice",
  weigh: ({ evidence: { contact }, policy, reachesServiceable }) => {
    if (!contact || contact.between <= contact.limit) return undefined;
    const found = finding(
      "contact-spread",
      "warning",
      { between: contact.between, within: contact.within },
      { value: contact.limit, unit: "1", source: "crankworthy-policy", standing: "our-choice" },
    );
    // A bad contact only ever lowers a reading: what reaches the limit in spite of it counts.
    return (reachesServiceable ?? 0) >= policy.acceptProbability
      ? { findings: [found] }
      : { findings: [found], decision: { condition: "not-established", action: "repeat" } };
  },
};
