import {
  calendarOf,
  dayNumberOf,
  daysInMonth,
  type PlainDate,
  requireDay,
  wrongArgument,
} from "../numeric/index.js";
import type { DecodeContext, WeekRule } from "./scheme.js";

/**
 * Default of `maxAgeYears` [years], our choice: longer than a decade, so that a one-digit year never hides the
 * reading ten years back of a battery that was made just after the month of its inspection.
 */
export const DEFAULT_MAX_AGE_YEARS = 12;

/** What closes an open decade or century. */
export interface DecodeWindow {
  /** Calendar day of the inspection, in the shop's own calendar. */
  readonly inspectedOn: PlainDate;
  /** Whole years 1..100; default {@link DEFAULT_MAX_AGE_YEARS}. A period that ended earlier than this is not read. */
  readonly maxAgeYears?: number;
  /** Days ≥ 0 that goods may be dated ahead of the inspection or the sale; default 0. */
  readonly toleranceDays?: number;
  /** How the maker numbers weeks. Left out, both rules are read where they differ: no rule is common to all makers. */
  readonly weekRule?: WeekRule;
}

/**
 * Turns an inspection date and the limits around it into the window a scheme's `decode` accepts readings in.
 *
 * Accepted: periods that begin on or before the inspection (plus tolerance) and end on or after the same calendar day
 * `maxAgeYears` earlier (28 February where 29 February is missing).
 *
 * @throws RangeError when the date is none of the calendar, or a limit is outside its range
 * @example
 * ```ts
 * import { decodeContext } from "crankworthy/date-codes";
 * decodeContext({ inspectedOn: "2025-06-15", maxAgeYears: 10 }).earliestYear; // => 2015
 * ```
 */
export function decodeContext(window: DecodeWindow): DecodeContext {
  const { inspectedOn, maxAgeYears = DEFAULT_MAX_AGE_YEARS, toleranceDays = 0, weekRule } = window;
  const inspectionDay = requireDay("inspectedOn", inspectedOn);
  checkWhole("maxAgeYears", maxAgeYears, 1, 100);
  checkWhole("toleranceDays", toleranceDays, 0, 366);
  if (weekRule !== undefined && weekRule !== "iso" && weekRule !== "jan1")
    wrongArgument("weekRule", weekRule, "iso or jan1");
  const { year, month, day } = calendarOf(inspectionDay);
  const earliestYear = year - maxAgeYears;
  const latestDay = inspectionDay + toleranceDays;
  return {
    inspectionDay,
    earliestDay: dayNumberOf(earliestYear, month, Math.min(day, daysInMonth(earliestYear, month))),
    latestDay,
    earliestYear,
    latestYear: calendarOf(latestDay).year,
    weekRule,
  };
}

/** Throws a RangeError unless the number is whole and in the range. */
export function checkWhole(argument: string, value: number, lowest: number, highest: number): void {
  if (!(value >= lowest && value <= highest && value % 1 === 0)) {
    wrongArgument(argument, value, `a whole number ${lowest}..${highest}`);
  }
}
