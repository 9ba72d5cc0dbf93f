import {
  type Estimate,
  type Refusal,
  refuse,
  requireFinite,
  requirePositive,
  wrongArgument,
} from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";
import { rowAtOrAfter } from "./scatter.js";

/** Charge that went in and out of the battery. */
export interface ChargeMoved {
  readonly inAmpereHours: Estimate;
  readonly outAmpereHours: Estimate;
  /** Time covered [s]. */
  readonly seconds: number;
  /** Longest time between two rows [s]. */
  readonly longestGapSeconds: number;
  /** Intervals in which the current is not known, and their time together [s]; see `mostGapSeconds`. */
  readonly gaps: number;
  readonly gapSeconds: number;
}

/** Settings of {@link chargeMoved}. */
export interface ChargeMovedOptions {
  /** First and last time to count, both included [s]. Default: all rows. */
  readonly fromSeconds?: number;
  readonly toSeconds?: number;
  /** Uncertainty of the current meter common to all rows (zero error) [A] (≥ 0). Default 0: not included. */
  readonly amperesStandardUncertainty?: number;
  /**
   * An interval longer than this, and than three times the median of the intervals counted, is a gap [s] (> 0). Default 900
   * (our choice: loggers that write on change report every ten minutes at rest). Raise it where a row stands for its current for longer.
   */
  readonly mostGapSeconds?: number;
}

/** A logger that is slow all the time has no gaps (our choice). */
const GAP_MEDIANS = 3;

/**
 * Ampere-hours in and out of the battery by the trapezoidal rule.
 *
 * Scope: whole rows between two times; an interval whose current changes sign is split where the straight line crosses
 * zero. The uncertainty holds what the current may have done between rows (rectangular between its two ends), noise of the rows,
 * and the meter's zero error where it is given. Noise is told from changes of the load by their order: after noise up comes noise
 * down, so neighbouring differences have opposite signs, while after one step of a load there is nothing. A pulse one row
 * long counts as noise. In a gap the current may have been anything between nothing and twice that of its stronger end; the charge
 * is that of the straight line all the same. Not in it: a gain error, the meter's resolution where the current stays on one step, and that noise
 * around zero counts as charge both ways (their difference is right).
 *
 * @param series rows in order of time
 * @returns both charges [Ah], each ≥ 0
 *
 * Refuses `out-of-order`, `too-few-rows` (fewer than two between the two times).
 *
 * Equation: Q = Σ (I₁ + I₂)/2·Δt / 3600; u² = S + (5/6)·N + (u_zero·T)², S = Σ ((I₂ − I₁)·Δt)²/12,
 * N = max(0, −Σ w²·(I₂ − I₁)(I₃ − I₂)) with w = (Δt₁₂ + Δt₂₃)/2. White noise of σ a row makes −(I₂ − I₁)(I₃ − I₂) = σ² on average, so
 * N = Σ w²σ², the variance it gives the charge; a sixth of that (at even steps) is in S already. In a gap the term of S is
 * (max(|I₁|, |I₂|)·Δt)²/3 instead, and N has no term on either side of it.
 * @example
 * ```ts
 * import { chargeMoved } from "crankworthy/logs";
 * const series = {
 *   seconds: Float64Array.of(0, 3600, 7200),
 *   volts: Float64Array.of(12.6, 12.4, 12.2),
 *   amperes: Float64Array.of(-3, -3, -3),
 * };
 * chargeMoved(series).outAmpereHours; // => { value: 6, standardUncertainty: 0 }
 * ```
 */
