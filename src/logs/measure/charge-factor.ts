import { type Estimate, type Refusal, refuse, requireFinite } from "../../numeric/index.js";
import type { LogSegment, SegmentTotals } from "../segments.js";
import { type ChargeMoved, chargeVariance } from "./charge-moved.js";

/** What of a `LogSegment` is needed to add up its charge. */
export interface SegmentCharge extends Pick<LogSegment, "fromSeconds" | "toSeconds"> {
  readonly totals: Pick<
    SegmentTotals,
    | "chargeInAmpereHours"
    | "chargeOutAmpereHours"
    | "chargeVarianceAmpereSecondsSquared"
    | "longestGapSeconds"
  > & {
    /**
     * −Σ w²·(I₂ − I₁)(I₃ − I₂) [A²s²] as in `chargeMoved`, of either sign: tells noise of the rows from changes of the load. Without it
     * all that rows differ by counts as noise.
     */
    readonly chargeNoiseAmpereSecondsSquared?: number;
    /** As in `chargeMoved`, their variance included above. A segment without them adds none to the count. */
    readonly gaps?: number;
    readonly gapSeconds?: number;
  };
}

/** Settings of {@link chargeMovedInSegments}. */
export interface SegmentChargeOptions {
  /** Uncertainty of the current meter common to all rows (zero error) [A] (≥ 0). Default 0: not included. */
  readonly amperesStandardUncertainty?: number;
}

/** White noise at even steps: variance of the charge over the spread between rows. */
const ALL_NOISE = 6;

/**
 * Ampere-hours in and out over segments of a log, from their totals, without a second look at the file.
 *
 * Scope: segments that do not overlap; time between them does not count. Where a segment moved charge both ways, what the
 * current may have done between its rows counts on both sides, and so does its time for the zero error. The uncertainty is
 * that of `chargeMoved` where the totals tell noise from load; otherwise all differences between rows count as noise of
 * rows at even steps, which is right for a steady current and up to √6 times too wide for one that steps.
 *
 * @param segments of one log, any order
 * @returns both charges [Ah], each ≥ 0, as `chargeMoved` gives them
 *
 * Refuses `no-segment`, `values-not-plausible` (a charge or its uncertainty beyond 10¹² Ah).
 *
 * Equation: sums of the segments' charges; u² = S + (5/6)·N + (u_zero·T)² with S = Σ variance, and N = 6·S where it is not known: white
 * noise of σ a row gives the charge σ²·Σ Δt², and S a sixth of that, since (I₂ − I₁)² is 2σ² on average.
 * @example
 * ```ts
 * import { chargeMovedInSegments } from "crankworthy/logs";
 * const totals = { chargeInAmpereHours: 0, chargeOutAmpereHours: 6, chargeVarianceAmpereSecondsSquared: 0, longestGapSeconds: 60 };
 * const moved = chargeMovedInSegments([{ fromSeconds: 0, toSeconds: 7200, totals }], { amperesStandardUncertainty: 0.01 });
 * moved.outAmpereHours; // => { value: 6, standardUncertainty: 0.02 }
 * ```
 */
