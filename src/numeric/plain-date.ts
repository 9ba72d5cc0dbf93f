import { wrongArgument } from "./wrong-argument.js";

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
  const leapDays = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return 365 * y + leapDays + Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 719_469;
}

/** Year (from 1), month and day of a day number, inverse of {@link dayNumberOf}. */
export function calendarOf(days: number): CalendarDay {
  // Divided with remainder by the mean century and the mean year, in quarters of a day, then the mean month, in fifths.
  const quarters = 4 * days + 2_877_875;
  const rest = 4 * Math.floor((quarters % 146_097) / 4) + 3;
  const fifths = 5 * Math.floor((rest % 1461) / 4) + 2;
  const year = 100 * Math.floor(quarters / 146_097) + Math.floor(rest / 1461);
  const month = Math.floor(fifths / 153);
  const day = Math.floor((fifths % 153) / 5) + 1;
  return month < 10 ? { year, month: month + 3, day } : { year: year + 1, month: month - 9, day };
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
  // No battery is older than the year 1000, and a shorter year is a slip.
  return year >= 1000 && month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month)
    ? dayNumberOf(year, month, day)
    : Number.NaN;
}

/** {@link dayNumber} of a date that must be one; RangeError naming the argument otherwise. */
export function requireDay(name: string, date: PlainDate): number {
  const day = dayNumber(date);
  if (Number.isNaN(day)) wrongArgument(name, date, "a date YYYY-MM-DD");
  return day;
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
  // The day number of a 13th month is that of the next January.
  return dayNumberOf(year, month + 1, 1) - dayNumberOf(year, month, 1);
}
