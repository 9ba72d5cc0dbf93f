import { type Estimate, type Refusal, refuse, requireFinite, requirePositive } from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";
import {
  findWakeUps,
  levelBetween,
  levelNoise,
  meanOutside,
  settledFrom,
  settledWindow,
  type WakeUp,
} from "./draw-windows.js";
import { medianOf, noiseOf, resolutionOf } from "./scatter.js";

/** Current a parked vehicle takes, once its modules sleep. */
export interface SettledDraw {
  /** Mean once settled, wake-ups left out; positive, out of the battery, as `judgeDraw` wants it [A]. */
  readonly drawAmperes: Estimate;
  /** Mean once settled, wake-ups included: what empties the battery [A]. */
  readonly drawWithWakeUpsAmperes: Estimate;
  /** From the first row until the draw had settled [min]. */
  readonly settleMinutes: Estimate;
  /** From the first row to the last: what `judgeDraw` takes as `settledMinutes` where the log begins when the vehicle was left [min]. */
  readonly observedMinutes: number;
  readonly wakeUps: readonly WakeUp[];
  /** `later-stages-possible`: the log ends before the time in which modules may still go to sleep. */
  readonly doubts: readonly "later-stages-possible"[];
}

/** Settings of {@link measureSettledDraw}. */
export interface SettledDrawOptions {
  /** Length of the windows whose levels are compared [s] (> 0). Default 300 (our choice: longer than the first stage of 2 to 5 min takes). */
  readonly windowSeconds?: number;
  /** Two windows agree within this and the noise of their medians [A] (> 0). Default 0.003 (our choice: half of what a clamp must resolve, rounded up). */
  readonly toleranceAmperes?: number;
  /** Or within this share of the level (≥ 0). Default 0.1 (our choice). */
  readonly toleranceShare?: number;
  /**
   * A draw this far above the settled level, and five times the noise of a row, is a wake-up [A] (> 0). Default 0.05 (our choice: the
   * limit commonly set for the whole draw; five, as a month has a hundred thousand rows).
   */
  readonly wakeUpAmperes?: number;
  /** Time after which no further stage is expected [min] (≥ 0). Default 75 (the longest settling time in print for late vehicles). */
  readonly lastStageMinutes?: number;
  /** Zero error of the current meter, common to all rows [A] (≥ 0). Default 0: not included. A clamp drifts by tens of milliamperes. */
  readonly amperesStandardUncertainty?: number;
}

/**
 * Finds when the draw of a parked vehicle has settled, and how large it is then.
 *
 * Scope: 12 V vehicle with nothing running, the log beginning when it was left; any action starts the clock again. Modules
 * go to sleep in stages (published: 2 to 5, 16, 25, 60 min), so the level is that of the last windows, not the first pause.
 * Windows count by time, not by rows, so change-driven rows will do. Under noise of the rows windows agree less closely, and a
 * slow change smaller than that does not show: longer windows tell more. The uncertainty holds: scatter of the settled windows,
 * resolution, the zero error where given. Not in it: gain of the meter. That of the settling time is the window's length,
 * rectangular.
 *
 * @param series rows in order of time; current in A, negative while the vehicle draws
 * @returns draw [A], settling time [min], wake-ups
 *
 * Refuses `out-of-order`, `too-short` (under three windows), `sampling-too-slow` (rows further apart than a window),
 * `not-parked` (the battery is being charged), `never-settles` (no two windows agree, or the draw still changed after the last two that do).
 * @example
 * ```ts
 * import { measureSettledDraw } from "crankworthy/logs";
 * const seconds = Float64Array.from({ length: 600 }, (_, i) => 10 * i);
 * const amperes = seconds.map((t) => (t < 1200 ? -0.8 : -0.03));
 * const draw = measureSettledDraw({ seconds, volts: seconds.map(() => 12.6), amperes });
 * draw.drawAmperes.value; // => 0.03
 * draw.settleMinutes.value; // => 20
 * ```
 */
