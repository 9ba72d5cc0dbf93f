import { type Estimate, type Refusal, refuse, requireEstimate, requireKey } from "../numeric/index.js";
import type { Derivation } from "../sources/index.js";
import {
  RIPPLE_LIMITS,
  type RippleLimitName,
  type RippleMethod,
  type RipplePlace,
} from "./charging-circuit.data.js";
import { type JudgementOptions, judgeLimit, type LimitJudgement, limitOf, refuseNegative } from "./limit.js";

/** AC ripple while charging, with where and how it was read: without both it means nothing. */
export interface RippleReading {
  readonly rippleVolts: Estimate;
  readonly place: RipplePlace;
  readonly method: RippleMethod;
}

/** Reasons to take a ripple judgement with care. */
export type RippleDoubt = "method-of-limit-not-printed" | "meters-differ";

/**
 * Judges AC ripple against one named limit; there is no default, because published limits differ tenfold.
 *
 * Scope: 12 V systems, engine running under load. The battery filters: the alternator's output post reads more than the
 * battery posts, and a weak battery raises both.
 *
 * @param reading ripple [V] (≥ 0), place and method
 * @param limit name of a limit; its place and method must be those of the reading
 * @returns outcome, margin [V], probability, doubts
 *
 * Refuses `place-differs`, `method-differs` (peak to peak against RMS or a meter, also where the limit's method is not
 * printed), `negative-reading`.
 *
 * Source: trade and training pages, a vehicle maker's dealer magazine; defaults are our choice, a factor of 2 either way.
 * @example
 * ```ts
 * import { judgeRipple } from "crankworthy/vehicle";
 * const reading = { rippleVolts: { value: 0.08, standardUncertainty: 0.004 }, place: "battery-posts", method: "true-rms" } as const;
 * judgeRipple(reading, "default-look-further").outcome; // => "within-limit"
 * judgeRipple(reading, "output-250-mv").code; // => "place-differs"
 * ```
 */
export function judgeRipple(
  reading: RippleReading,
  limit: RippleLimitName,
  options?: JudgementOptions,
  derivation?: Derivation,
):
  | (LimitJudgement & { readonly doubts: readonly RippleDoubt[] })
  | Refusal<"place-differs" | "method-differs" | "negative-reading"> {
  requireKey("limit", limit, RIPPLE_LIMITS);
  requireKey("place", reading.place, { "battery-posts": 0, "alternator-output": 0 });
  requireKey("method", reading.method, { "meter-on-ac": 0, "true-rms": 0, "peak-to-peak": 0 });
  requireEstimate("rippleVolts", reading.rippleVolts);
  const [place, method, row] = RIPPLE_LIMITS[limit];
  if (reading.place !== place)
    return refuse("place-differs", `The limit holds at: ${place}.`, "Another limit.");
  if ((reading.method === "peak-to-peak") !== (method === "peak-to-peak"))
    return refuse("method-differs", "Peak to peak and RMS differ.", "Another limit.");
  if (reading.rippleVolts.value < 0) return refuseNegative("ripple");
  const doubts: RippleDoubt[] = [];
  if (method === null) doubts.push("method-of-limit-not-printed");
  else if (method !== reading.method) doubts.push("meters-differ");
  const judged = judgeLimit("ripple", "V", reading.rippleVolts, "at-most", limitOf(row), options, derivation);
  return { ...judged, doubts };
}
