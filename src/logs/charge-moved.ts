import { type Estimate, type Refusal, refuse, requireFinite, wrongArgument } from "../numeric/index.js";
import { type LogSeries, refuseDisorder } from "./series.js";

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
 * zero. The uncertainty holds what the current may have done between rows (rectangular between its two ends), and the
 * meter's zero error where it is given; a gain error is not in it.
 *
 * @param series rows in order of time
 * @returns both charges [Ah], each ≥ 0
 *
 * Refuses `out-of-order`, `too-few-rows` (fewer than two between the two times).
 *
 * Equation: Q = Σ (I₁ + I₂)/2·Δt / 3600; u² = Σ ((I₂ − I₁)·Δt)²/12 + (u_zero·T)².
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
  let [moved, out, variance, inVariance, total, longest, inTime] = [0, 0, 0, 0, 0, 0, 0];
  let rows = 0;
  for (let i = 0; i < seconds.length; i++) {
    if (seconds[i]! < from || seconds[i]! > to) continue;
    if (rows++ === 0) continue;
    const step = seconds[i]! - seconds[i - 1]!;
    const a = amperes[i - 1]!;
    const b = amperes[i]!;
    const spread = ((b - a) * step) ** 2 / 12;
    total += step;
    longest = Math.max(longest, step);
    if (a >= 0 && b >= 0) {
      moved += ((a + b) / 2) * step;
      inVariance += spread;
      inTime += step;
    } else if (a <= 0 && b <= 0) {
      out -= ((a + b) / 2) * step;
      variance += spread;
    } else {
      const share = Math.abs(a) / (Math.abs(a) + Math.abs(b));
      const first = (Math.abs(a) * share * step) / 2;
      const second = (Math.abs(b) * (1 - share) * step) / 2;
      moved += a > 0 ? first : second;
      out += a > 0 ? second : first;
      inTime += (a > 0 ? share : 1 - share) * step;
      variance += spread;
      inVariance += spread;
    }
  }
  if (rows < 2) return refuse("too-few-rows", "Fewer than two rows lie in this time.", "A longer time.");
  const charge = (ampereSeconds: number, squared: number, time: number): Estimate => ({
    value: ampereSeconds / 3600,
    standardUncertainty: Math.hypot(Math.sqrt(squared), zero * time) / 3600,
  });
  return {
    inAmpereHours: charge(moved, inVariance, inTime),
    outAmpereHours: charge(out, variance, total - inTime),
    seconds: total,
    longestGapSeconds: longest,
  };
}
