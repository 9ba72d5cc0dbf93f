import { wrongArgument } from "../../numeric/index.js";
import type { LogSeries } from "../series.js";
import { rowAtOrAfter } from "./scatter.js";

/**
 * The rows of a series between two times, without copying.
 *
 * @param series rows in order of time
 * @param fromSeconds first time, included [s]
 * @param toSeconds last time, included [s] (≥ `fromSeconds`)
 * @returns a series that shares memory with the first; without rows where none lies between
 * @example
 * ```ts
 * import { sliceSeries } from "crankworthy/logs";
 * const series = { seconds: Float64Array.of(0, 60, 120), volts: Float64Array.of(12.6, 12.5, 12.4), amperes: Float64Array.of(0, -3, -3) };
 * sliceSeries(series, 60, 120).volts[0]; // => 12.5
 * ```
 */
export function sliceSeries(series: LogSeries, fromSeconds: number, toSeconds: number): LogSeries {
  if (!(fromSeconds <= toSeconds))
    wrongArgument("fromSeconds", fromSeconds, `a time up to toSeconds, ${toSeconds}`);
  const from = rowAtOrAfter(series.seconds, fromSeconds);
  let to = rowAtOrAfter(series.seconds, toSeconds);
  while (to < series.seconds.length && series.seconds[to]! <= toSeconds) to++;
  const cut = (column: Float64Array) => column.subarray(from, to);
  return {
    seconds: cut(series.seconds),
    volts: cut(series.volts),
    amperes: cut(series.amperes),
    ...(series.temperatureCelsius ? { temperatureCelsius: cut(series.temperatureCelsius) } : {}),
  };
}
