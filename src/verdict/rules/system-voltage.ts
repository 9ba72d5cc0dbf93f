import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** The reading is not that of a 12 V battery connected the right way round. */
export const systemVoltage: Rule = {
  code: "system-voltage",
  stage: "system",
  source: "crankworthy-policy",
  standing: "our-choice",
  weigh: ({ evidence }) => {
    const measured = { volts: evidence.systemVolts ?? "?" };
    switch (evidence.system) {
      case "other":
        return {
          findings: [finding("other-system-voltage", "warning", measured)],
          decision: { condition: "not-established", action: "stop" },
        };
      case "unclear":
        return {
          findings: [finding("system-voltage-unclear", "warning", measured)],
          decision: { condition: "not-established", action: "repeat" },
        };
      case "no-voltage":
        return {
          findings: [finding("no-voltage", "warning", measured)],
          decision: { condition: "not-established", action: "repeat" },
        };
      case "not-at-rest":
        return {
          findings: [finding("voltage-above-rest", "warning", measured)],
          decision: { condition: "not-established", action: "repeat" },
        };
      case "reversed":
        return {
          findings: [finding("reversed-polarity", "warning", measured)],
          decision: { condition: "not-established", action: "repeat" },
        };
      case "reversed-after-check":
        return {
          findings: [finding("reversed-after-check", "hazard", measured)],
          decision: { condition: "unserviceable", action: "isolate" },
        };
      default:
        return undefined;
    }
  },
};
