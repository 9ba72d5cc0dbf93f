import type { Estimate } from "../numeric/estimate.js";
import type { Acid } from "./curves.data.js";

/** Something to know about a reading; stable codes, wording lives in the report. */
export type ChargeNote =
  | "temperature-assumed"
  | "chemistry-unknown"
  | "rest-unknown"
  | "surface-charge-not-bounded"
  | "surface-charge-removal-not-settled"
  | "surface-charge-suspected"
  | "above-full"
  | "below-empty"
  | "near-freezing"
  | "not-all-cells-measured";

/** State of charge from one kind of measurement. */
export interface ChargeReading {
  /** Fraction, 0 empty, 1 full; not clamped: a strong or exhausted acid goes past either end. */
  readonly stateOfCharge: Estimate;
  /** `upper`: the true state of charge is at or below the estimate; how far below is not known. */
  readonly bound: "two-sided" | "upper";
  /** Gravity of the acid, relative density 25/25: measured, or equivalent to the voltage. */
  readonly relativeDensity25: number;
  /** The fill the scale from empty to full rests on. */
  readonly acid: Acid;
  /** The part of the uncertainty that comes from `acid`, shared by every reading of the same battery. */
  readonly acidStandardUncertainty: number;
  readonly notes: readonly ChargeNote[];
}
