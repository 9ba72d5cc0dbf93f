import { addMonths } from "date-fns";
import {
  calendarOf,
  type PlainDate,
  plainDate,
  plainDateOf,
  requireDay,
  UtcDate,
  utcContext,
  wrongArgument,
} from "../numeric/index.js";
import type { LastCoveredDay, MonthCount } from "./terms.js";

const DAY_MS = 86_400_000;
const inUtc = { in: utcContext };

/** Mean month of the Gregorian calendar in days: 365.2425 / 12. */
export const MEAN_MONTH_DAYS = 30.436875;

const asDate = (day: number): UtcDate => new UtcDate(day * DAY_MS);

/**
 * Adds months to an anchor date; where the month is too short, its last day is taken. Count from the anchor each
 * time: month by month, 31 January would become 28 February and then 28 March.
 *
 * @param anchor first day, YYYY-MM-DD
 * @param months whole number, any sign
 * @throws RangeError when `anchor` is no date, `months` no whole number, or the result outside the years 1000..9999
 * @example
 * ```ts
 * import { addMonthsFrom } from "crankworthy/warranty";
 * addMonthsFrom("2023-01-31", 1); // => "2023-02-28"
 * addMonthsFrom("2011-11-30", 1); // => "2011-12-30"
 * ```
 */
export function addMonthsFrom(anchor: PlainDate, months: number): PlainDate {
  if (!Number.isInteger(months)) wrongArgument("months", months, "a whole number");
  const start = requireDay("anchor", anchor);
  const { year, month, day } = calendarOf(start);
  // Every month has days 1 to 28: there only the month's number moves. Where a month end can clamp, date-fns decides.
  const moved = month - 1 + months;
  const years = Math.floor(moved / 12);
  // A fifth digit would no longer compare as text.
  if (year + years < 1000 || year + years > 9999) wrongArgument("months", months, "a result in 1000..9999");
  if (day > 28) return plainDate(+addMonths(asDate(start), months, inUtc) / DAY_MS);
  return plainDateOf(year + years, moved - 12 * years + 1, day);
}

/** Days from one date to the other. */
export function countDays(from: PlainDate, to: PlainDate): number {
  return requireDay("to", to) - requireDay("from", from);
}

/**
 * Months from one date to another under a named convention.
 *
 * - `completed-clamped`: largest n with addMonthsFrom(from, n) ≤ to
 * - `completed-day-of-month`: difference of calendar months, less 1 when the day number is smaller
 * - `started`: smallest n with lastCoveredDay(from, n) ≥ `to`: a month that has begun counts. With `anniversary` the
 *   anniversary is the last day of the old month, with `day-before` the first day of the new one
 * - `calendar`: difference of calendar months
 * - `days`: days / 30.436875, the only one that is not whole
 *
 * @param from first day, YYYY-MM-DD
 * @param to last day, not before `from`
 * @param convention one of the five; sources contradict each other, so there is no default
 * @param lastDay where a month ends, for `started` only; `anniversary` when left out
 * @throws RangeError for no date, an interval that runs backwards, or an unknown convention
 * @example
 * ```ts
 * import { countMonths } from "crankworthy/warranty";
 * countMonths("2024-02-29", "2025-02-28", "completed-clamped"); // => 12
 * countMonths("2024-02-29", "2025-02-28", "completed-day-of-month"); // => 11
 * countMonths("2023-01-15", "2025-01-15", "started"); // => 24
 * countMonths("2023-01-15", "2025-01-15", "started", "day-before"); // => 25
 * ```
 */
export function countMonths(
  from: PlainDate,
  to: PlainDate,
  convention: MonthCount,
  lastDay: LastCoveredDay = "anniversary",
): number {
  const start = requireDay("from", from);
  const end = requireDay("to", to);
  if (end < start) wrongArgument("to", to, `${from} or later`);
  if (convention === "days") return (end - start) / MEAN_MONTH_DAYS;
  const first = calendarOf(start);
  const last = calendarOf(end);
  const calendar = 12 * (last.year - first.year) + last.month - first.month;
  if (convention === "calendar") return calendar;
  if (convention === "completed-day-of-month") return last.day < first.day ? calendar - 1 : calendar;
  const anniversary = addMonthsFrom(from, calendar);
  const completed = anniversary > to ? calendar - 1 : calendar;
  if (convention === "completed-clamped") return completed;
  if (convention === "started")
    return to <= lastCoveredDay(from, completed, lastDay) ? completed : completed + 1;
  wrongArgument("convention", convention, "a key of policyConventions.monthCount");
}

/**
 * Last covered day of a period of months.
 *
 * `anniversary`: the day with the same number (the day of the event is not counted, Regulation 1182/71 article 3);
 * `day-before`: the day before it (SI 2018/1082 rule 1.4). Both take the month's last day where the number does not
 * exist. Moving to the next working day, as the regulation does after a holiday, is left to the caller.
 *
 * @param start first day, YYYY-MM-DD
 * @param months whole number ≥ 0
 * @param convention no default: the two differ by a day
 * @example
 * ```ts
 * import { lastCoveredDay } from "crankworthy/warranty";
 * lastCoveredDay("2025-02-18", 3, "anniversary"); // => "2025-05-18"
 * lastCoveredDay("2025-02-18", 3, "day-before"); // => "2025-05-17"
 * ```
 */
export function lastCoveredDay(start: PlainDate, months: number, convention: LastCoveredDay): PlainDate {
  const anniversary = addMonthsFrom(start, months);
  return convention === "day-before" && anniversary.slice(8) === start.slice(8)
    ? addDaysTo(anniversary, -1)
    : anniversary;
}

export const addDaysTo = (date: PlainDate, days: number): PlainDate =>
  plainDate(requireDay("date", date) + days);
