import { type Estimate, requireFinite, wrongArgument } from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";
import { currentLater, medianStep } from "./align-current.js";
import { type FitRefusal, lineThrough, scatterOfLine } from "./ohmic-line.js";

/** A straight line through voltage against current. */
export interface OhmicFit {
  /** Voltage without current [V]. */
  readonly electromotiveVolts: Estimate;
  /** Resistance between the points where voltage was read, leads included [Ω]. */
  readonly resistanceOhms: Estimate;
  /** Share of the voltage's variance that the line explains (0..1). */
  readonly rSquared: number;
  /** A line over loads of many lengths: slow voltage changes under load are in the value. */
  readonly includes: "polarisation";
  /** Current taken this much after its voltage, in rows of the usual step and in seconds; may fall between rows. */
  readonly lagRows: number;
  readonly lagSeconds: number;
  readonly pairs: number;
  /** Rows without a current of their time: at an end of the log, or where rows are missing. */
  readonly rowsLeftOut: number;
}

/**
 * By how much the current is reported later than the voltage: whole rows, or seconds. Negative where it comes earlier. A lag
 * that was estimated has an uncertainty (≥ 0, default 0).
 */
export type CurrentLag = number | { readonly seconds: number; readonly standardUncertainty?: number };

/**
 * Fits V = E + R·I (positive current charges) with the current taken a given time after the voltage.
 *
 * Scope: a changing load over a time short enough for the charge to stay the same; for a lag in rows, rows at equal steps.
 * Loggers often report current later than voltage; the wrong lag gives too small a resistance. Loads that last longer than
 * tenths of a second polarise the plates, so the slope is a total resistance for loads of this log's lengths: for the ohmic part
 * use `measureLoadSteps`. The uncertainties hold the scatter about the line, with blocks of rows as the unit so that a
 * drift or a residual that follows the load counts in full, and what an uncertainty of the lag, where given, changes. Under
 * some 50 changes of the load the blocks are too few for a drift (20 changes: 89 % covered instead of 95, computed). Not in
 * them: a lag that is wrong without saying so, gain of the meters, noise of the current (makes R too small by the share of its
 * variance).
 *
 * @param series rows in order of time
 * @param lag rows by which the current lags, any whole number, or `{ seconds, standardUncertainty }` as `estimateLag` finds them
 * @returns E [V], R [Ω], R²
 *
 * Refuses `out-of-order`, `too-few-pairs` (under 10), `no-change-of-current`, `not-ohmic` for R ≤ 0.
 *
 * Equation: R = Σ (I − Ī)(V − V̄)/Σ (I − Ī)²; u² = max over lengths of n/(n − 3)·Σ (Σ_block (I − Ī)·residual)²/(Σ (I − Ī)²)²
 * + ((R(lag + u) − R)² + (R(lag − u) − R)²)/2, n blocks of 1, 2, 4, … rows while n ≥ 10.
 * @example
 * ```ts
 * import { fitOhmicResistance } from "crankworthy/logs";
 * const amperes = Float64Array.from({ length: 40 }, (_, i) => (i % 8 < 4 ? 0 : -100));
 * const series = { seconds: amperes.map((_, i) => i), volts: amperes.map((I) => 12.6 + 0.005 * I), amperes };
 * fitOhmicResistance(series, 0).resistanceOhms.value; // => 0.005
 * ```
 */
export function fitOhmicResistance(series: LogSeries, lag: CurrentLag): OhmicFit | FitRefusal {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  const step = medianStep(series.seconds);
  if (typeof lag !== "object") {
    if (!Number.isInteger(lag)) wrongArgument("lag", lag, "a whole number, or { seconds }");
    return fitColumn(series, currentRowsLater(series, lag, step), lag, lag * step);
  }
  const { seconds, standardUncertainty: doubt = 0 } = lag;
  requireFinite("lag.seconds", seconds, -1e9, 1e9);
  requireFinite("lag.standardUncertainty", doubt, 0, 1e9);
  const fit = fitColumn(series, currentLater(series, seconds, step), step > 0 ? seconds / step : 0, seconds);
  if ("refused" in fit || doubt === 0) return fit;
  const [early, late] = [seconds - doubt, seconds + doubt].map((at) =>
    lineThrough(series.volts, currentLater(series, at, step)),
  ) as [ReturnType<typeof lineThrough>, ReturnType<typeof lineThrough>];
  if ("refused" in early) return early;
  if ("refused" in late) return late;
  const widened = (one: Estimate, a: number, b: number): Estimate => ({
    value: one.value,
    standardUncertainty: Math.hypot(
      one.standardUncertainty,
      (a - one.value) / Math.SQRT2,
      (b - one.value) / Math.SQRT2,
    ),
  });
  return {
    ...fit,
    electromotiveVolts: widened(
      fit.electromotiveVolts,
      early.meanVolts - early.ohms * early.meanAmperes,
      late.meanVolts - late.ohms * late.meanAmperes,
    ),
    resistanceOhms: widened(fit.resistanceOhms, early.ohms, late.ohms),
  };
}

/** @internal The line through voltage and a column of current taken a lag later, with its uncertainties. */
export function fitColumn(
  { volts }: LogSeries,
  amperes: Float64Array,
  lagRows: number,
  lagSeconds: number,
): OhmicFit | FitRefusal {
  const line = lineThrough(volts, amperes);
  if ("refused" in line) return line;
  return {
    ...scatterOfLine(volts, amperes, line),
    rSquared: line.rSquared,
    includes: "polarisation",
    lagRows,
    lagSeconds,
    pairs: line.pairs,
    rowsLeftOut: volts.length - line.pairs,
  };
}

/** @internal For every row the current a whole number of rows later [A]; NaN past an end or where rows are missing between. */
export function currentRowsLater({ seconds, amperes }: LogSeries, lag: number, step: number): Float64Array {
  const moved = new Float64Array(seconds.length).fill(Number.NaN);
  const last = Math.min(seconds.length, seconds.length - lag);
  for (let k = Math.max(0, -lag); k < last; k++)
    if (Math.abs(seconds[k + lag]! - seconds[k]! - lag * step) <= step / 2) moved[k] = amperes[k + lag]!;
  return moved;
}
