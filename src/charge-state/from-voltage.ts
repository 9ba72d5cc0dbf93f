import { type Estimate, estimate } from "../numeric/estimate.js";
import type { Refusal } from "../numeric/refusal.js";
import { requireFinite } from "../numeric/require-finite.js";
import { wrongArgument } from "../numeric/wrong-argument.js";
import type { Derivation } from "../sources/source.js";
import { WATER_DENSITY_25 } from "./acid.data.js";
import { density25 } from "./acid.js";
import {
  type Acid,
  ASSUMED_CELSIUS,
  ASSUMED_TEMPERATURE_UNCERTAINTY,
  COLD_VOLTS_PER_KELVIN_UNCERTAINTY,
  COLDEST_CELSIUS,
  CURVE_UNCERTAINTY,
  CURVE_UNCERTAINTY_WIDE,
  FULL_CHARGE_MARGIN_VOLTS,
  HOTTEST_CELSIUS,
  VOLTS_PER_KELVIN,
  VOLTS_PER_KELVIN_UNCERTAINTY,
} from "./curves.data.js";
import { acidUncertainty, type Chemistry, curveFor, curveOf, strongest } from "./curves.js";
import { step } from "./derive.js";
import { massPercentOfVolts, type VoltageRefusal, voltageOutside } from "./emf.js";
import { freezingPointOf } from "./freezing.js";
import { type OutsideRange, outside } from "./outside.js";
import type { ChargeNote, ChargeReading } from "./reading.js";
import { SETTLED_UNCERTAINTY_VOLTS } from "./rest.data.js";
import { type RestHistory, restEffect } from "./rest.js";

/** No voltmeter or thermometer shows more; larger numbers are a mistake. */
const MOST = 1e6;

/** A terminal voltage of a 12 V battery with all loads off, and what is known about it. */
export interface RestVoltage {
  /** [V] */
  readonly volts: number;
  /** Standard uncertainty of the meter's reading [V] (≥ 0). */
  readonly voltsStandardUncertainty: number;
  readonly chemistry: Chemistry;
  /** The battery's own acid, when known; otherwise the default of its chemistry. */
  readonly acid?: Acid;
  /** Temperature of the electrolyte [°C] (freezing point to 60); taken as 25 ± 10 when left out, with a note. */
  readonly temperatureCelsius?: number;
  /** Standard uncertainty of that temperature [K] (≥ 0, default 0). Larger for a temperature of the case. */
  readonly temperatureStandardUncertaintyKelvin?: number;
  readonly rest: RestHistory;
}

/** A {@link ChargeReading} from a voltage. */
export interface VoltageChargeReading extends ChargeReading {
  /** Settled open-circuit voltage referred to 25 °C [V]. */
  readonly settledVoltsAt25Celsius: Estimate;
}

/** The electrolyte is colder than the freezing point of the acid that the voltage tells of. */
export interface FrozenRefusal extends Refusal<"may-be-frozen"> {
  readonly temperatureCelsius: number;
  readonly freezingPointCelsius: number;
  readonly relativeDensity25: number;
  readonly settledVoltsAt25Celsius: number;
}

/**
 * State of charge of a 12 V battery from one voltage at rest.
 *
 * In scope: six equal cells, acid well mixed. Out of scope: stratified acid, a shorted cell (both need gravities).
 * One rest voltage fixes the state of charge to about ±0.09 (standard) at best, whatever the meter.
 *
 * @param reading see {@link RestVoltage}; RangeError for non-finite numbers and an unknown chemistry
 * @param derivation steps are pushed here when given
 * @returns the estimate, `bound: "upper"` where surface charge is possible and not bounded; or a refusal: no acid
 *   gives that voltage, temperature outside −55..60 °C, electrolyte may be frozen
 *
 * Equations: V25 = V + shift + 0.0012·(25 − T); SoC = (gravity(V25) − empty)/(full − empty);
 * u² = u0² + (u_meter² + u_rest² + u_T²)/slope², and below empty + SoC²/3. Sources: Bode 1977, density `carma-sulfate`; uncertainties
 * and shifts our choice (`curves.data.ts`, `rest.data.ts`).
 * @example
 * ```ts
 * import { chargeFromRestVoltage } from "crankworthy/charge-state";
 * const reading = chargeFromRestVoltage({
 *   volts: 12.46, voltsStandardUncertainty: 0.01, chemistry: "flooded", temperatureCelsius: 25,
 *   rest: { lastEvent: "charge", hoursAtRest: 24 },
 * });
 * "stateOfCharge" in reading && reading.stateOfCharge.value; // => 0.75
 * "stateOfCharge" in reading && reading.stateOfCharge.standardUncertainty; // => 0.09
 * ```
 */
