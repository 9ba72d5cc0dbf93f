/** A calendar date as `YYYY-MM-DD`, proleptic Gregorian, without time or zone. Compares correctly as text. */
export type PlainDate = string;

// Calendar by whole numbers, no `Date`: an evaluation turns dates into days and back dozens of times. Years are counted
// from 1 March, so that the leap day is the last of its year and the months before it have fixed lengths.

/** A day as year, month (1..12) and day of the month. */
export interface CalendarDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** Days since 1970-01-01 of a valid calendar date given in numbers (month 1..12). No check: see {@link dayNumber}. */
export function dayNumberOf(year: number, month: number, day: number): number {
  const y = month < 3 ? year - 1 : year;
  const daysBeforeMonth = Math.floor((153 * (month < 3 ? month + 9 : month - 3) + 2) / 5);
  return 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + daysBeforeMonth + day - 719_469;
}

/** Year, month and day of a day number, inverse of {@link dayNumberOf}. */
export function calendarOf(days: number): CalendarDay {
  const sinceMarch0 = days + 719_468;
  const era = Math.floor(sinceMarch0 / 146_097);
  const dayOfEra = sinceMarch0 - 146_097 * era;
  // The leap days passed, taken out, leave years of 365 days.
  const leapDays =
    Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const y = Math.floor((dayOfEra - leapDays) / 365);
  const dayOfYear = dayOfEra - (365 * y + Math.floor(y / 4) - Math.floor(y / 100));
  const m = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * m + 2) / 5) + 1;
  return m < 10
    ? { year: 400 * era + y, month: m + 3, day }
    : { year: 400 * era + y + 1, month: m - 9, day };
}

/**
 * Days since 1970-01-01, or NaN when the text is no date of the calendar (`2025-02-29`, `2025-13-01`, `25-1-1`).
 *
 * @example
 * ```ts
 * import { dayNumber } from "crankworthy/numeric";
 * dayNumber("2024-03-01") - dayNumber("2024-02-28"); // => 2
 * dayNumber("2025-02-29"); // => NaN
 * ```
 */
export function dayNumber(date: PlainDate): number {
  if (date.length !== 10 || date[4] !== "-" || date[7] !== "-") return Number.NaN;
  const year = digits(date, 0, 4);
  const month = digits(date, 5, 7);
  const day = digits(date, 8, 10);
  // Date.UTC reads years 0..99 as 1900..1999; no battery is that old.
  if (!(year >= 1000) || !(month >= 1) || month > 12 || !(day >= 1) || day > daysInMonth(year, month))
    return Number.NaN;
  return dayNumberOf(year, month, day);
}

// Plain digits only: Number() would also read blanks, signs and exponents.
function digits(text: string, from: number, to: number): number {
  let value = 0;
  for (let i = from; i < to; i++) {
    const digit = text.charCodeAt(i) - 48;
    if (digit < 0 || digit > 9) return Number.NaN;
    value = 10 * value + digit;
  }
  return value;
}

/** The calendar date of a day number, inverse of {@link dayNumber}. */
export function plainDate(days: number): PlainDate {
  const { year, month, day } = calendarOf(days);
  return plainDateOf(year, month, day);
}

/** A calendar date given in numbers, as text. No check: see {@link dayNumber}. */
export function plainDateOf(year: number, month: number, day: number): PlainDate {
  return `${year}-${month < 10 ? "0" : ""}${month}-${day < 10 ? "0" : ""}${day}`;
}

/** Number of days in a month (1..12) of a Gregorian year. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}
