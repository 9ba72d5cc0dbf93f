import { type Interval, normalQuantile, type Refusal, refuse, requireFinite } from "../numeric/index.js";

/** How many returned batteries had no defect. */
export interface NoDefectShare {
  /** Observed share, 0..1. */
  readonly share: number;
  /** Wilson interval at `confidence`. */
  readonly interval: Interval;
  readonly confidence: number;
}

/**
 * Share of returned batteries in which the workshop found no defect, with its interval.
 *
 * Scope: counts of batteries judged one by one. Batteries whose condition is not established belong in neither number.
 * The interval holds the chance of the sample only, not the errors of the test.
 *
 * Equation (Wilson's score interval), p = k/n, z the normal quantile of (1 + confidence)/2:
 * [p + z²/2n ± z √(p(1 − p)/n + z²/4n²)] / (1 + z²/n).
 *
 * Source: E. B. Wilson, Journal of the American Statistical Association 22 (1927) 209, from memory.
 *
 * @param counts whole numbers, `withoutDefect` ≤ `returned`
 * @param confidence 0.5..0.999; 0.95 when left out
 * @returns share and interval, or the refusal `no-returns` when none was returned
 * @throws RangeError when a count is no whole number ≥ 0 or the confidence is outside its range
 * @example
 * ```ts
 * import { noDefectShare } from "crankworthy/warranty";
 * const returns = noDefectShare({ returned: 263, withoutDefect: 81 });
 * returns.share; // => 0.3080
 * returns.interval.lower; // => 0.2553
 * returns.interval.upper; // => 0.3662
 * ```
 */
export function noDefectShare(
  counts: { readonly returned: number; readonly withoutDefect: number },
  confidence = 0.95,
): NoDefectShare | Refusal<"no-returns"> {
  const { returned: n, withoutDefect: k } = counts;
  for (const [name, count, most] of [
    ["returned", n, Number.MAX_SAFE_INTEGER],
    ["withoutDefect", k, n],
  ] as const) {
    requireFinite(name, count, 0, most);
    if (!Number.isInteger(count)) throw new RangeError(`${name}: received ${count}, expected a whole number`);
  }
  requireFinite("confidence", confidence, 0.5, 0.999);
  if (n === 0)
    return refuse(
      "no-returns",
      "No battery was returned, so there is no share.",
      "At least one returned battery.",
    );
  const share = k / n;
  const z = normalQuantile((1 + confidence) / 2);
  const perReturn = (z * z) / n;
  const middle = (share + perReturn / 2) / (1 + perReturn);
  const half = (z * Math.sqrt((share * (1 - share)) / n + perReturn / (4 * n))) / (1 + perReturn);
  // At none and at all the closed ends are exact; the subtraction would leave a rounding error instead.
  const interval = { lower: k === 0 ? 0 : middle - half, upper: k === n ? 1 : middle + half };
  return { share, interval, confidence };
}