export function chargeFromRestVoltage(
  reading: RestVoltage,
  derivation?: Derivation,
): VoltageChargeReading | VoltageRefusal | FrozenRefusal | OutsideRange<"temperature"> {
  const { volts, voltsStandardUncertainty, chemistry } = reading;
  requireFinite("volts", volts, 0, MOST);
  requireFinite("voltsStandardUncertainty", voltsStandardUncertainty, 0, MOST);
  const ownCurve = curveFor(chemistry);
  const curve = reading.acid ? curveOf(reading.acid) : ownCurve;
  const typeKnown = chemistry !== "unknown" || reading.acid !== undefined;
  const notes: ChargeNote[] = [];
  if (!typeKnown) notes.push("chemistry-unknown");

  let temperature = ASSUMED_CELSIUS;
  let temperatureUncertainty = ASSUMED_TEMPERATURE_UNCERTAINTY;
  if (reading.temperatureCelsius === undefined) notes.push("temperature-assumed");
  else {
    temperature = reading.temperatureCelsius;
    temperatureUncertainty = reading.temperatureStandardUncertaintyKelvin ?? 0;
    requireFinite("temperatureStandardUncertaintyKelvin", temperatureUncertainty, 0, MOST);
    if (Number.isNaN(temperature)) wrongArgument("temperatureCelsius", temperature, "a number");
    if (temperature < COLDEST_CELSIUS || temperature > HOTTEST_CELSIUS) {
      return outside("temperature", "-55 to 60 °C");
    }
  }

  const effect = restEffect(reading.rest);
  if (effect.note) notes.push(effect.note);
  const settled = volts + effect.shiftVolts;
  const volts25 = settled + VOLTS_PER_KELVIN * (25 - temperature);
  const tilt = VOLTS_PER_KELVIN_UNCERTAINTY * (temperature - 25);
  const cold = temperature < 0 ? COLD_VOLTS_PER_KELVIN_UNCERTAINTY * temperature : 0;
  const fromTemperature = VOLTS_PER_KELVIN * temperatureUncertainty;
  const restUncertainty = effect.standardUncertaintyVolts;
  const variance =
    voltsStandardUncertainty * voltsStandardUncertainty +
    restUncertainty * restUncertainty +
    tilt * tilt +
    cold * cold +
    fromTemperature * fromTemperature;

  const w = massPercentOfVolts(volts25);
  if (Number.isNaN(w)) return voltageOutside(volts25);
  const gravity = density25(w) / WATER_DENSITY_25;
  if (temperature < 0) {
    const freezingPoint = freezingPointOf(w);
    if (temperature < freezingPoint) {
      return {
        refused: true,
        code: "may-be-frozen",
        reason: "Colder than the freezing point of the acid this voltage tells of.",
        wouldHelp: "A reading after the battery has thawed.",
        temperatureCelsius: temperature,
        freezingPointCelsius: freezingPoint,
        relativeDensity25: gravity,
        settledVoltsAt25Celsius: volts25,
      };
    }
    if (temperature < freezingPoint + 3) notes.push("near-freezing");
  }

  const charge = (gravity - curve.emptyGravity) / (curve.fullGravity - curve.emptyGravity);
  const floor = typeKnown && curve !== strongest ? CURVE_UNCERTAINTY : CURVE_UNCERTAINTY_WIDE;
  let chargeVariance = floor * floor + variance / (curve.slope * curve.slope);
  if (charge < 0) {
    // Below "empty" the scale ends, not the acid: how far a battery's acid can be used up is its maker's choice (the
    // published spans differ by 0.08, and acid-limited cells go on towards water). So the truth lies anywhere
    // between 0 and twice the excursion: rectangular, half-width |SoC|.
    chargeVariance += (charge * charge) / 3;
    notes.push("below-empty");
  }
  let bound = effect.bound;
  const possible = typeKnown ? curve.fullVolts : strongest.fullVolts;
  if (volts25 > possible + FULL_CHARGE_MARGIN_VOLTS) {
    if (effect.standardUncertaintyVolts === SETTLED_UNCERTAINTY_VOLTS) notes.push("above-full");
    else {
      bound = "upper";
      notes.push("surface-charge-suspected");
    }
  }
  const standardUncertainty = Math.sqrt(chargeVariance);
  const voltsUncertainty = Math.sqrt(variance);

  if (derivation) {
    const { shiftVolts: shift } = effect;
    const { emptyGravity: empty, fullGravity: full, slope } = curve;
    step(
      derivation,
      "settled open-circuit voltage",
      "volts + shift",
      { volts, shift, bound: effect.bound },
      settled,
      "V",
      Math.sqrt(voltsStandardUncertainty * voltsStandardUncertainty + restUncertainty * restUncertainty),
    );
    step(
      derivation,
      "settled open-circuit voltage at 25 °C",
      "settled + 0.0012*(25 - temperature)",
      { settled, temperature },
      volts25,
      "V",
      voltsUncertainty,
      "harned-hamer-1935",
      "our-choice",
    );
    step(
      derivation,
      "equivalent acid",
      "EMF polynomial in log10(molality) solved",
      { volts25 },
      w,
      "%",
      undefined,
      "bode-1977",
      "from-memory",
    );
    step(
      derivation,
      "equivalent relative density 25/25",
      "density at 25 °C, monotone cubic in mass %, over that of water",
      { massPercent: w },
      gravity,
      "1",
      undefined,
      "carma-sulfate",
      "read",
    );
    step(
      derivation,
      "state of charge",
      "(gravity - empty)/(full - empty)",
      { gravity, empty, full, floor, slope },
      charge,
      "1",
      standardUncertainty,
    );
  }
  const fromAcid = acidUncertainty(curve, charge, typeKnown);
  return {
    stateOfCharge: estimate(charge, standardUncertainty),
    bound,
    settledVoltsAt25Celsius: estimate(volts25, voltsUncertainty),
    relativeDensity25: gravity,
    // No more than what it promises: the curve carries its interpolation along.
    acid: { fullGravity: curve.fullGravity, emptyGravity: curve.emptyGravity },
    acidStandardUncertainty: Math.min(fromAcid, floor),
    notes,
  };
}