export function measureSettledDraw(
  series: LogSeries,
  options: SettledDrawOptions = {},
):
  | SettledDraw
  | Refusal<"out-of-order" | "too-short" | "sampling-too-slow" | "not-parked" | "never-settles"> {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  const {
    windowSeconds = 300,
    toleranceAmperes = 0.003,
    toleranceShare = 0.1,
    wakeUpAmperes = 0.05,
  } = options;
  const { lastStageMinutes = 75, amperesStandardUncertainty: zero = 0 } = options;
  requirePositive("windowSeconds", windowSeconds);
  requirePositive("toleranceAmperes", toleranceAmperes);
  requireFinite("toleranceShare", toleranceShare, 0, 1);
  requirePositive("wakeUpAmperes", wakeUpAmperes);
  requireFinite("lastStageMinutes", lastStageMinutes, 0);
  requireFinite("amperesStandardUncertainty", zero, 0, 1e12);
  const { seconds } = series;
  const whole = (seconds.at(-1) ?? 0) - (seconds[0] ?? 0);
  const windows = Math.floor(whole / windowSeconds + 1e-9);
  if (windows < 3)
    return refuse(
      "too-short",
      "The log is shorter than three windows.",
      "A longer log of the parked vehicle.",
    );
  for (let i = 1; i < seconds.length; i++)
    if (seconds[i]! - seconds[i - 1]! > windowSeconds * (1 + 1e-9))
      return refuse(
        "sampling-too-slow",
        "Rows are further apart than a window.",
        "More rows, or a longer window.",
      );
  const draw = series.amperes.map((one) => -one);
  // Counted back from the end, so that the last window is a whole one.
  const firstSeconds = seconds.at(-1)! - windows * windowSeconds;
  const levels = Array.from({ length: windows }, (_, w) =>
    levelBetween(seconds, draw, firstSeconds + w * windowSeconds, firstSeconds + (w + 1) * windowSeconds),
  );
  const noise = noiseOf(draw);
  // Windows of few rows, in a log written on change, differ most: the median of all windows stands for them.
  const pieces = medianOf(levels.map((one) => one.pieces));
  const tolerance = (level: number) =>
    Math.max(toleranceAmperes, toleranceShare * Math.abs(level)) + levelNoise(noise, pieces);
  const settled = settledWindow(
    levels.map((one) => one.value),
    tolerance,
  );
  if (!settled)
    return refuse("never-settles", "The draw had not settled when the log ended.", "A longer log.");
  const { level } = settled;
  if (level < -Math.max(toleranceAmperes, 2 * zero))
    return refuse(
      "not-parked",
      "The battery is being charged.",
      "The sign of the current, or a parked vehicle.",
    );
  const reach = level + Math.max(tolerance(level), 3 * noise);
  const settledRow = settledFrom(seconds, draw, firstSeconds + settled.window * windowSeconds, reach);
  const wakeUps = findWakeUps(seconds, draw, settledRow, level + Math.max(wakeUpAmperes, 5 * noise));
  const quiet = meanOutside(seconds, draw, settledRow, wakeUps, windowSeconds, tolerance(level));
  const all = meanOutside(seconds, draw, settledRow, [], windowSeconds, tolerance(level));
  const meter = Math.hypot(zero, resolutionOf(draw) / Math.sqrt(12));
  const widen = (one: Estimate): Estimate => ({
    value: one.value,
    standardUncertainty: Math.hypot(one.standardUncertainty, meter),
  });
  return {
    drawAmperes: widen(quiet),
    drawWithWakeUpsAmperes: widen(all),
    settleMinutes: {
      value: (seconds[settledRow]! - seconds[0]!) / 60,
      standardUncertainty: windowSeconds / 60 / Math.sqrt(12),
    },
    observedMinutes: whole / 60,
    wakeUps,
    doubts: whole / 60 < lastStageMinutes ? ["later-stages-possible"] : [],
  };
}
