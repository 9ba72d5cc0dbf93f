import { type Estimate, estimate } from "../numeric/estimate.js";
import { pchip } from "../numeric/pchip.js";
import type { Derivation } from "../sources/source.js";
import {
  FREEZING_BOUND_MASS_PERCENT,
  FREEZING_STANDARD_UNCERTAINTY,
  freezingDepressions,
  freezingMassPercents,
} from "./acid.data.js";
import { type AcidStrength, massPercentOf } from "./acid.js";
import { step } from "./derive.js";
import { LOWEST_GRAVITY } from "./from-gravity.data.js";
import { type OutsideRange, outside } from "./outside.js";

/** Where an acid begins to freeze: at `celsius`, or, past the end of the table, somewhere below it. */
export interface FreezingPoint {
  readonly relation: "at" | "below";
  readonly celsius: Estimate;
}

const depression = /* @__PURE__ */ pchip(freezingMassPercents, freezingDepressions);
/** Stronger acid freezes below this; end of the table at 34 %. */
const TABLE_END_CELSIUS = -55.28;

/** Freezing point of a mass %, −55.28 as upper bound up to 39.7 %, NaN beyond. @internal */
export function freezingPointOf(massPercent: number): number {
  const kelvin = depression(massPercent);
  if (!Number.isNaN(kelvin)) return -kelvin;
  return massPercent <= FREEZING_BOUND_MASS_PERCENT ? TABLE_END_CELSIUS : Number.NaN;
}

/**
 * Temperature at which the acid begins to freeze.
 *
 * For a battery give the weakest cell: it freezes first and bursts the case. A relative density of 0.985 to 1.000 is a
 * dead cell read with some error, and counts as water.
 *
 * @param strength relative density 25/25 (0.985-1.300), g/cm³ at 25 °C or mass % (0-39.7)
 * @param derivation a step is pushed here when given
 * @returns °C with a standard uncertainty of 1.5 K; `relation: "below"` above about 1.252, where the table ends at
 *   −55 °C and the true point is lower; a refusal above 1.300, where it rises again
 *
 * Source: CRC Handbook (read), freezing-point depression, monotone cubic in mass %.
 * @example
 * ```ts
 * import { freezingPointCelsius } from "crankworthy/charge-state";
 * const flat = freezingPointCelsius({ relativeDensity25: 1.12 });
 * "celsius" in flat && flat.celsius.value; // => -10.6
 * const full = freezingPointCelsius({ relativeDensity25: 1.28 });
 * "celsius" in full && full.relation; // => "below"
 * ```
 */
export function freezingPointCelsius(
  strength: AcidStrength,
  derivation?: Derivation,
): FreezingPoint | OutsideRange<"acid"> {
  const gravity = "relativeDensity25" in strength ? strength.relativeDensity25 : Number.NaN;
  const w = gravity < 1 && gravity >= LOWEST_GRAVITY ? 0 : massPercentOf(strength);
  const celsius = freezingPointOf(w);
  if (Number.isNaN(celsius)) return outside("acid", "0-39.7 mass %");
  const relation = w > 34 ? "below" : "at";
  if (derivation)
    step(
      derivation,
      relation === "at" ? "freezing point" : "freezing point, at most",
      "monotone cubic in mass %",
      { ...strength, massPercent: w },
      celsius,
      "°C",
      FREEZING_STANDARD_UNCERTAINTY,
      "crc-solutions",
      "read",
    );
  return {
    relation,
    celsius: estimate(celsius, FREEZING_STANDARD_UNCERTAINTY),
  };
}
