import type { Estimate } from "../numeric/index.js";
import {
  type Refusal,
  rectangularUncertainty,
  refuse,
  requireEstimate,
  requireFinite,
  requireKey,
} from "../numeric/index.js";
import { derive } from "../sources/derive.js";
import type { Provenance } from "../sources/index.js";
import type { Derivation } from "../sources/source.js";
import { type ConversionRow, conversionRefusals, enGrid, ratingConversions } from "./convert.data.js";
import { type RatingStandard, ratingStandards } from "./standards.js";

/** Why a conversion is refused. */
export type ConversionRefusalCode = keyof typeof conversionRefusals;

/** What to convert. */
export interface RatingConversion {
  /** A, ≥ 0. A {@link ConvertedRating} may be given; its original is then converted. */
  readonly amperes: Estimate | ConvertedRating;
  readonly from: RatingStandard;
  readonly to: RatingStandard;
  /** The amperes are a printed EN number: when it lies on the old label grid, its rounding is added. */
  readonly fromLabelGrid?: boolean;
  /**
   * HCA / SAE CCA of this battery [1] (1..10), from its maker or from tests: the one way to convert to or from HCA. No ratio
   * is published; those that circulate run from 1.3 to 2.5.
   */
  readonly hcaRatio?: Estimate;
}

/** A cranking current in another standard than its own, in A; it remembers what it was made from. */
export interface ConvertedRating extends Estimate, Provenance {
  readonly standard: RatingStandard;
  /** Relative standard uncertainty (k = 1) of the conversion alone: factor and label grid, without the measurement's. */
  readonly relativeUncertainty: number;
  /** Amperes in `standard` per ampere in the original standard. */
  readonly factor: Estimate;
  readonly original: {
    readonly amperes: Estimate;
    readonly standard: RatingStandard;
    readonly fromLabelGrid: boolean;
    /** Present when the caller's ratio made this number. */
    readonly hcaRatio?: Estimate;
  };
}

const BLOCKED: Partial<Record<RatingStandard, ConversionRefusalCode>> = {
  "en-50342-1:2006-level-2": "en-level-2",
  "en-50342-1:unstated": "en-level-unstated",
  "iec-60095-1:unstated": "iec-edition-unstated",
  "iec-60095-1:2006": "iec-test-not-read",
  "iec-60095-1:2018": "iec-test-not-read",
  hca: "hca-not-a-rating",
  unstated: "standard-unstated",
  "jis-d-5301:pre-2006": "jis-before-2006",
  "gost-959-91": "test-not-established",
  "gb-t-5008-1": "test-not-established",
};
const SAE = "sae-j537";
const JIS = "jis-d-5301:2006";
const JIS_FOR_SAE = 0.02;
const HCA = "hca";
const CHOICE: Provenance = { source: "ratings-choice", standing: "our-choice" };
const CALLERS_RATIO: Provenance = { source: "hca-note", standing: "computed" };

function refusal(code: ConversionRefusalCode): Refusal<ConversionRefusalCode> {
  const [reason, wouldHelp] = conversionRefusals[code];
  return refuse(code, reason, wouldHelp);
}

/** The standard whose conversion rows apply: the single EN level of 2015 is the former level 1. */
export function testedAs(standard: RatingStandard): RatingStandard {
  return standard === "en-50342-1:2015" ? "en-50342-1:2006-level-1" : standard;
}

/** @internal RangeError for a name that is no standard. */
export function requireStandard(name: string, standard: RatingStandard): void {
  requireKey(name, standard, ratingStandards);
}

/** True for the two names under which a current says nothing about its test, even beside its like. */
export function isNoRating(standard: RatingStandard): standard is "unstated" | "hca" {
  return standard === "unstated" || standard === "hca";
}

/** Factor and its relative expanded uncertainty (k = 2) from a direct row, read either way. */
function directRow(
  from: RatingStandard,
  to: RatingStandard,
  hcaRatio?: Estimate,
): readonly [number, number] | undefined {
  const rows: readonly ConversionRow[] = hcaRatio
    ? [[SAE, HCA, hcaRatio.value, (2 * hcaRatio.standardUncertainty) / hcaRatio.value]]
    : ratingConversions;
  for (const row of rows) {
    if (row[0] === from && row[1] === to) return [row[2], row[3]];
    if (row[0] === to && row[1] === from) return [1 / row[2], row[3]];
  }
  return undefined;
}

/** A direct row, or the SAE row when one side is JIS: the only stand-in, for the two share one test. */
function factorBetween(
  from: RatingStandard,
  to: RatingStandard,
  hcaRatio?: Estimate,
): readonly [number, number] | undefined {
  if (from === to) return [1, 0];
  const direct = directRow(from, to, hcaRatio);
  if (direct || (from !== JIS && to !== JIS)) return direct;
  const standIn = directRow(from === JIS ? SAE : from, to === JIS ? SAE : to, hcaRatio);
  return standIn && [standIn[0], Math.hypot(standIn[1], JIS_FOR_SAE)];
}

/**
 * Step of the rounding grid of rated currents on older European labels.
 *
 * Newer labels (610, 740, 870 A) leave the grid: never validate an EN number against it.
 *
 * @param amperes EN rating in A, ≥ 0
 * @returns step in A that holds at this current and above it; at a boundary the larger one
 * @throws RangeError when `amperes` is not a number ≥ 0
 * Source: a battery maker's technical lexicon, entry on the cold test current (secondary).
 * @example
 * ```ts
 * import { enGridStepAmperes } from "crankworthy/ratings";
 * enGridStepAmperes(540); // => 30
 * ```
 */
