import type { Interval, PlainDate, Refusal } from "../numeric/index.js";
import type { SourceId, Standing } from "../sources/index.js";
import type { DatePrecision, DateSchemeId, WeekRule } from "./scheme.js";

/**
 * What was noticed about a reading.
 *
 * - `open-decade`, `open-twenty-years`: the printed year repeats after 10 or 20 years; the decade is the window's doing
 * - `day-not-given`: the scheme has a day, this code leaves it out
 * - `ends-after-inspection`: part of the period is still to come
 * - `dated-ahead`: the whole period is, but inside the tolerance
 * - `shortly-before-sale`, `long-before-sale`: the sale came at most, or more than, PLAUSIBLE_SHELF_MONTHS later
 * - `in-vehicle-year`: made in the vehicle's year or the year before; an original battery and an early replacement look
 *   the same, so this does not change the rank
 * - `older-than-vehicle`: made before the year that precedes the vehicle's year
 * - `agrees-with-second-code`: shares at least one day with a reading of the second code
 */
export type DateReason =
  | "open-decade"
  | "open-twenty-years"
  | "day-not-given"
  | "ends-after-inspection"
  | "dated-ahead"
  | "shortly-before-sale"
  | "long-before-sale"
  | "in-vehicle-year"
  | "older-than-vehicle"
  | "agrees-with-second-code";

/** One thing that a code can mean. */
export interface DateReading {
  readonly scheme: DateSchemeId | "punched-grid";
  /** The caller's template, if any. */
  readonly template: string | undefined;
  /** First and last day on which a product with this code can have been made. */
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly precision: DatePrecision;
  /** The week rule of this reading, where none was asked for and the other rule does not give this period. */
  readonly weekRule?: WeekRule;
  /** 1 for the readings the evidence favours most; readings that it cannot tell apart share a rank. */
  readonly rank: number;
  readonly reasons: readonly DateReason[];
  /** Age at the inspection [days]; the lower end is negative while the period has not ended. */
  readonly ageDays: Interval;
  readonly source: SourceId;
  readonly standing: Standing;
}

/** A reading that contradicts the evidence, and which. */
export interface ExcludedReading {
  readonly scheme: DateSchemeId | "punched-grid";
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly because: "made-after-sale" | "made-after-activation";
}

/** A character that is easily taken for another, where the other would give a reading. */
export interface Confusable {
  /** Index in the normalised text, from 0. */
  readonly position: number;
  readonly read: string;
  readonly couldBe: string;
  /** What the text would mean then; never mixed with the readings of the text as given. */
  readonly alternativeReadings: readonly DateReading[];
}

/** What would settle an ambiguous code: knowing the scheme (its week rule
 * included), a date, a second code, or a closer look at the label. */
export type Settler = "scheme" | "sale-date" | "vehicle-year" | "second-code" | "closer-look";

/** Remarks on the whole decoding. */
export type DateCodeNote = "second-code-not-read" | "iec-60062-year-g-not-read";

/** Everything a code can mean, and what speaks for and against. */
export interface DateCodeResult {
  /** Trimmed and in upper case. */
  readonly text: string;
  /** At least one; best supported first, then newest first. */
  readonly readings: readonly DateReading[];
  readonly excluded: readonly ExcludedReading[];
  /** True when the readings name more than one period. Two schemes that agree on the period are not ambiguous. */
  readonly ambiguous: boolean;
  readonly confusables: readonly Confusable[];
  readonly settledBy: readonly Settler[];
  readonly notes: readonly DateCodeNote[];
}

/** Why a code was not read. */
export type DateCodeRefusalCode =
  | "empty"
  | "too-long"
  | "not-ascii"
  | "no-reading"
  | "outside-window"
  | "template-mismatch"
  | "iec-60062-year-g"
  | "contradicted-by-evidence"
  | "grid-not-punched";

/** A refusal, with the look-alikes that would give a reading and the readings that the evidence ruled out. */
export interface DateCodeRefusal extends Refusal<DateCodeRefusalCode> {
  readonly confusables: readonly Confusable[];
  readonly excluded: readonly ExcludedReading[];
}
