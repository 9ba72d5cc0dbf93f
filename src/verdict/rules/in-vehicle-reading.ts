import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** A low ability read in the vehicle with a consumer on or a path that loses voltage: repeated at the posts, on the bench. */
export const inVehicleReading: Rule = {
  code: "in-vehicle-reading",
  stage: "conflict",
  source: "crankworthy-policy",
  standing: "our-choice",
  weigh: ({ doubtedInVehicle, evidence: { inVehicle }, reachesServiceable }) =>
    doubtedInVehicle
      ? {
          findings: [
            finding("low-reading-in-vehicle", "warning", {
              reasons: [
                ...(inVehicle?.wiringFault ? ["voltage-drop"] : []),
                ...(inVehicle?.loadOn ? ["consumer-on"] : []),
              ].join(", "),
              probability: reachesServiceable ?? "?",
            }),
          ],
          decision: { condition: "not-established", action: "repeat" },
        }
      : undefined,
};
