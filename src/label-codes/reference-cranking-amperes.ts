import { isRefusal, type Refusal } from "../numeric/index.js";
import { derive } from "../sources/derive.js";
import type { Derivation } from "../sources/source.js";
import { type ReferenceOptions, type ReferenceRefusalCode, referenceFor } from "./jis-reference.js";
import { decodeJisType } from "./jis-type.js";
import type { ReferenceRating } from "./label-reading.js";

const QUANTITY = "reference cranking current";

/**
 * Estimates the cold cranking current (JIS D 5301:2006) behind a JIS type. An estimate, never a rating: one rank fits
 * many batteries.
 *
 * Scope: labels of 2006 and later, taken for granted where no year is given. Reserve capacity known: the rank relation. Type in the published list: its current.
 * Otherwise: rank times a factor of the case class (A, B17, B19, B24, D), not for valve-regulated types.
 *
 * @param jisType designation such as `55B24L`
 * @param options reserve capacity in min; what the number shall stand for; year of the label
 * @param derivation receives one step when given
 * @returns A with standard uncertainty and interval in A: list −15 % / +30 % for a battery, ±4 % for the list entry;
 *   rank class −18 % / +32 % and ±10 %; reserve capacity: half a step of the rank either way. Or a refusal
 *   `malformed-code`, `rank-class-unknown`, `jis-before-2006`
 * @throws RangeError when the reserve capacity is not above 0
 * Equation: CCA = (2.8 × rank)² / RC. Uniform between the bounds: u = √((a³ + b³) / (3 (a + b))), a below, b above.
 * Source: list of JIS types after the revision of 2006 (read), rank relation (Battery Association of Japan, read), spreads
 * our choice.
 * @example
 * ```ts
 * import { isRefusal } from "crankworthy/numeric";
 * import { referenceCrankingAmperes } from "crankworthy/label-codes";
 * const listed = referenceCrankingAmperes("55B24L");
 * !isRefusal(listed) && listed.interval; // => { lower: 314.5, upper: 481 }
 * const known = referenceCrankingAmperes("55B24L", { reserveCapacityMinutes: 64 });
 * !isRefusal(known) && known.amperes.value; // => 370.6
 * ```
 */
export function referenceCrankingAmperes(
  jisType: string,
  options: ReferenceOptions = {},
  derivation?: Derivation,
): ReferenceRating | Refusal<ReferenceRefusalCode> {
  const parts = decodeJisType(jisType);
  if (isRefusal(parts)) return parts;
  const reference = referenceFor(parts, options);
  if (!isRefusal(reference)) {
    const { reserveCapacityMinutes: minutes } = options;
    const inputs = { type: parts.text, ...(minutes && { minutes }) };
    derive(derivation, QUANTITY, reference.basis, inputs, reference.amperes, "A", reference);
  }
  return reference;
}
