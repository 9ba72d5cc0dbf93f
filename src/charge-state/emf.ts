import { type Refusal, refuse } from "../numeric/refusal.js";
import { requireFinite } from "../numeric/require-finite.js";
import { WATER_DENSITY_25 } from "./acid.data.js";
import { type AcidStrength, density25, massPercentOf, massPercentOfMolality, molalityOf } from "./acid.js";
import { bode, MAX_MOLALITY, MIN_MOLALITY } from "./emf.data.js";
import { type OutsideRange, outside } from "./outside.js";

/** Cells in a 12 V battery. @internal */
export const CELLS = 6;

/** Why a voltage has no gravity: no acid the model knows gives it. */
export type VoltageRefusal = Refusal<"voltage-below-acid-range" | "voltage-above-acid-range">;

function emfOfLog(log: number): number {
  return bode[0] + log * (bode[1] + log * (bode[2] + log * (bode[3] + log * bode[4])));
}

/** Cell EMF of a mass %, V at 25 °C; NaN outside 0.1-8 mol/kg. @internal */
export function cellVoltsOf(massPercent: number): number {
  const molality = molalityOf(massPercent);
  return molality >= MIN_MOLALITY && molality <= MAX_MOLALITY ? emfOfLog(Math.log10(molality)) : Number.NaN;
}

/** Ends of the model for a 12 V battery at 25 °C, V: 0.1 and 8 mol/kg. */
const LOWEST_VOLTS = /* @__PURE__ */ (() => CELLS * emfOfLog(-1))();
const HIGHEST_VOLTS = /* @__PURE__ */ (() => CELLS * emfOfLog(Math.log10(MAX_MOLALITY)))();

/** Mass % of a 12 V battery's EMF at 25 °C; NaN outside the model. @internal */
export function massPercentOfVolts(volts: number): number {
  if (!(volts >= LOWEST_VOLTS && volts <= HIGHEST_VOLTS)) return Number.NaN;
  const cellVolts = volts / CELLS;
  // The polynomial is convex and rising, so Newton's rule cannot miss; from a charged cell it takes 3-7 steps.
  let log = 0.65;
  for (let i = 0; i < 20; i++) {
    const slope = bode[1] + log * (2 * bode[2] + log * (3 * bode[3] + log * 4 * bode[4]));
    const step = (emfOfLog(log) - cellVolts) / slope;
    log -= step;
    if (Math.abs(step) < 1e-9) break; // quadratic: the next error is below 1e-17
  }
  return massPercentOfMolality(10 ** log);
}

/** @internal */
export function voltageOutside(volts: number): VoltageRefusal {
  return volts < LOWEST_VOLTS
    ? refuse("voltage-below-acid-range", "Six working cells never rest so low.", "The voltage of each cell.")
    : refuse(
        "voltage-above-acid-range",
        "Surface charge, or a charger still on.",
        "A reading after a day of rest.",
      );
}

/**
 * EMF of one cell at 25 °C from its acid.
 *
 * @param strength molality 0.1-8 mol/kg, that is about 1-44 mass % or relative density 25/25 1.006-1.339
 * @returns V per cell, standard uncertainty about 2 mV; or a refusal outside
 *
 * Equation: E = 1.922 + 0.147519·L + 0.063552·L² + 0.073772·L³ + 0.033612·L⁴, L = log10(molality).
 * Source: Bode 1977 (full digits from memory; rounded electrode fits read).
 * @example
 * ```ts
 * import { cellEmfVolts } from "crankworthy/charge-state";
 * 6 * Number(cellEmfVolts({ relativeDensity25: 1.265 })); // => 12.66
 * ```
 */
export function cellEmfVolts(strength: AcidStrength): number | OutsideRange<"acid"> {
  const volts = cellVoltsOf(massPercentOf(strength));
  return Number.isNaN(volts) ? outside("acid", "0.1-8 mol/kg") : volts;
}

/**
 * Gravity of the acid of a 12 V battery from its settled open-circuit voltage: the inverse of six times
 * {@link cellEmfVolts}, all cells taken as equal.
 *
 * @param openCircuitVoltsAt25Celsius [V] (10.788-13.102), settled and referred to 25 °C
 * @returns relative density 25/25, consistent with the EMF to 1e-9; or a refusal outside the range
 * @example
 * ```ts
 * import { gravityFromVolts } from "crankworthy/charge-state";
 * gravityFromVolts(12.663); // => 1.265
 * ```
 */
export function gravityFromVolts(openCircuitVoltsAt25Celsius: number): number | VoltageRefusal {
  requireFinite("openCircuitVoltsAt25Celsius", openCircuitVoltsAt25Celsius);
  const w = massPercentOfVolts(openCircuitVoltsAt25Celsius);
  return Number.isNaN(w) ? voltageOutside(openCircuitVoltsAt25Celsius) : density25(w) / WATER_DENSITY_25;
}
