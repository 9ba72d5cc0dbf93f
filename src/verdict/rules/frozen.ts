import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Ice, seen or to be expected: no charging, loading or jump start until thawed and looked at. */
export const frozen: Rule = {
  code: "frozen",
  stage: "hazard",
  source: "od1002",
  standing: "read",
  weigh: ({ evidence }) => {
    if (evidence.frozen === "no") return undefined;
    const { freezing } = evidence;
    return {
      findings: [
        evidence.frozen === "seen"
          ? finding("frozen-seen", "hazard")
          : finding("frozen-possible", "hazard", {
              temperatureCelsius: freezing?.temperatureCelsius ?? "?",
              freezingPointCelsius: freezing?.freezingPointCelsius ?? "?",
            }),
      ],
      decision: { condition: "not-established", action: "isolate" },
    };
  },
};
