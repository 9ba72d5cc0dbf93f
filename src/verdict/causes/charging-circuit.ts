import type { CauseRule } from "./cause.js";

/** The charging circuit: alternator, regulator or their cables charge too little, too much, or with too much ripple. */
export const chargingCircuit: CauseRule = {
  code: "charging-circuit",
  source: "workshop-charging-2018",
  standing: "our-choice",
  supports: [
    { code: "regulated-voltage-low" },
    { code: "regulated-voltage-high" },
    { code: "charging-rise-low" },
    { code: "charging-rise-high" },
    { code: "charging-drop-high" },
    { code: "ripple-high" },
  ],
  contradicts: [
    {
      code: "regulated-voltage-within",
      when: (known) => !known("charging-drop-high") && !known("ripple-high"),
    },
    { code: "charging-rise-enough", when: (known) => !known("charging-drop-high") && !known("ripple-high") },
  ],
  settleBy: "measure-regulated-voltage-again",
};
