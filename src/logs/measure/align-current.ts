import { type Refusal, refuse, requireFinite, requirePositive } from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";
import { medianOf, rowAtOrAfter } from "./scatter.js";

/** A series whose current was moved in time. */
export interface AlignedSeries {
  readonly series: LogSeries;
  /** Rows without a current at their moved time: at an end, or across a gap. */
  readonly rowsLeftOut: number;
}

/** Settings of {@link alignCurrent}. */
export interface AlignOptions {
  /** Longest time between two current rows to draw a straight line across [s] (> 0). Default 2.5 median steps (our choice). */
  readonly mostGapSeconds?: number;
}

/**
 * Gives every voltage the current that flowed at its time, where the logger reports current late.
 *
 * Scope: a lag that stays the same. Between rows the current is taken from the straight line, so a lag that is no
 * whole number of rows smooths a step over one row; voltage and temperature are left as they are.
 *
 * @param series rows in order of time
 * @param lagSeconds by which the current is reported later than the voltage [s]; negative where earlier
 * @returns the series, and how many rows have no current of their time
 *
 * Refuses `out-of-order`, `too-few-rows` when under 2 rows remain.
 *
 * Equation: V(t) is paired with I(t + lag).
 * @example
 * ```ts
 * import { alignCurrent } from "crankworthy/logs";
 * const series = { seconds: Float64Array.of(0, 1, 2, 3), volts: Float64Array.of(12, 11, 11, 11), amperes: Float64Array.of(0, 0, -9, -9) };
 * const aligned = alignCurrent(series, 1);
 * aligned.series.amperes[1]; // => -9
 * aligned.rowsLeftOut; // => 1
 * ```
 */
export function alignCurrent(
  series: LogSeries,
  lagSeconds: number,
  options?: AlignOptions,
): AlignedSeries | Refusal<"out-of-order" | "too-few-rows"> {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  requireFinite("lagSeconds", lagSeconds);
  if (options?.mostGapSeconds !== undefined) requirePositive("mostGapSeconds", options.mostGapSeconds);
  const step = medianStep(series.seconds);
  const later = currentLater(series, lagSeconds, step, options?.mostGapSeconds);
  let rows = 0;
  for (let i = 0; i < later.length; i++) if (!Number.isNaN(later[i]!)) rows++;
  if (rows < 2)
    return refuse("too-few-rows", "Fewer than two rows have a current of their time.", "A longer log.");
  const pick = (column: Float64Array) => {
    const picked = new Float64Array(rows);
    for (let i = 0, at = 0; i < later.length; i++) if (!Number.isNaN(later[i]!)) picked[at++] = column[i]!;
    return picked;
  };
  return {
    series: {
      seconds: pick(series.seconds),
      volts: pick(series.volts),
      amperes: pick(later),
      ...(series.temperatureCelsius ? { temperatureCelsius: pick(series.temperatureCelsius) } : {}),
    },
    rowsLeftOut: later.length - rows,
  };
}

/** @internal For every row the current a time later [A], from the straight line between rows; NaN past an end or across a gap. */
export function currentLater(
  { seconds, amperes }: LogSeries,
  lagSeconds: number,
  step: number,
  mostGap = 2.5 * step,
): Float64Array {
  const rows = seconds.length;
  const moved = new Float64Array(rows).fill(Number.NaN);
  const first = (seconds[0] ?? 0) + lagSeconds;
  let right = rowAtOrAfter(seconds, first - 1e-6 * step - 1e-12 * Math.abs(first));
  for (let i = 0; i < rows; i++) {
    const time = seconds[i]! + lagSeconds;
    // Times written with three decimals miss a row by rounding: take it, and draw no line to the next.
    const near = 1e-6 * step + 1e-12 * Math.abs(time);
    while (right < rows && seconds[right]! < time - near) right++;
    if (right >= rows) break;
    const later = seconds[right]!;
    moved[i] = amperes[right]!;
    if (later <= time + near) continue;
    const span = right === 0 ? Number.POSITIVE_INFINITY : later - seconds[right - 1]!;
    const share = (time - seconds[right - 1]!) / span;
    moved[i] = span > mostGap ? Number.NaN : amperes[right - 1]! * (1 - share) + amperes[right]! * share;
  }
  return moved;
}

/** @internal The usual time between rows [s]; 0 for fewer than two. */
export function medianStep(seconds: Float64Array): number {
  if (seconds.length < 2) return 0;
  const steps = new Float64Array(seconds.length - 1);
  for (let i = 1; i < seconds.length; i++) steps[i - 1] = seconds[i]! - seconds[i - 1]!;
  return medianOf(steps);
}
