import { finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Plates above the acid: heat and gas on charge, and every reading speaks of a smaller battery. */
export const lowElectrolyte: Rule = {
  code: "low-electrolyte",
  stage: "hazard",
  source: "workshop-practice",
  standing: "common-practice",
  weigh: ({ evidence }) =>
    evidence.electrolyteLow ? { findings: [finding("electrolyte-low", "warning")] } : undefined,
};
