import { requireFinite } from "../numeric/require-finite.js";
import { wrongArgument } from "../numeric/wrong-argument.js";
import { WATER_DENSITY_25 } from "./acid.data.js";
import { massPercentOfDensity25 } from "./acid.js";
import {
  type Acid,
  acidFills,
  EMPTY_GRAVITY_UNCERTAINTY,
  FULL_GRAVITY_UNCERTAINTY,
  HOTTEST_CELSIUS,
  UNKNOWN_TYPE_FACTOR,
  VOLTS_PER_KELVIN,
} from "./curves.data.js";
import { CELLS, cellVoltsOf } from "./emf.js";
import { freezingPointOf } from "./freezing.js";
import { type OutsideRange, outside } from "./outside.js";

/** What a 12 V lead-acid battery is built as. `efb` and `flooded-calcium` share one curve, `agm` and `gel` another. */
export type Chemistry = "flooded" | "flooded-calcium" | "efb" | "agm" | "gel" | "unknown";

/** A fill with the voltages that follow from it. @internal */
export interface Curve extends Acid {
  readonly fullVolts: number;
  /** Mean slope, V per unit state of charge. */
  readonly slope: number;
}

function voltsOf(gravity: number): number {
  return CELLS * cellVoltsOf(massPercentOfDensity25(gravity * WATER_DENSITY_25));
}

/** @internal */
export function curveOf(acid: Acid): Curve {
  const { fullGravity, emptyGravity } = acid;
  const fullVolts = voltsOf(fullGravity);
  const slope = fullVolts - voltsOf(emptyGravity);
  if (!(slope > 0)) {
    wrongArgument("acid", `${fullGravity}, ${emptyGravity}`, "1.007 < emptyGravity < fullGravity < 1.338");
  }
  return { fullGravity, emptyGravity, fullVolts, slope };
}

const temperate = /* @__PURE__ */ curveOf(acidFills.temperate);
const calcium = /* @__PURE__ */ curveOf(acidFills.calcium);
/** @internal */
export const strongest: Curve = /* @__PURE__ */ curveOf(acidFills["valve-regulated"]);

/** @internal RangeError for a chemistry that is none. */
export function curveFor(chemistry: Chemistry): Curve {
  switch (chemistry) {
    case "flooded":
      return temperate;
    case "flooded-calcium":
    case "efb":
    case "unknown":
      return calcium;
    case "agm":
    case "gel":
      return strongest;
    default:
      return wrongArgument("chemistry", chemistry, "a Chemistry");
  }
}

/** Standard uncertainty of a state of charge that comes from not knowing the fill exactly. @internal */
export function acidUncertainty(acid: Acid, stateOfCharge: number, typeKnown: boolean): number {
  const full = FULL_GRAVITY_UNCERTAINTY * stateOfCharge;
  const empty = EMPTY_GRAVITY_UNCERTAINTY * (1 - stateOfCharge);
  const factor = typeKnown ? 1 : UNKNOWN_TYPE_FACTOR;
  return (factor * Math.sqrt(full * full + empty * empty)) / (acid.fullGravity - acid.emptyGravity);
}

/**
 * The acid fill this library takes for a chemistry when nothing better is known.
 *
 * @returns relative densities 25/25; standard uncertainty 0.010 (full) and 0.020 (empty), our choice
 * @example
 * ```ts
 * import { defaultAcid } from "crankworthy/charge-state";
 * defaultAcid("flooded"); // => { fullGravity: 1.265, emptyGravity: 1.12 }
 * ```
 */
export function defaultAcid(chemistry: Chemistry): Acid {
  const { fullGravity, emptyGravity } = curveFor(chemistry);
  return { fullGravity, emptyGravity };
}

/**
 * Settled open-circuit voltage of a 12 V battery at full charge, 25 °C.
 *
 * @param acid gravities 25/25, empty below full, both 1.007-1.338; RangeError otherwise
 * @returns V
 * @example
 * ```ts
 * import { acidFills, fullChargeVolts } from "crankworthy/charge-state";
 * fullChargeVolts(acidFills.calcium); // => 12.75
 * ```
 */
export function fullChargeVolts(acid: Acid): number {
  return curveOf(acid).fullVolts;
}

/** Voltage from empty to full, V per unit state of charge at 25 °C; `acid` as for {@link fullChargeVolts}. */
export function meanSlopeVolts(acid: Acid): number {
  return curveOf(acid).slope;
}

/**
 * Settled open-circuit voltage of a 12 V battery: EMF of an acid whose gravity rises linearly with charge.
 *
 * It is the model itself, hence a plain number; what a real battery differs from it stands in the readings.
 *
 * @param battery `stateOfCharge` [1] (0 empty, 1 full, not clamped), `acid` (see {@link acidFills}),
 *   `temperatureCelsius` of the electrolyte [°C] (freezing point to 60; 25 when left out)
 * @returns V; or a refusal when the acid leaves the EMF model or the electrolyte would be frozen or above 60 °C
 *
 * Equation: gravity = empty + (full − empty)·SoC; V = 6·E(gravity) + 0.0012·(T − 25).
 * Sources: Bode 1977; density `carma-sulfate`; gravity linear in charge: DOE-HDBK-1084-95 (read); coefficient: our choice.
 * @example
 * ```ts
 * import { acidFills, openCircuitVolts } from "crankworthy/charge-state";
 * openCircuitVolts({ stateOfCharge: 0.5, acid: acidFills.temperate }); // => 12.265
 * ```
 */
export function openCircuitVolts(battery: {
  readonly stateOfCharge: number;
  readonly acid: Acid;
  readonly temperatureCelsius?: number;
}): number | OutsideRange<"acid" | "temperature"> {
  const { stateOfCharge, acid, temperatureCelsius: t = 25 } = battery;
  requireFinite("stateOfCharge", stateOfCharge);
  requireFinite("temperatureCelsius", t);
  requireFinite("acid.fullGravity", acid.fullGravity);
  requireFinite("acid.emptyGravity", acid.emptyGravity);
  const gravity = acid.emptyGravity + (acid.fullGravity - acid.emptyGravity) * stateOfCharge;
  const w = massPercentOfDensity25(gravity * WATER_DENSITY_25);
  const volts = CELLS * cellVoltsOf(w);
  if (Number.isNaN(volts)) return outside("acid", "0.1-8 mol/kg");
  if (!(t <= HOTTEST_CELSIUS && (t >= 0 || t >= freezingPointOf(w)))) {
    return outside("temperature", "freezing point to 60 °C");
  }
  return volts + VOLTS_PER_KELVIN * (t - 25);
}
