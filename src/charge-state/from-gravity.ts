import { type Estimate, estimate } from "../numeric/estimate.js";
import { type Refusal, refuse } from "../numeric/refusal.js";
import { requireFinite } from "../numeric/require-finite.js";
import { wrongArgument } from "../numeric/wrong-argument.js";
import type { Derivation } from "../sources/source.js";
import { type Acid, ASSUMED_CELSIUS, ASSUMED_TEMPERATURE_UNCERTAINTY } from "./curves.data.js";
import { acidUncertainty, type Chemistry, curveFor } from "./curves.js";
import { step } from "./derive.js";
import {
  COLDEST_HYDROMETER_CELSIUS,
  EMPTY_CORRECTION_ERROR_PER_KELVIN,
  HIGHEST_GRAVITY,
  HOTTEST_HYDROMETER_CELSIUS,
  type HydrometerCorrection,
  hydrometerCorrections,
  LOWEST_GRAVITY,
  READING_UNCERTAINTY,
} from "./from-gravity.data.js";
import { type OutsideRange, outside } from "./outside.js";
import type { ChargeNote, ChargeReading } from "./reading.js";

/** Hydrometer readings of a flooded 12 V battery. */
export interface CellGravities {
  /** One reading per cell measured, uncorrected relative density (1-6 readings, positive terminal first). */
  readonly cellReadings: readonly number[];
  readonly chemistry: Chemistry;
  /** The battery's own acid, when known; otherwise the default of its chemistry. */
  readonly acid?: Acid;
  /** Temperature of the electrolyte [°C] (−17.8 to 71.1); taken as 25 ± 10 when left out, with a note. */
  readonly temperatureCelsius?: number;
  /** The hydrometer's own convention; default 0.004 per 10 °F from 80 °F. */
  readonly correction?: HydrometerCorrection;
}

/** A {@link ChargeReading} from gravities; `stateOfCharge` is that of the mean cell. */
export interface GravityChargeReading extends ChargeReading {
  /** Corrected, in the order given, relative density 25/25. */
  readonly cells: readonly Estimate[];
  /** Position of the lowest cell in `cells`, from 0. */
  readonly weakestIndex: number;
  readonly weakestStateOfCharge: Estimate;
  /** Highest minus lowest corrected gravity; 0 for one cell. What it means depends on the charge before. */
  readonly spread: number;
}

/**
 * A hydrometer reading corrected for temperature: cold acid reads high, so the correction is negative in the cold.
 *
 * @param reading `reading` relative density, `temperatureCelsius` of the electrolyte [°C] (−17.8 to 71.1),
 *   `correction` a row of {@link hydrometerCorrections}
 * @returns relative density at the reference of the correction, taken as 25/25 (differs by 0.0007 at most for 80 °F);
 *   or a refusal outside the range of the printed tables
 *
 * Equation: corrected = reading + k·(T − T_ref). Source: TM 5-4210-230-14&P-1 Fig. 6-7 (read) for the default.
 * @example
 * ```ts
 * import { correctedGravity } from "crankworthy/charge-state";
 * correctedGravity({ reading: 1.281, temperatureCelsius: 4.44 }); // => 1.265
 * ```
 */
export function correctedGravity(reading: {
  readonly reading: number;
  readonly temperatureCelsius: number;
  readonly correction?: HydrometerCorrection;
}): number | OutsideRange<"temperature"> {
  const { perKelvin, referenceCelsius } = reading.correction ?? defaultCorrection;
  const t = reading.temperatureCelsius;
  requireFinite("reading", reading.reading, -10, 10);
  requireFinite("temperatureCelsius", t);
  requireFinite("correction.perKelvin", perKelvin, 0, 0.01);
  requireFinite("correction.referenceCelsius", referenceCelsius, -50, 100);
  if (!(t >= COLDEST_HYDROMETER_CELSIUS && t <= HOTTEST_HYDROMETER_CELSIUS)) {
    return outside("temperature", "-17.8 to 71.1 °C");
  }
  return reading.reading + perKelvin * (t - referenceCelsius);
}

const defaultCorrection: HydrometerCorrection = hydrometerCorrections["80F-0.004"];

/**
 * State of charge from hydrometer readings of one to six cells.
 *
 * Not valid after adding water, or in stratified acid, until charging has mixed it.
 *
 * @param gravities see {@link CellGravities}; RangeError for no or more than six readings and non-finite numbers
 * @param derivation steps are pushed here when given
 * @returns mean and weakest cell with uncertainties, spread; or a refusal: valve-regulated cells have no acid to
 *   draw, temperature or gravity outside the range
 *
 * Equation: SoC = (SG − empty)/(full − empty); u² = (u_SG² + (0.010·SoC)² + (0.020·(1 − SoC))²)/(full − empty)².
 * Uncertainties: our choice (`curves.data.ts`).
 * @example
 * ```ts
 * import { chargeFromGravity } from "crankworthy/charge-state";
 * const reading = chargeFromGravity({
 *   cellReadings: [1.265, 1.265, 1.26, 1.265, 1.21, 1.265], chemistry: "flooded", temperatureCelsius: 26.7,
 * });
 * "weakestIndex" in reading && reading.weakestIndex; // => 4
 * "weakestIndex" in reading && reading.weakestStateOfCharge.value; // => 0.62
 * "weakestIndex" in reading && reading.spread; // => 0.055
 * ```
 */
