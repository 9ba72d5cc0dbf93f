import { type Estimate, type Interval, type Refusal, refuse } from "../numeric/index.js";
import type { RatingStandard, StandardAmperes } from "../ratings/index.js";
import type { Provenance, SourceId } from "../sources/index.js";
import type { Standing } from "../sources/source.js";

/** A family of codes printed on batteries. */
export type LabelScheme = "etn" | "din-72310" | "jis-d-5301" | "jis-d-5306" | "en-50342-2" | "bci";

/** What a label can be asked for. */
export type LabelFact =
  | "nominal-volts"
  | "capacity"
  | "cold-cranking-amperes"
  | "cold-cranking-level"
  | "case-size"
  | "terminal-layout";

/** Why a label code is refused. */
export type LabelRefusalCode = "malformed-code" | "unlisted-code" | "zero-capacity" | "no-rating-in-code";

/** Outer size in mm. */
export interface CaseSize {
  readonly length: number;
  readonly width: number;
  /** JIS: container without posts. */
  readonly height: number;
}

/** An estimate of the cold cranking current behind a JIS type; never a rating. */
export interface ReferenceRating extends Provenance {
  /** A; the standard uncertainty is taken about `value`, see {@link referenceCrankingAmperes}. */
  readonly amperes: Estimate;
  /** A; asymmetric, so not `value` ± something. */
  readonly interval: Interval;
  readonly standard: RatingStandard;
  readonly basis: "list" | "reserve-capacity" | "rank-class";
}

/** What a label code says. Absent = the code does not say; `cannotSay` lists it. */
export interface LabelReading extends Provenance {
  readonly scheme: LabelScheme;
  /** The code, normalised. */
  readonly text: string;
  readonly nominalVolts?: number;
  readonly capacity?: { readonly ampereHours: number; readonly rateHours: number } & Provenance;
  readonly rating?: StandardAmperes & Provenance;
  readonly estimatedRating?: ReferenceRating;
  readonly caseMillimetres?: CaseSize & Provenance;
  /** Dimensionless rank of JIS D 5301:2006, √(CCA × RC) / 2.8. Not ampere hours. */
  readonly performanceRank?: number;
  readonly terminals?: Terminals & Provenance;
  readonly cannotSay: readonly LabelFact[];
}

/** Where the positive post is, seen with both posts towards you (long side in front). */
export interface Terminals {
  readonly positivePost: "left" | "right";
  /** Layout number of EN 50342-2; that JIS L is layout 0 is from memory of that standard. */
  readonly enLayout: 0 | 1;
}

type Given = "scheme" | "text" | "cannotSay" | keyof Provenance;
/** The parts of a reading; those that are undefined are left out of it. */
type Parts<Reading> = {
  readonly [Key in keyof Omit<Reading, Given>]: Omit<Reading, Given>[Key] | undefined;
};

const FACTS = [
  ["nominalVolts", "nominal-volts"],
  ["capacity", "capacity"],
  ["rating", "cold-cranking-amperes"],
  ["caseMillimetres", "case-size"],
  ["terminals", "terminal-layout"],
] as const;

/** Completes a reading: `source` holds for everything without a source of its own; what is absent cannot be said. */
export function labelReading<Reading extends LabelReading>(
  scheme: LabelScheme,
  text: string,
  source: SourceId,
  standing: Standing,
  parts: Parts<Reading>,
): Reading {
  const cannotSay: LabelFact[] = [];
  const reading: Record<string, unknown> = { scheme, text, source, standing, cannotSay };
  for (const key in parts) {
    const part = parts[key as keyof Parts<Reading>];
    if (part !== undefined) reading[key] = part;
  }
  for (const [key, fact] of FACTS) if (!(key in reading)) cannotSay.push(fact);
  if ("rating" in reading) cannotSay.push("cold-cranking-level");
  return reading as unknown as Reading;
}

const AS_PRINTED = "The code as printed.";

/** Upper case, without blanks, hyphens and brackets. */
export function compact(text: string): string {
  return text.toUpperCase().replace(/[\s()-]/g, "");
}

export function malformed(form: string): Refusal<LabelRefusalCode> {
  return refuse("malformed-code", `Not of the form ${form}.`, AS_PRINTED);
}

export function unlisted(what: string): Refusal<LabelRefusalCode> {
  return refuse("unlisted-code", `The meaning of ${what} is not known here.`, "The data on the label.");
}

/** Volts and ampere hours in the first three digits of a German or European number; undefined for 800-999. */
export function readCapacityDigits(digits: string): { volts: number; ampereHours: number } | undefined {
  const number = Number(digits);
  if (number < 500) return { volts: 6, ampereHours: number };
  return number < 800 ? { volts: 12, ampereHours: number - 500 } : undefined;
}

/** The three digits for volts and ampere hours; something else than digits when they cannot be written. */
export function writeCapacityDigits(volts: number | undefined, ampereHours = 0): string {
  const digits = String(ampereHours + (volts === 12 ? 500 : 0)).padStart(3, "0");
  const read = readCapacityDigits(digits);
  return ampereHours > 0 && read?.volts === volts && read?.ampereHours === ampereHours ? digits : "?";
}

/** The text when it has the form; otherwise the refusal to write it. */
export function written(text: string, form: RegExp): string | Refusal<LabelRefusalCode> {
  return form.test(text)
    ? text
    : refuse("malformed-code", "The code cannot say this.", "Whole Ah and tens of A in range.");
}

export function zeroCapacity(): Refusal<LabelRefusalCode> {
  return refuse("zero-capacity", "The digits give 0 Ah.", AS_PRINTED);
}

/**
 * The cranking rating a code states, ready for comparison or conversion.
 *
 * @param reading a decoded label code
 * @returns A and standard; or a refusal when the code holds no rating: a JIS rank fits many batteries, so its
 *   `estimatedRating` is an estimate with a wide interval and never a rating
 * @example
 * ```ts
 * import { isRefusal } from "crankworthy/numeric";
 * import { decodeLabelCode, ratingOfLabel } from "crankworthy/label-codes";
 * const label = decodeLabelCode({ scheme: "etn", text: "536 046 030" });
 * !isRefusal(label) && ratingOfLabel(label); // => { amperes: 300, standard: "en-50342-1:unstated" }
 * ```
 */
export function ratingOfLabel(
  reading: LabelReading,
): StandardAmperes | Refusal<"no-rating-in-code" | "jis-rank-no-rating"> {
  const { rating } = reading;
  if (rating) return { amperes: rating.amperes, standard: rating.standard };
  return reading.performanceRank !== undefined
    ? refuse(
        "jis-rank-no-rating",
        "One JIS rank fits many batteries.",
        "CCA or reserve capacity on the label.",
      )
    : refuse("no-rating-in-code", "The code holds no cranking current.", "CCA on the label.");
}