export function chargeMoved(
  series: LogSeries,
  options?: ChargeMovedOptions,
): ChargeMoved | Refusal<"out-of-order" | "too-few-rows"> {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  const { seconds, amperes } = series;
  const from = options?.fromSeconds ?? Number.NEGATIVE_INFINITY;
  const to = options?.toSeconds ?? Number.POSITIVE_INFINITY;
  // Infinity on either side means all rows; the wrong way round nothing.
  if (!(from <= to)) wrongArgument("fromSeconds", from, `a time up to toSeconds, ${to}`);
  const zero = options?.amperesStandardUncertainty ?? 0;
  requireFinite("amperesStandardUncertainty", zero, 0);
  const mostGapSeconds = options?.mostGapSeconds ?? 900;
  requirePositive("mostGapSeconds", mostGapSeconds);
  const gapFrom = Math.max(mostGapSeconds, GAP_MEDIANS * medianInterval(seconds, from, to, mostGapSeconds));
  const into = { charge: 0, spread: 0, noise: 0, time: 0 };
  const out = { charge: 0, spread: 0, noise: 0, time: 0 };
  let [rows, total, longest, stepBefore, changeBefore] = [0, 0, 0, 0, 0];
  let [intoBefore, outBefore] = [false, false];
  let [gaps, gapSeconds] = [0, 0];
  for (let i = 0; i < seconds.length; i++) {
    if (seconds[i]! < from || seconds[i]! > to) continue;
    if (rows++ === 0) continue;
    const step = seconds[i]! - seconds[i - 1]!;
    const a = amperes[i - 1]!;
    const b = amperes[i]!;
    const isGap = step > gapFrom;
    if (isGap) {
      gaps++;
      gapSeconds += step;
    }
    // A change across a gap tells nothing of noise.
    const change = isGap ? 0 : b - a;
    const spread = isGap ? gapVariance(step, a, b) : (change * step) ** 2 / 12;
    const noise = -change * changeBefore * ((step + stepBefore) / 2) ** 2;
    total += step;
    longest = Math.max(longest, step);
    const isInto = a > 0 || b > 0 || (a === 0 && b === 0);
    const isOut = a < 0 || b < 0;
    if (isInto && isOut) {
      const share = Math.abs(a) / (Math.abs(a) + Math.abs(b));
      const first = (Math.abs(a) * share * step) / 2;
      const second = (Math.abs(b) * (1 - share) * step) / 2;
      into.charge += a > 0 ? first : second;
      out.charge += a > 0 ? second : first;
      const inTime = (a > 0 ? share : 1 - share) * step;
      into.time += inTime;
      out.time += step - inTime;
    } else {
      const side = isInto ? into : out;
      side.charge += (Math.abs(a + b) / 2) * step;
      side.time += step;
    }
    // A row between two intervals counts on every side that one of them touches.
    if (isInto) into.spread += spread;
    if (isOut) out.spread += spread;
    if (isInto || intoBefore) into.noise += noise;
    if (isOut || outBefore) out.noise += noise;
    [stepBefore, changeBefore, intoBefore, outBefore] = [step, change, isInto, isOut];
  }
  if (rows < 2) return refuse("too-few-rows", "Fewer than two rows lie in this time.", "A longer time.");
  const estimate = ({ charge, spread, noise, time }: typeof into): Estimate => ({
    value: charge / 3600,
    standardUncertainty: Math.hypot(Math.sqrt(chargeVariance(spread, noise)), zero * time) / 3600,
  });
  return {
    inAmpereHours: estimate(into),
    outAmpereHours: estimate(out),
    seconds: total,
    longestGapSeconds: longest,
    gaps,
    gapSeconds,
  };
}

/**
 * @internal Variance of the charge in a gap [A²s²], about that of the straight line: from nothing to twice the stronger current. It is never
 * less than what an interval between two rows has otherwise.
 */
export function gapVariance(step: number, a: number, b: number): number {
  const most = Math.max(Math.abs(a), Math.abs(b)) * step;
  return (most * most) / 3;
}

/** The lower middle one, so that of two intervals the long one can be a gap; 0 where none is longer than `mostGapSeconds`. */
function medianInterval(seconds: Float64Array, from: number, to: number, mostGapSeconds: number): number {
  const first = rowAtOrAfter(seconds, from);
  const steps = new Float64Array(Math.max(0, seconds.length - first - 1));
  let [count, longest] = [0, 0];
  for (let i = first + 1; i < seconds.length && seconds[i]! <= to; i++) {
    const step = seconds[i]! - seconds[i - 1]!;
    steps[count++] = step;
    longest = Math.max(longest, step);
  }
  if (!(longest > mostGapSeconds)) return 0;
  return steps.subarray(0, count).sort()[(count - 1) >> 1]!;
}

/** @internal Variance of a charge [A²s²] from the spread between rows and the (signed) sum that shows noise. */
export function chargeVariance(spread: number, noise: number): number {
  return spread + (5 / 6) * Math.max(0, noise);
}
