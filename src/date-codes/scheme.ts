import type { SourceId, Standing } from "../sources/index.js";

/** Length of the period that a code names. */
export type DatePrecision = "day" | "week" | "month";

/**
 * How weeks are numbered; they always run Monday to Sunday.
 *
 * - `iso`: week 1 holds 4 January (ISO 8601)
 * - `jan1`: week 1 holds 1 January. The legend this comes from does not name the first weekday: Monday is our choice.
 *   The last days of a year whose week holds the next 1 January are read as week 53 (or 54) of the old year as well as
 *   week 1 of the new one: both are printed. `encode` writes week 1
 */
export type WeekRule = "iso" | "jan1";

/** Name of a scheme for codes in characters. Stable. */
export type DateSchemeId =
  | "letter-month-no-i"
  | "letter-month-a-to-l"
  | "digit-letter-no-i"
  | "digit-letter-a-to-l"
  | "iec-60062"
  | "mmyy"
  | "yymm"
  | "wwyy"
  | "yyww"
  | "yddd"
  | "ywwd"
  | "yyddd"
  | "yymmdd"
  | "yyyymmdd"
  | "iso-date"
  | "mm-yyyy"
  | "yyyy-mm";

/** A period of whole days, both ends included, as day numbers since 1970-01-01. */
export interface DayRange {
  readonly fromDay: number;
  readonly toDay: number;
  /** The rule that gives this period, where none was asked for and the other rule does not give it. */
  readonly weekRule?: WeekRule;
}

/** What a scheme needs to know to close an open decade or century. Made by `decodeContext`. */
export interface DecodeContext {
  /** Day of the inspection. */
  readonly inspectionDay: number;
  /** A period that ends before this day is too old. */
  readonly earliestDay: number;
  /** A period that begins after this day lies in the future. */
  readonly latestDay: number;
  /** Calendar year of `earliestDay`. */
  readonly earliestYear: number;
  /** Calendar year of `latestDay`. */
  readonly latestYear: number;
  /** Undefined: both. */
  readonly weekRule: WeekRule | undefined;
}

/** One way to print a manufacturing date, with its inverse. */
export interface DateScheme {
  readonly id: DateSchemeId;
  /** The characters in reading order, for people. */
  readonly structure: string;
  readonly precision: DatePrecision;
  /** Years after which the printed year repeats: 10, 20, 100, or 10000 for a year printed in full. */
  readonly yearCycle: number;
  readonly source: SourceId;
  readonly standing: Standing;
  /** All periods inside the context that the text can mean, newest first; empty when it means none. */
  decode(text: string, context: DecodeContext): readonly DayRange[];
  /** The code printed on a product made on this day. */
  encode(day: number, weekRule?: WeekRule): string;
}