export function chargeFromGravity(
  gravities: CellGravities,
  derivation?: Derivation,
): GravityChargeReading | Refusal<"no-free-electrolyte"> | OutsideRange<"temperature" | "gravity"> {
  const { cellReadings, chemistry, temperatureCelsius, correction = defaultCorrection } = gravities;
  const ownAcid = curveFor(chemistry);
  const count = cellReadings.length;
  if (!(count >= 1 && count <= 6)) wrongArgument("cellReadings", count, "1 to 6 readings");
  const acid = gravities.acid ?? ownAcid;
  requireFinite("acid.fullGravity", acid.fullGravity, 1, 1.5);
  requireFinite("acid.emptyGravity", acid.emptyGravity, 0.9, acid.fullGravity - 0.001);
  if (temperatureCelsius !== undefined) requireFinite("temperatureCelsius", temperatureCelsius);
  if (chemistry === "agm" || chemistry === "gel") {
    return refuse("no-free-electrolyte", "Valve-regulated cells hold no free acid.", "A rest voltage.");
  }
  const notes: ChargeNote[] = [];
  const typeKnown = chemistry !== "unknown" || gravities.acid !== undefined;
  if (!typeKnown) notes.push("chemistry-unknown");
  if (count < 6) notes.push("not-all-cells-measured");
  if (temperatureCelsius === undefined) notes.push("temperature-assumed");
  const t = temperatureCelsius ?? ASSUMED_CELSIUS;
  const shift = correctedGravity({ reading: 0, temperatureCelsius: t, correction });
  if (typeof shift !== "number") return shift;

  const span = acid.fullGravity - acid.emptyGravity;
  const assumed =
    temperatureCelsius === undefined ? correction.perKelvin * ASSUMED_TEMPERATURE_UNCERTAINTY : 0;
  const fixedVariance = READING_UNCERTAINTY * READING_UNCERTAINTY + assumed * assumed;
  const emptyError = EMPTY_CORRECTION_ERROR_PER_KELVIN * (t - correction.referenceCelsius);
  const chargeOf = (gravity: number): number => (gravity - acid.emptyGravity) / span;
  const withUncertainty = (gravity: number): Estimate => {
    const fromCorrection = emptyError * (1 - chargeOf(gravity));
    return estimate(gravity, Math.sqrt(fixedVariance + fromCorrection * fromCorrection));
  };
  const stateOfCharge = ({ value, standardUncertainty }: Estimate): Estimate => {
    const charge = chargeOf(value);
    const fromGravity = standardUncertainty / span;
    const fromAcid = acidUncertainty(acid, charge, typeKnown);
    return estimate(charge, Math.sqrt(fromGravity * fromGravity + fromAcid * fromAcid));
  };

  const cells: Estimate[] = [];
  let sum = 0;
  let weakestIndex = 0;
  let highest = 0;
  let lowest = 2;
  for (const reading of cellReadings) {
    if (!Number.isFinite(reading)) wrongArgument("cellReadings", reading, "finite numbers");
    const gravity = reading + shift;
    if (!(gravity >= LOWEST_GRAVITY && gravity <= HIGHEST_GRAVITY)) return outside("gravity", "0.985-1.350");
    if (gravity < lowest) {
      lowest = gravity;
      weakestIndex = cells.length;
    }
    highest = Math.max(highest, gravity);
    sum += gravity;
    cells.push(withUncertainty(gravity));
  }
  // The hydrometer and its reader are the same for every cell, so the mean is not better known than one reading.
  const mean = withUncertainty(sum / count);
  const charge = stateOfCharge(mean);
  const weakest = stateOfCharge(cells[weakestIndex]!);
  if (charge.value < 0) notes.push("below-empty");
  if (derivation) {
    const { perKelvin, referenceCelsius: reference, source, standing } = correction;
    const { emptyGravity: empty, fullGravity: full } = acid;
    for (const [i, cell] of cells.entries())
      step(
        derivation,
        `relative density 25/25, cell ${i + 1}`,
        "reading + perKelvin*(temperature - reference)",
        { reading: cellReadings[i]!, perKelvin, temperature: t, reference },
        cell.value,
        "1",
        cell.standardUncertainty,
        source,
        standing,
      );
    step(
      derivation,
      "spread between the cells measured",
      "highest - lowest",
      { highest, lowest },
      highest - lowest,
      "1",
    );
    step(
      derivation,
      `charge of the weakest cell, number ${weakestIndex + 1}`,
      "(gravity - empty)/(full - empty)",
      { gravity: lowest, empty, full },
      weakest.value,
      "1",
      weakest.standardUncertainty,
    );
    step(
      derivation,
      "mean relative density 25/25",
      "mean of the cells",
      { cells: count },
      mean.value,
      "1",
      mean.standardUncertainty,
      source,
      standing,
    );
    step(
      derivation,
      "state of charge",
      "(gravity - empty)/(full - empty)",
      { gravity: mean.value, empty, full },
      charge.value,
      "1",
      charge.standardUncertainty,
    );
  }
  return {
    stateOfCharge: charge,
    bound: "two-sided",
    relativeDensity25: mean.value,
    acid: { fullGravity: acid.fullGravity, emptyGravity: acid.emptyGravity },
    acidStandardUncertainty: acidUncertainty(acid, charge.value, typeKnown),
    cells,
    weakestIndex,
    weakestStateOfCharge: weakest,
    spread: highest - lowest,
    notes,
  };
}