export function chargeMovedInSegments(
  segments: readonly SegmentCharge[],
  options?: SegmentChargeOptions,
): ChargeMoved | Refusal<"no-segment" | "values-not-plausible"> {
  const zero = options?.amperesStandardUncertainty ?? 0;
  requireFinite("amperesStandardUncertainty", zero, 0);
  if (segments.length === 0) return refuse("no-segment", "There is no segment.", "A segment of the log.");
  let [seconds, longest, gaps, gapSeconds] = [0, 0, 0, 0];
  const side = {
    in: { charge: 0, spread: 0, noise: 0, time: 0 },
    out: { charge: 0, spread: 0, noise: 0, time: 0 },
  };
  for (const { fromSeconds, toSeconds, totals } of segments) {
    const time = toSeconds - fromSeconds;
    requireFinite("segment, seconds", time, 0);
    requireFinite("segment, longest gap", totals.longestGapSeconds, 0);
    seconds += time;
    longest = Math.max(longest, totals.longestGapSeconds);
    requireFinite("segment, gaps", totals.gaps ?? 0, 0);
    requireFinite("segment, gap seconds", totals.gapSeconds ?? 0, 0);
    gaps += totals.gaps ?? 0;
    gapSeconds += totals.gapSeconds ?? 0;
    for (const [one, charge] of [
      [side.in, totals.chargeInAmpereHours],
      [side.out, totals.chargeOutAmpereHours],
    ] as const) {
      requireFinite("segment, ampere-hours", charge, 0);
      if (charge === 0) continue;
      const { chargeVarianceAmpereSecondsSquared: spread } = totals;
      const { chargeNoiseAmpereSecondsSquared: noise = ALL_NOISE * spread } = totals;
      requireFinite("segment, variance", spread, 0);
      requireFinite("segment, noise", noise);
      one.charge += charge;
      one.spread += spread;
      one.noise += noise;
      one.time += time;
    }
  }
  const estimate = ({ charge, spread, noise, time }: (typeof side)["in"]): Estimate => ({
    value: charge,
    standardUncertainty: Math.hypot(Math.sqrt(chargeVariance(spread, noise)), zero * time) / 3600,
  });
  const moved = { inAmpereHours: estimate(side.in), outAmpereHours: estimate(side.out) };
  if (!isPlausible(moved)) return notPlausible();
  return { ...moved, seconds, longestGapSeconds: longest, gaps, gapSeconds };
}

/** Beyond any battery [Ah] (our choice: a large grid storage plant holds 10⁶). Rows of a log may hold anything: that is no error of a program. */
const MOST_AMPERE_HOURS = 1e12;

type TwoCharges = Pick<ChargeMoved, "inAmpereHours" | "outAmpereHours">;

function isPlausible({ inAmpereHours: into, outAmpereHours: out }: TwoCharges): boolean {
  return [into, out].every((one) => Math.max(one.value, one.standardUncertainty) <= MOST_AMPERE_HOURS);
}

const notPlausible = () =>
  refuse(
    "values-not-plausible",
    "The charge is beyond any battery.",
    "A log without such values; the check names the rows.",
  );

/**
 * Charge factor: ampere-hours put in over ampere-hours taken out.
 *
 * Scope: means something only between two moments of the same charge, usually full to full: the caller chooses them. A factor of
 * an unfinished cycle is no efficiency. The uncertainty holds that of both charges, added in full: a zero error of the
 * meter makes one larger and the other smaller. A gain error common to both cancels. Not in it: a charge at the end other
 * than at the start, self-discharge, current below the meter's resolution.
 *
 * @param moved of `chargeMoved` or {@link chargeMovedInSegments}
 * @returns in/out (≥ 0)
 *
 * Refuses `no-discharge` (nothing, or nothing distinguishable from zero at twice its uncertainty, was taken out),
 * `values-not-plausible` (a charge or its uncertainty beyond 10¹² Ah).
 *
 * Equation: f = Q_in/Q_out; u = f·(u_in/Q_in + u_out/Q_out).
 * @example
 * ```ts
 * import { chargeFactor } from "crankworthy/logs";
 * const inAmpereHours = { value: 21, standardUncertainty: 0.1 };
 * const outAmpereHours = { value: 20, standardUncertainty: 0.1 };
 * chargeFactor({ inAmpereHours, outAmpereHours }).value; // => 1.05
 * ```
 */
export function chargeFactor(moved: TwoCharges): Estimate | Refusal<"no-discharge" | "values-not-plausible"> {
  const { inAmpereHours: into, outAmpereHours: out } = moved;
  requireFinite("inAmpereHours", into.value, 0);
  requireFinite("outAmpereHours", out.value, 0);
  requireFinite("inAmpereHours, standardUncertainty", into.standardUncertainty, 0);
  requireFinite("outAmpereHours, standardUncertainty", out.standardUncertainty, 0);
  if (!isPlausible(moved)) return notPlausible();
  if (!(out.value > Math.max(1e-12, 2 * out.standardUncertainty)))
    return refuse(
      "no-discharge",
      "Too little charge was taken out to compare with.",
      "A log with a discharge.",
    );
  const value = into.value / out.value;
  return {
    value,
    standardUncertainty: into.standardUncertainty / out.value + (value * out.standardUncertainty) / out.value,
  };
}
