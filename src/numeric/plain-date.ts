/** A calendar date as `YYYY-MM-DD`, proleptic Gregorian, without time or zone. Compares correctly as text. */
export type PlainDate = string;

const DAY_MS = 86_400_000;

/** Days since 1970-01-01 of a valid calendar date given in numbers (month 1..12). No check: see {@link dayNumber}. */
export function dayNumberOf(year: number, month: number, day: number): number {
  return Date.UTC(year, month - 1, day) / DAY_MS;
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
  const date = new Date(days * DAY_MS);
  const month = date.getUTCMonth() + 1;
  const day = date.getUTCDate();
  return `${date.getUTCFullYear()}-${month < 10 ? "0" : ""}${month}-${day < 10 ? "0" : ""}${day}`;
}

/** Number of days in a month (1..12) of a Gregorian year. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}
