import {
  type Estimate,
  type Refusal,
  rectangularUncertainty,
  refuse,
  requireFinite,
  requirePositive,
} from "../../numeric/index.js";
import { findCrank } from "./crank-window.js";
import { fitOhmicResistance, type OhmicFit } from "./ohmic-resistance.js";
import { blockMean, noiseOf, resolutionOf, rowAtOrAfter } from "./scatter.js";
import { refuseVoltageDisorder, type VoltageSeries } from "./voltage-series.js";

/** One engine crank. */
export interface CrankEvent {
  /** Before the crank [V]. */
  readonly restVolts: Estimate;
  /** Lowest voltage; the value is the lowest row [V]. */
  readonly minimumVolts: Estimate;
  /** `upper`: sampled too slowly, the true minimum is at or below the value, how far is not known. */
  readonly bound: "two-sided" | "upper";
  readonly minimumAtSeconds: number;
  /** From the fall to the return half-way [s]. */
  readonly durationSeconds: Estimate;
  /** `lower`: the log ends before the voltage came back. */
  readonly durationBound: "two-sided" | "lower";
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** True when the lowest row lies within the inrush. */
  readonly minimumInInrush: boolean;
  /** While the engine turns, inrush and end left out [V]; refused where that lasts under 0.2 s. */
  readonly steadyVolts: Estimate | Refusal<"too-short">;
  /** Longest time between rows during the crank [s]. */
  readonly longestStepSeconds: number;
  /** Present where current was logged. */
  readonly current?: CrankCurrent;
}

/** Current of a crank; negative, as it discharges. */
export interface CrankCurrent {
  /** Strongest discharge; the value is the lowest row [A]. */
  readonly peakAmperes: Estimate;
  /** As of `minimumVolts`: `upper` where the true current may be stronger still. */
  readonly bound: "two-sided" | "upper";
  readonly steadyAmperes: Estimate | Refusal<"too-short">;
  /** V = E + R·I over crank and rest before it: a total resistance [Ω]. */
  readonly resistance: OhmicFit | Exclude<ReturnType<typeof fitOhmicResistance>, OhmicFit>;
}

/** Settings of {@link measureCrank}. */
export interface CrankOptions {
  /** The crank begins when the voltage falls this far below the rest before it [V] (> 0). Default 0.5 (our choice). */
  readonly dropVolts?: number;
  /** Inrush of the starter: left out of the steady part [s] (> 0). Default 0.3 (our choice: it lasts 0.1 to 0.3 s). */
  readonly inrushSeconds?: number;
  /** The voltage must stay back this long for the crank to be over [s] (≥ 0). Default 0.2 (our choice: longer than a compression stroke). */
  readonly holdSeconds?: number;
  /** Slowest sampling for a two-sided minimum [Hz] (> 0). Default 100 (our choice: the inrush dip lasts tens of milliseconds). */
  readonly leastSamplesPerSecond?: number;
  /** Give the lowest row as an upper bound on the minimum where sampling is slower, instead of refusing. Default false. */
  readonly acceptUpperBound?: boolean;
}

/**
 * Lowest voltage, duration and level of an engine crank.
 *
 * Scope: a slice with at least two rows of rest before the crank, and the crank's end; the first crank counts. Voltage where it
 * was logged: cables between the posts and the logger are in it. The uncertainty of the minimum holds: what lies between rows
 * (one-sided: the recovery after the lowest row, run backwards over one step with its own bend, taken as the whole width of a
 * rectangle below the value; the voltage is assumed to fall at least as fast as it recovers; where the lowest row is the last
 * before the end, the fall before it run on over one step), noise of one row, resolution.
 * That of the duration holds the step of the rows at both ends. Not in it: filters in the logger, which make a short dip
 * shallower.
 *
 * @param series rows in order of time; current may be left out
 * @returns minimum [V], duration [s], steady level, current
 *
 * Refuses `out-of-order`, `too-few-rows` (under 4), `no-rest-before`, `no-crank`, `sampling-too-slow` (a step during the crank
 * longer than 1/100 s, unless an upper bound is accepted).
 * @example
 * ```ts
 * import { measureCrank } from "crankworthy/logs";
 * const seconds = Float64Array.from({ length: 300 }, (_, i) => i / 100);
 * const volts = seconds.map((t) => (t < 1 || t >= 2 ? 12.6 : t < 1.05 ? 8 + 20 * (t - 1) : 10));
 * const crank = measureCrank({ seconds, volts });
 * crank.minimumVolts.value; // => 8.0
 * crank.durationSeconds.value; // => 1.00
 * const slow = { seconds: Float64Array.of(0, 1, 2, 3, 4), volts: Float64Array.of(12.6, 12.6, 9.9, 12.6, 13.9) };
 * measureCrank(slow).code; // => "sampling-too-slow"
 * measureCrank(slow, { acceptUpperBound: true }).bound; // => "upper"
 * ```
 */
