import type { Rule } from "../rule.js";
import { ability } from "./ability.js";
import { cellSpread } from "./cell-spread.js";
import { conflictingEvidence } from "./conflicting-evidence.js";
import { contactSpread } from "./contact-spread.js";
import { damagedCase } from "./damaged-case.js";
import { frozen } from "./frozen.js";
import { inVehicleReading } from "./in-vehicle-reading.js";
import { loadTest } from "./load-test.js";
import { lowElectrolyte } from "./low-electrolyte.js";
import { missingCell } from "./missing-cell.js";
import { noAbilityEvidence } from "./no-ability-evidence.js";
import { requirement } from "./requirement.js";
import { scatteredReadings } from "./scattered-readings.js";
import { systemVoltage } from "./system-voltage.js";
import { tooLittleCharge } from "./too-little-charge.js";

/** All rules in order of precedence: hazard before system before measurement before cells before charge before ability. */
export const rules: readonly Rule[] = [
  damagedCase,
  frozen,
  lowElectrolyte,
  systemVoltage,
  scatteredReadings,
  contactSpread,
  missingCell,
  cellSpread,
  tooLittleCharge,
  inVehicleReading,
  conflictingEvidence,
  loadTest,
  ability,
  noAbilityEvidence,
  requirement,
];