export function enGridStepAmperes(amperes: number): number {
  requireFinite("amperes", amperes, 0);
  return enGrid.find(([start]) => amperes >= start)![1];
}

function gridUncertainty(amperes: number): number {
  const [start, step] = enGrid.find(([start]) => amperes >= start)!;
  return (amperes - start) % step === 0 ? rectangularUncertainty(step) : 0;
}

/**
 * Converts a cranking rating into another standard, with the uncertainty of doing so.
 *
 * Scope: 12 V lead-acid starter batteries; direct relations only, never chained. HCA only by a ratio to SAE that the caller
 * knows (`hcaRatio`), whose uncertainty is carried. EN 50342-1:2015 is treated as level 1
 * of 2006; JIS of 2006 or later may stand in for SAE at 2 % more (k = 2, in quadrature). A converted number is no
 * declared rating.
 *
 * There and back: a {@link ConvertedRating} passed as `amperes` is converted from its *original*. Back in its own
 * standard it is the original again, with the original's uncertainty; onward to a third standard it takes the direct
 * relation or is refused. So no factor is counted twice and none is chained.
 *
 * @param conversion amperes in A ≥ 0 with their standard, and the standard wanted
 * @param derivation receives one step when given
 * @returns amperes in `to`; or a refusal for EN level 2, unstated EN level, unstated or unread IEC edition, HCA without a ratio, a bare
 *   current, JIS before 2006, GOST, GB/T, and pairs without a direct relation. The same standard on both sides is
 *   returned unchanged, except a bare current and HCA
 * @throws RangeError for an unknown standard, amperes that are negative or not finite, a ratio outside 1..10, or when a converted rating is passed under another standard
 * Equation: I_to = f × I_from (HCA = ratio × SAE); u² = (f u_from)² + (I_from u_f)² + (f w/√12)², w the label grid step.
 * Source: centres and uncertainties are our choice (`ratings-choice`).
 * @example
 * ```ts
 * import { convertRating } from "crankworthy/ratings";
 * const sae = convertRating({
 *   amperes: { value: 300, standardUncertainty: 0 }, from: "din-43539-2", to: "sae-j537",
 * });
 * "value" in sae && sae.value; // => 510
 * "value" in sae && 2 * sae.standardUncertainty; // => 40.8
 * const hot = convertRating({
 *   amperes: { value: 600, standardUncertainty: 0 }, from: "sae-j537", to: "hca",
 *   hcaRatio: { value: 1.5, standardUncertainty: 0.1 },
 * });
 * "value" in hot && hot.value; // => 900
 * "value" in hot && hot.standardUncertainty; // => 60
 * ```
 */
export function convertRating(
  conversion: RatingConversion,
  derivation?: Derivation,
): ConvertedRating | Refusal<ConversionRefusalCode> {
  const { amperes, from, to, fromLabelGrid = false, hcaRatio } = conversion;
  requireStandard("from", from);
  requireStandard("to", to);
  if (hcaRatio) requireEstimate("hcaRatio", hcaRatio, 1, 10);
  if ("original" in amperes) {
    const { original, standard } = amperes;
    if (standard !== from) throw new RangeError(`from: received ${from}, expected ${standard}`);
    return convertRating(
      {
        amperes: original.amperes,
        from: original.standard,
        to,
        fromLabelGrid: original.fromLabelGrid,
        ...withRatio(hcaRatio ?? original.hcaRatio),
      },
      derivation,
    );
  }
  const { value, standardUncertainty } = amperes;
  requireEstimate("amperes", amperes, 0);

  const same = from === to;
  const byRatio = from === HCA || to === HCA ? hcaRatio : undefined;
  const blocked = byRatio ? BLOCKED[from === HCA ? to : from] : (BLOCKED[from] ?? BLOCKED[to]);
  const unchanged = same && (byRatio !== undefined || !isNoRating(from));
  if (blocked && !unchanged) return refusal(blocked);
  const source = testedAs(from);
  const target = testedAs(to);
  const row = factorBetween(source, target, byRatio);
  if (!row) return refusal("no-direct-conversion");

  const [factor, expanded] = row;
  const factorRelative = expanded / 2;
  const rounded = fromLabelGrid && source !== target && source.startsWith("en-") && value > 0;
  const gridRelative = rounded ? gridUncertainty(value) / value : 0;
  const relativeUncertainty = Math.hypot(factorRelative, gridRelative);
  const converted: ConvertedRating = {
    value: factor * value,
    standardUncertainty: factor * Math.hypot(standardUncertainty, value * relativeUncertainty),
    standard: to,
    relativeUncertainty,
    factor: { value: factor, standardUncertainty: factor * factorRelative },
    original: {
      amperes: { value, standardUncertainty },
      standard: from,
      fromLabelGrid,
      ...withRatio(byRatio),
    },
    ...(byRatio ? CALLERS_RATIO : CHOICE),
  };
  if (derivation) {
    const inputs = { amperes: value, from, factor, relativeUncertainty };
    derive(derivation, `cranking current, ${to}`, "factor × amperes", inputs, converted, "A", converted);
  }
  return converted;
}

function withRatio(hcaRatio: Estimate | undefined): { readonly hcaRatio?: Estimate } {
  return hcaRatio ? { hcaRatio } : {};
}
