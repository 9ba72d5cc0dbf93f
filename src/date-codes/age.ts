import {
  calendarOf,
  daysInMonth,
  type Interval,
  type PlainDate,
  requireDay,
  wrongArgument,
} from "../numeric/index.js";

/** An age as an interval: a code that names a month or a week does not name a day. */
export interface AgeInterval {
  /** Whole days. */
  readonly days: Interval;
  /** Completed months: a month is complete on the same day of a later month, or on its last day when that is missing. */
  readonly months: Interval;
}

/**
 * Age of a battery on a day, from the youngest to the oldest it can be.
 *
 * Scope: any period with both ends known, such as a reading of a date code. Not narrowed by anything else: the lower
 * end is negative when the period had not ended on that day.
 *
 * @param made first and last possible day of manufacture, or a reading
 * @param on the day of the sale, inspection, …
 * @returns days and completed months
 * @throws RangeError when a date is none of the calendar
 * @example
 * ```ts
 * import { ageInterval } from "crankworthy/date-codes";
 * const age = ageInterval({ from: "2024-03-01", to: "2024-03-31" }, "2024-09-15");
 * age.days; // => { lower: 168, upper: 198 }
 * age.months; // => { lower: 5, upper: 6 }
 * ```
 */
export function ageInterval(
  made: { readonly from: PlainDate; readonly to: PlainDate },
  on: PlainDate,
): AgeInterval {
  const fromDay = requireDay("made.from", made.from);
  const toDay = requireDay("made.to", made.to);
  const onDay = requireDay("on", on);
  return {
    days: { lower: onDay - toDay, upper: onDay - fromDay },
    months: { lower: completedMonths(toDay, onDay), upper: completedMonths(fromDay, onDay) },
  };
}

/** Months completed between two day numbers, counted once from the first day so that the day of month cannot drift. */
export function completedMonths(startDay: number, endDay: number): number {
  const start = calendarOf(startDay);
  const end = calendarOf(endDay);
  const months = 12 * (end.year - start.year) + end.month - start.month;
  return Math.min(start.day, daysInMonth(end.year, end.month)) > end.day ? months - 1 : months;
}

/**
 * Compares an age with a limit; an age that straddles the limit decides nothing.
 *
 * @param age interval in any unit
 * @param limit in the same unit; an age equal to it is within
 * @returns `within`, `beyond`, or `cannot-tell` when only part of the interval is within
 * @throws RangeError when limit is NaN
 * @example
 * ```ts
 * import { withinLimit } from "crankworthy/date-codes";
 * withinLimit({ lower: 168, upper: 198 }, 180); // => "cannot-tell"
 * withinLimit({ lower: 168, upper: 198 }, 198); // => "within"
 * ```
 */
export function withinLimit(age: Interval, limit: number): "within" | "beyond" | "cannot-tell" {
  if (Number.isNaN(limit)) wrongArgument("limit", limit, "a number");
  if (age.upper <= limit) return "within";
  return age.lower > limit ? "beyond" : "cannot-tell";
}