export function measureCrank(
  series: VoltageSeries,
  options: CrankOptions = {},
):
  | CrankEvent
  | Refusal<"out-of-order" | "too-few-rows" | "no-rest-before" | "no-crank" | "sampling-too-slow"> {
  const disorder = refuseVoltageDisorder(series);
  if (disorder) return disorder;
  const { dropVolts = 0.5, inrushSeconds = 0.3, holdSeconds = 0.2, leastSamplesPerSecond = 100 } = options;
  requirePositive("dropVolts", dropVolts);
  requirePositive("inrushSeconds", inrushSeconds);
  requireFinite("holdSeconds", holdSeconds, 0);
  requirePositive("leastSamplesPerSecond", leastSamplesPerSecond);
  const { seconds, volts, amperes } = series;
  if (seconds.length < 4) return refuse("too-few-rows", "There are fewer than four rows.", "A longer log.");
  const found = findCrank(series, { dropVolts, inrushSeconds, holdSeconds });
  if (found === "no-crank")
    return refuse(
      "no-crank",
      "The voltage never falls this far below its rest.",
      "A smaller drop, or a crank.",
    );
  if (found === "no-rest")
    return refuse("no-rest-before", "The log begins within the crank.", "A log that begins earlier.");
  const { start, end, ended } = found;
  const last = Math.min(end, seconds.length - 1);
  let longestStepSeconds = 0;
  for (let i = start; i <= last; i++)
    longestStepSeconds = Math.max(longestStepSeconds, seconds[i]! - seconds[i - 1]!);
  // A hundredth of slack for times written with few decimals.
  const slow = longestStepSeconds > 1.01 / leastSamplesPerSecond;
  if (slow && !options.acceptUpperBound)
    return refuse(
      "sampling-too-slow",
      "Rows come too slowly to catch the lowest voltage.",
      "100 rows a second, or accepting the lowest row as an upper bound.",
    );
  const bound = slow ? "upper" : "two-sided";
  const inrushEnd = rowAtOrAfter(seconds, seconds[start]! + inrushSeconds);
  const minimumRow = lowestRow(volts, start, end);
  const steady = steadyRange(seconds, inrushEnd, end, ended, holdSeconds);
  const noise = noiseOf(volts.subarray(0, start));
  return {
    restVolts: {
      value: found.restVolts,
      standardUncertainty: Math.hypot(noise, rectangularUncertainty(resolutionOf(volts))),
    },
    minimumVolts: lowestOf(volts, minimumRow, start, end, noise),
    bound,
    minimumAtSeconds: seconds[minimumRow]!,
    durationSeconds: {
      value: seconds[last]! - seconds[start]!,
      standardUncertainty: Math.hypot(
        rectangularUncertainty(seconds[start]! - seconds[start - 1]!),
        ended ? rectangularUncertainty(seconds[last]! - seconds[last - 1]!) : 0,
      ),
    },
    durationBound: ended ? "two-sided" : "lower",
    fromSeconds: seconds[start]!,
    toSeconds: seconds[last]!,
    minimumInInrush: minimumRow < inrushEnd,
    steadyVolts: meanOver(volts, steady),
    longestStepSeconds,
    ...(amperes ? { current: currentOf({ seconds, volts, amperes }, start, end, steady, bound) } : {}),
  };
}

function currentOf(
  series: Required<VoltageSeries>,
  start: number,
  end: number,
  steady: readonly [number, number] | undefined,
  bound: "two-sided" | "upper",
): CrankCurrent {
  const { seconds, volts, amperes } = series;
  const cut = (column: Float64Array) => column.subarray(0, end);
  return {
    peakAmperes: lowestOf(
      amperes,
      lowestRow(amperes, start, end),
      start,
      end,
      noiseOf(amperes.subarray(0, start)),
    ),
    bound,
    steadyAmperes: meanOver(amperes, steady),
    resistance: fitOhmicResistance({ seconds: cut(seconds), volts: cut(volts), amperes: cut(amperes) }, 0),
  };
}

function lowestRow(column: Float64Array, start: number, end: number): number {
  let lowest = start;
  for (let i = start; i < end; i++) if (column[i]! < column[lowest]!) lowest = i;
  return lowest;
}

/** The lowest row, and how far below it the curve may have gone between rows of the crank. */
function lowestOf(column: Float64Array, row: number, start: number, end: number, noise: number): Estimate {
  const step = (from: number, to: number) => Math.max(0, column[to]! - column[from]!);
  let [rise, next] = [0, 0];
  if (row + 1 < end) {
    rise = step(row, row + 1);
    next = row + 2 < end ? step(row + 1, row + 2) : 0;
    // The release is no recovery: the curve may have fallen on, as it did before.
  } else if (row > start) rise = step(row, row - 1);
  // A single row under load: the curve came back at least as steeply.
  else rise = row + 1 < column.length ? step(row, row + 1) : 0;
  // An exponential recovery rose more in the step before: by the same ratio, at most threefold (our choice).
  const below = next > 0 && rise > next ? Math.min((rise * rise) / next, 3 * rise) : Math.max(rise, next);
  return {
    value: column[row]!,
    standardUncertainty: Math.hypot(
      below / Math.sqrt(3),
      noise,
      rectangularUncertainty(resolutionOf(column)),
    ),
  };
}

/** Rows while the engine turns: after the inrush, before the voltage starts back. */
function steadyRange(
  seconds: Float64Array,
  inrushEnd: number,
  end: number,
  ended: boolean,
  holdSeconds: number,
): readonly [number, number] | undefined {
  const lastSeconds = seconds[Math.min(end, seconds.length - 1)]!;
  const to = ended ? rowAtOrAfter(seconds, lastSeconds - holdSeconds / 2) : end;
  if (to - inrushEnd < 4 || seconds[to - 1]! - seconds[inrushEnd]! < SHORTEST_STEADY) return undefined;
  return [inrushEnd, to];
}

/** Less than about one compression stroke tells no level [s] (our choice). */
const SHORTEST_STEADY = 0.2;

function meanOver(
  column: Float64Array,
  range: readonly [number, number] | undefined,
): Estimate | Refusal<"too-short"> {
  if (!range)
    return refuse("too-short", "The engine turned too short a time to tell a level.", "A longer crank.");
  const mean = blockMean(column.subarray(range[0], range[1]));
  return {
    value: mean.value,
    standardUncertainty: Math.hypot(mean.standardUncertainty, rectangularUncertainty(resolutionOf(column))),
  };
}
