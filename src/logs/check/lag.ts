import type { Refusal } from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";
import {
  type LagEstimate,
  type LagRefusalCode,
  type LagSecondsRange,
  requireLagRange,
} from "./lag-estimate.js";
import { createLagWindows, LAG_WINDOW_ROWS } from "./lag-windows.js";

/**
 * Estimates how late the current is reported after the voltage.
 *
 * Scope: evenly sampled rows under a changing load (by 5 A within a window of 256 rows; fewer in a short series). For every
 * lag the R² of a straight line of voltage against current is taken, pooled over up to 64 windows with a line of their own each; a
 * parabola through the greatest and its neighbours gives the value. The uncertainty holds the spread over windows
 * (jackknife) and the step between two lags tried (rectangular); not an error common to all windows, such as a
 * filter that delays one channel only at high frequencies.
 *
 * @param series rows in order of time
 * @param range lags to try [s]; default from −0.1 s (at least 4 rows) to 0.5 s (at least 12 rows)
 * @returns lag [s], positive where the current is late
 *
 * Refuses `out-of-order`, `not-evenly-sampled`, `no-change-of-current`, `too-few-rows` (under 4 windows), `no-relation` (R² under
 * 0.1 at every lag), `at-edge` (the best lag is the first or last one tried).
 *
 * Equation: R²(L) = (Σ S_VI)²/(Σ S_VV·Σ S_II) with V[k], I[k + L]; u² = u²(jackknife) + grid²/12.
 * @example
 * ```ts
 * import { estimateLag } from "crankworthy/logs";
 * const load = (i) => -50 * ((Math.floor(i / 7) * 7919) % 5);
 * const seconds = Float64Array.from({ length: 3000 }, (_, i) => i * 0.02);
 * const series = { seconds, volts: seconds.map((_, i) => 12.6 + 0.005 * load(i)), amperes: seconds.map((_, i) => load(i - 5)) };
 * estimateLag(series).lagSeconds.value; // => 0.1
 * ```
 */
export function estimateLag(
  series: LogSeries,
  range?: LagSecondsRange,
): LagEstimate | Refusal<LagRefusalCode> {
  if (range) requireLagRange(range);
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  const { seconds, volts, amperes } = series;
  const rows = Math.max(32, Math.min(LAG_WINDOW_ROWS, Math.floor(seconds.length / 8)));
  const windows = createLagWindows(range);
  for (let from = 0; from + rows <= seconds.length; from += rows)
    windows.add(seconds, volts, amperes, from, rows);
  return windows.finish();
}
