import { type Estimate, type Refusal, refuse, requireFinite, wrongArgument } from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";

/** Charge that went in and out of the battery. */
export interface ChargeMoved {
  readonly inAmpereHours: Estimate;
  readonly outAmpereHours: Estimate;
  /** Time covered [s]. */
  readonly seconds: number;
  /** Longest time between two rows [s]. */
  readonly longestGapSeconds: number;
}

/** Settings of {@link chargeMoved}. */
export interface ChargeMovedOptions {
  /** First and last time to count, both included [s]. Default: all rows. */
  readonly fromSeconds?: number;
  readonly toSeconds?: number;
  /** Uncertainty of the current meter common to all rows (zero error) [A] (≥ 0). Default 0: not included. */
  readonly amperesStandardUncertainty?: number;
}

/**
 * Ampere-hours in and out of the battery by the trapezoidal rule.
 *
 * Scope: whole rows between two times; an interval whose current changes sign is split where the straight line crosses
 * zero. The uncertainty holds what the current may have done between rows (rectangular between its two ends), noise of the rows,
 * and the meter's zero error where it is given. Noise is told from changes of the load by their order: after noise up comes noise
 * down, so neighbouring differences have opposite signs, while after one step of a load there is nothing. A pulse one row
 * long counts as noise. Not in it: a gain error, the meter's resolution where the current stays on one step, and that noise
 * around zero counts as charge both ways (their difference is right).
 *
 * @param series rows in order of time
 * @returns both charges [Ah], each ≥ 0
 *
 * Refuses `out-of-order`, `too-few-rows` (fewer than two between the two times).
 *
 * Equation: Q = Σ (I₁ + I₂)/2·Δt / 3600; u² = S + (5/6)·N + (u_zero·T)², S = Σ ((I₂ − I₁)·Δt)²/12,
 * N = max(0, −Σ w²·(I₂ − I₁)(I₃ − I₂)) with w = (Δt₁₂ + Δt₂₃)/2. White noise of σ a row makes −(I₂ − I₁)(I₃ − I₂) = σ² on average, so
 * N = Σ w²σ², the variance it gives the charge; a sixth of that (at even steps) is in S already.
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
  const into = { charge: 0, spread: 0, noise: 0, time: 0 };
  const out = { charge: 0, spread: 0, noise: 0, time: 0 };
  let [rows, total, longest, stepBefore, changeBefore] = [0, 0, 0, 0, 0];
  let [intoBefore, outBefore] = [false, false];
  for (let i = 0; i < seconds.length; i++) {
    if (seconds[i]! < from || seconds[i]! > to) continue;
    if (rows++ === 0) continue;
    const step = seconds[i]! - seconds[i - 1]!;
    const a = amperes[i - 1]!;
    const b = amperes[i]!;
    const change = b - a;
    const spread = (change * step) ** 2 / 12;
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
  };
}

/** @internal Variance of a charge [A²s²] from the spread between rows and the (signed) sum that shows noise. */
export function chargeVariance(spread: number, noise: number): number {
  return spread + (5 / 6) * Math.max(0, noise);
}
