import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Visible damage: acid, sparks and trapped gas come before any judgement of ability. */
export const damagedCase: Rule = {
  code: "damaged-case",
  stage: "hazard",
  source: "workshop-practice",
  standing: "common-practice",
  weigh: ({ evidence }) =>
    evidence.damage.length === 0
      ? undefined
      : {
          findings: [finding("case-damaged", "hazard", { signs: evidence.damage.join(", ") })],
          decision: { condition: "unserviceable", action: "isolate" },
        },
};
