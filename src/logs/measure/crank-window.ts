import { medianOf, rowAtOrAfter } from "./scatter.js";
import type { VoltageSeries } from "./voltage-series.js";

/** @internal Where a crank begins and ends. */
export interface CrankWindow {
  /** First row below the starting level, and the first row back above the ending level (one past the last row if never). */
  readonly start: number;
  readonly end: number;
  readonly ended: boolean;
  readonly restVolts: number;
  /** Level that ends the crank [V]. */
  readonly endLevel: number;
}

interface CrankRule {
  readonly dropVolts: number;
  readonly inrushSeconds: number;
  readonly holdSeconds: number;
}

/** @internal Finds the crank of a slice: fall from the rest before it, end half-way back from the level while turning. */
export function findCrank(series: VoltageSeries, rule: CrankRule): CrankWindow | "no-rest" | "no-crank" {
  const { seconds, volts } = series;
  const rows = seconds.length;
  // The rest is the median of the first rows as long as the voltage has not fallen: two rows at least.
  let start = 1;
  let restVolts = volts[0] ?? 0;
  for (; start < rows; start++) {
    if (volts[start]! < restVolts - rule.dropVolts) break;
    const from = Math.max(0, start - 50);
    restVolts = medianOf(volts.subarray(from, start + 1));
  }
  if (start >= rows) return "no-crank";
  if (start < 2) return "no-rest";
  const startSeconds = seconds[start]!;
  const firstGuess = endOf(series, start, restVolts - rule.dropVolts, rule.holdSeconds);
  // While turning: after the inrush, up to a second. Shorter events end where they first come back.
  const from = rowAtOrAfter(seconds, startSeconds + rule.inrushSeconds);
  const to = Math.min(rowAtOrAfter(seconds, startSeconds + 1), firstGuess);
  const turning = to - from >= 2 ? medianOf(volts.subarray(from, to)) : undefined;
  const endLevel =
    turning === undefined
      ? restVolts - rule.dropVolts
      : restVolts - Math.max(0.5 * (restVolts - turning), 0.1);
  const end = endOf(series, start, endLevel, rule.holdSeconds);
  return { start, end, ended: end < rows, restVolts, endLevel };
}

/** First row from which the voltage stays above the level for the hold time; the number of rows if there is none. */
function endOf({ seconds, volts }: VoltageSeries, start: number, level: number, hold: number): number {
  let back = -1;
  for (let i = start; i < seconds.length; i++) {
    if (volts[i]! < level) back = -1;
    else if (back < 0) back = i;
    if (back >= 0 && seconds[i]! - seconds[back]! >= hold) return back;
  }
  return seconds.length;
}
