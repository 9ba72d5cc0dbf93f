import type { Refusal } from "../../numeric/index.js";
import { refuseDisorder } from "../series.js";

/** A logger's voltage, with its current where that was logged too; every `LogSeries` is one. */
export interface VoltageSeries {
  /** Time of each row [s], not decreasing. */
  readonly seconds: Float64Array;
  /** At the posts [V]. */
  readonly volts: Float64Array;
  /** Positive charges the battery [A]. Left out where current was not logged. */
  readonly amperes?: Float64Array;
}

/** @internal As `refuseDisorder`, for a series that may lack current. */
export function refuseVoltageDisorder(series: VoltageSeries): Refusal<"out-of-order"> | undefined {
  const { seconds, volts, amperes = volts } = series;
  return refuseDisorder({ seconds, volts, amperes });
}
