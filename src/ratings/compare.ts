import {
  type Estimate,
  isRefusal,
  type Refusal,
  requireEstimate,
  requirePositive,
} from "../numeric/index.js";
import { derive } from "../sources/derive.js";
import type { Provenance } from "../sources/index.js";
import type { Derivation } from "../sources/source.js";
import {
  type ConversionRefusalCode,
  convertRating,
  isNoRating,
  requireStandard,
  testedAs,
} from "./convert.js";
import type { RatingStandard, StandardAmperes } from "./standards.js";

/** A measured cranking current and the rating it is held against. */
export interface RatingComparison {
  readonly measured: { readonly amperes: Estimate; readonly standard: RatingStandard };
  readonly label: StandardAmperes;
}

/** How a measured cranking current stands to the label. */
export interface ComparedRating {
  /** Measured over label, dimensionless. */
  readonly ratio: Estimate;
  /** A, in the label's standard. */
  readonly measuredInLabelStandard: Estimate;
  /** True when the reading had to be converted. */
  readonly converted: boolean;
  /**
   * Same printed name on both sides, but it covers more than one test. `en-level-unstated`: if one side means level 1
   * and the other level 2, the ratio is off by 8-15 % (from memory). `iec-edition-unstated`: it can be off by half.
   * The uncertainty of `ratio` does not contain this: say it to the reader.
   */
  readonly caveat?: "en-level-unstated" | "iec-edition-unstated";
}

const RATIO: Provenance = { source: "ratings-choice", standing: "computed" };
const EN_UNSTATED = "en-50342-1:unstated";
const EN_2015 = "en-50342-1:2015";

/** "EN" alone is what both an unstated label and one of 2015 print. */
function namedEn(standard: RatingStandard): boolean {
  return standard === EN_UNSTATED || standard === EN_2015;
}

function caveatOf(a: RatingStandard, b: RatingStandard): ComparedRating["caveat"] {
  if (a === EN_UNSTATED || b === EN_UNSTATED) return "en-level-unstated";
  return a === "iec-60095-1:unstated" ? "iec-edition-unstated" : undefined;
}

/**
 * Compares a measured cranking current with the label, in the standard of the label.
 *
 * Scope: the same standard on both sides needs no conversion, nor does "EN" without edition beside EN:2015: one printed
 * name, flagged by `caveat`. "EN" beside a stated level 1 or 2 is refused. A bare current or HCA is refused even beside
 * its like. The label's number counts as exact: it is a declaration, whatever rounding led to it.
 *
 * @param comparison measured A ≥ 0 and label A > 0, each with its standard
 * @param derivation receives the conversion, if any, and the ratio
 * @returns ratio (dimensionless) with standard uncertainty, or the refusal of {@link convertRating}
 * @throws RangeError when the label's amperes are not above 0 or the measured ones are negative or not finite
 * Equation: ratio = I_measured, label standard / I_label.
 * @example
 * ```ts
 * import { compareToRating } from "crankworthy/ratings";
 * const compared = compareToRating({
 *   measured: { amperes: { value: 510, standardUncertainty: 10 }, standard: "sae-j537" },
 *   label: { amperes: 300, standard: "din-43539-2" },
 * });
 * "ratio" in compared && compared.ratio.value; // => 1.000
 * "ratio" in compared && compared.ratio.standardUncertainty; // => 0.045
 * ```
 */
export function compareToRating(
  comparison: RatingComparison,
  derivation?: Derivation,
): ComparedRating | Refusal<ConversionRefusalCode> {
  const { measured, label } = comparison;
  const from = measured.standard;
  const to = label.standard;
  requireStandard("label.standard", to);
  requireStandard("measured.standard", from);
  requirePositive("label.amperes", label.amperes);
  requireEstimate("measured.amperes", measured.amperes, 0);

  // A bare current or HCA goes through the conversion even beside its like, to be refused there.
  const sameName = testedAs(from) === testedAs(to) || (namedEn(from) && namedEn(to));
  const converted = !sameName || isNoRating(from);
  const inLabelStandard = converted
    ? convertRating({ amperes: measured.amperes, from, to }, derivation)
    : measured.amperes;
  if (isRefusal(inLabelStandard)) return inLabelStandard;

  const { value, standardUncertainty } = inLabelStandard;
  const ratio = {
    value: value / label.amperes,
    standardUncertainty: standardUncertainty / label.amperes,
  };
  const caveat = caveatOf(from, to);
  if (derivation) {
    const inputs = { measured: value, label: label.amperes, standard: to };
    derive(derivation, "ratio to rating", "measured / label", inputs, ratio, "1", RATIO);
  }
  return {
    ratio,
    measuredInLabelStandard: { value, standardUncertainty },
    converted,
    ...(caveat && { caveat }),
  };
}
