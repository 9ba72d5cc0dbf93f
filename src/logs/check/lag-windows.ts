import { type Refusal, refuse } from "../../numeric/index.js";
import type { LagEstimate, LagRefusalCode, LagSecondsRange } from "./lag-estimate.js";
import { bestLag, type LagSums, pool, withoutWindow } from "./lag-sums.js";

/** @internal Rows of a window: some seconds of a fast log, over which the charge stays the same. */
export const LAG_WINDOW_ROWS = 256;
/** @internal Current must change by this within a window [A] (our choice): 10 mV at 2 mΩ, above a logger's resolution. */
export const LAG_AMPERES = 5;
/** Windows kept; of more every second, fourth, … is taken. */
const MOST_WINDOWS = 64;
const LEAST_WINDOWS = 4;
/** Lags tried at most; a wider range is tried in coarser steps. */
const MOST_LAGS = 48;
/** Intervals within a window differ by less than this share of their mean. */
const EVEN = 0.5;
const LEAST_R_SQUARED = 0.1;

/** @internal Gathers windows with a changing load and estimates the lag from them. */
export function createLagWindows(range?: LagSecondsRange) {
  let windows: LagSums[] = [];
  let [step, grid, first, last] = [0, 0, 0, 0];
  let [changing, uneven, stride, seen] = [0, 0, 1, 0];

  function begin(seconds: number): void {
    step = seconds;
    const from = range?.firstSeconds ?? -Math.max(0.1, 4 * step);
    const to = range?.lastSeconds ?? Math.max(0.5, 12 * step);
    // A quarter of the window at most, so that three quarters remain in pairs.
    const most = LAG_WINDOW_ROWS / 4;
    first = Math.max(-most, Math.min(0, Math.round(from / step)));
    last = Math.min(most, Math.max(first + 2, Math.round(to / step)));
    grid = Math.max(1, Math.ceil((last - first) / MOST_LAGS));
    [windows, stride, seen] = [[], 1, 1];
  }
  return {
    /** A window of rows; it may hold NaN, which makes it uneven. */
    add(seconds: Float64Array, volts: Float64Array, amperes: Float64Array, from: number, rows: number): void {
      const to = from + rows;
      let least = Infinity;
      let most = -Infinity;
      for (let i = from; i < to; i++) {
        const current = amperes[i]!;
        if (current < least) least = current;
        if (current > most) most = current;
      }
      if (!(most - least >= LAG_AMPERES) || seen++ % stride) return;
      changing++;
      const mean = (seconds[to - 1]! - seconds[from]!) / (rows - 1);
      if (!evenRows(seconds, volts, amperes, from, to, mean)) {
        uneven++;
        return;
      }
      // The fastest sampling tells most: a window much faster than those before begins anew.
      if (step === 0 || mean < step / 1.5) begin(mean);
      if (mean > step * 1.1) return;
      if (windows.length === MOST_WINDOWS) {
        windows = windows.filter((_, i) => i % 2 === 0);
        stride *= 2;
      }
      windows.push(sums(volts, amperes, from, rows, first, last, grid));
    },
    finish(): LagEstimate | Refusal<LagRefusalCode> {
      if (windows.length < LEAST_WINDOWS) {
        if (uneven > 0 && uneven >= changing / 2)
          return refuse(
            "not-evenly-sampled",
            "Under a changing load rows are not evenly sampled.",
            "Voltage and current together at even times.",
          );
        if (changing === 0)
          return refuse("no-change-of-current", "The current hardly changes.", "A log with a changing load.");
        return refuse("too-few-rows", "Fewer than four windows have a changing load.", "A longer log.");
      }
      return estimate(windows, first, grid, step);
    },
  };
}

/** Every row is there, at even times. */
function evenRows(
  seconds: Float64Array,
  volts: Float64Array,
  amperes: Float64Array,
  from: number,
  to: number,
  mean: number,
): boolean {
  if (!(mean > 0)) return false;
  for (let i = from; i < to; i++) if (Number.isNaN(volts[i]! + amperes[i]!)) return false;
  for (let i = from + 1; i < to; i++)
    if (!(Math.abs(seconds[i]! - seconds[i - 1]! - mean) <= (EVEN / 2) * mean)) return false;
  return true;
}

function sums(
  volts: Float64Array,
  amperes: Float64Array,
  from: number,
  rows: number,
  first: number,
  last: number,
  grid: number,
): LagSums {
  const lags = Math.floor((last - first) / grid) + 1;
  const result = { vv: new Float64Array(lags), vi: new Float64Array(lags), ii: new Float64Array(lags) };
  // Differences from the first row: sums of squares lose no digits to the mean.
  const [volt, ampere] = [volts[from]!, amperes[from]!];
  for (let at = 0; at < lags; at++) {
    const lag = first + at * grid;
    const begin = from + Math.max(0, -lag);
    const end = from + Math.min(rows, rows - lag);
    let [v, i, vv, vi, ii] = [0, 0, 0, 0, 0];
    for (let k = begin; k < end; k++) {
      const voltage = volts[k]! - volt;
      const current = amperes[k + lag]! - ampere;
      v += voltage;
      i += current;
      vv += voltage * voltage;
      vi += voltage * current;
      ii += current * current;
    }
    const pairs = end - begin;
    if (pairs < 8) continue;
    result.vv[at] = vv - (v * v) / pairs;
    result.vi[at] = vi - (v * i) / pairs;
    result.ii[at] = ii - (i * i) / pairs;
  }
  return result;
}

function estimate(
  windows: readonly LagSums[],
  first: number,
  grid: number,
  step: number,
): LagEstimate | Refusal<LagRefusalCode> {
  const all = pool(windows);
  const best = bestLag(all);
  if (!(best.rSquared >= LEAST_R_SQUARED))
    return refuse(
      "no-relation",
      "The voltage does not follow the current at any lag.",
      "Both read at one battery.",
    );
  if (best.atEdge) return refuse("at-edge", "The best lag is at the end of those tried.", "A wider range.");
  const left = windows.map((one) => bestLag(withoutWindow(all, one)).place);
  const mean = left.reduce((sum, one) => sum + one, 0) / left.length;
  const squares = left.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  const spread = Math.sqrt(((left.length - 1) / left.length) * squares);
  const gridSeconds = grid * step;
  const zero = Math.round(-first / grid);
  return {
    lagSeconds: {
      value: (first + best.place * grid) * step,
      standardUncertainty: gridSeconds * Math.hypot(spread, 1 / Math.sqrt(12)),
    },
    rSquared: best.rSquared,
    rSquaredWithoutLag: all.rSquared(zero),
    stepSeconds: step,
    gridSeconds,
    windows: windows.length,
  };
}
