import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Repeated readings that disagree more than the instrument explains: clamps, a load or noise, not the battery. */
export const scatteredReadings: Rule = {
  code: "scattered-readings",
  stage: "measurement",
  source: "crankworthy-policy",
  standing: "our-choice",
  weigh: ({ evidence: { scatter } }) =>
    scatter && scatter.relative > scatter.limit
      ? {
          findings: [
            finding(
              "readings-scatter",
              "warning",
              { relative: scatter.relative },
              { value: scatter.limit, unit: "1", source: "crankworthy-policy", standing: "our-choice" },
            ),
          ],
          decision: { condition: "not-established", action: "repeat" },
        }
      : undefined,
};
