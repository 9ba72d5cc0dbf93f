import { dayNumberOf, daysInMonth } from "../../numeric/index.js";
import { POWERS_OF_TEN } from "./decimal.js";

/** @internal A date and time being read: whole seconds since 1970-01-01T00:00:00 on its own face or in UTC, and the rest. */
export interface ClockTime {
  /** True wants an offset or Z, false wants none. */
  readonly zoned: boolean;
  whole: number;
  fraction: number;
  /** The last day seen, as the number YYYYMMDD, and its start [s]: most rows share it. */
  day: number;
  dayStart: number;
}

/** @internal */
export const clockTime = (zoned: boolean): ClockTime => ({
  zoned,
  whole: 0,
  fraction: 0,
  day: -1,
  dayStart: 0,
});

const HYPHEN = 0x2d;
const COLON = 0x3a;

/**
 * @internal Reads `YYYY-MM-DD` + `T` or blank + `hh:mm[:ss[.fraction]]` + zone into `into`; false when it is none, when
 * the day or time does not exist, and when the zone is there or missing against `into.zoned`.
 */
export function readClockTime(bytes: Uint8Array, from: number, to: number, into: ClockTime): boolean {
  if (to - from < 16) return false;
  const year = two(bytes, from) * 100 + two(bytes, from + 2);
  const month = two(bytes, from + 5);
  const date = two(bytes, from + 8);
  const hour = two(bytes, from + 11);
  const minute = two(bytes, from + 14);
  // One part that is no number makes it negative, see two().
  if ((year | month | date | hour | minute) < 0 || hour > 23 || minute > 59) return false;
  if (bytes[from + 4] !== HYPHEN || bytes[from + 7] !== HYPHEN || bytes[from + 13] !== COLON) return false;
  const between = bytes[from + 10];
  if (between !== 0x54 && between !== 0x20 && between !== 0x74) return false;
  const day = (year * 100 + month) * 100 + date;
  if (day !== into.day) {
    const start = startOfDay(year, month, date);
    if (Number.isNaN(start)) return false;
    into.day = day;
    into.dayStart = start;
  }
  let at = from + 16;
  let second = 0;
  let fraction = 0;
  if (at < to && bytes[at] === COLON) {
    if (to - at < 3) return false;
    second = two(bytes, at + 1);
    if (second < 0 || second > 59) return false;
    at += 3;
    if (at < to && (bytes[at] === 0x2e || bytes[at] === 0x2c)) {
      const first = ++at;
      let digits = 0;
      for (; at < to && isDigit(bytes[at]!); at++) digits = digits * 10 + bytes[at]! - 48;
      // Fifteen digits are exact, and finer than any logger.
      if (at === first || at - first > 15) return false;
      fraction = digits / POWERS_OF_TEN[at - first]!;
    }
  }
  const offset = at < to ? zone(bytes, at, to) : Number.NaN;
  if (into.zoned ? Number.isNaN(offset) : at < to) return false;
  into.whole = into.dayStart + hour * 3600 + minute * 60 + second - (into.zoned ? offset : 0);
  into.fraction = fraction;
  return true;
}

const isDigit = (code: number): boolean => code >= 48 && code <= 57;

/** Two digits, or a number below zero that stays below zero when put together. */
function two(bytes: Uint8Array, at: number): number {
  const tens = bytes[at]! - 48;
  const ones = bytes[at + 1]! - 48;
  return tens >>> 0 <= 9 && ones >>> 0 <= 9 ? tens * 10 + ones : -10_000;
}

/** Z, ±hh, ±hhmm or ±hh:mm up to the end [s east of UTC], NaN for anything else. */
function zone(bytes: Uint8Array, at: number, to: number): number {
  const sign = bytes[at];
  const rest = to - at;
  if (sign === 0x5a || sign === 0x7a) return rest === 1 ? 0 : Number.NaN;
  if (sign !== 0x2b && sign !== HYPHEN) return Number.NaN;
  const colon = rest === 6 && bytes[at + 3] === COLON ? 1 : 0;
  if (rest !== 3 && rest !== 5 + colon) return Number.NaN;
  const hours = two(bytes, at + 1);
  const minutes = rest === 3 ? 0 : two(bytes, at + 3 + colon);
  if (hours < 0 || hours > 23 || minutes < 0 || minutes > 59) return Number.NaN;
  return (sign === HYPHEN ? -1 : 1) * (hours * 3600 + minutes * 60);
}

function startOfDay(year: number, month: number, date: number): number {
  if (month < 1 || month > 12 || date < 1 || date > daysInMonth(year, month)) return Number.NaN;
  return dayNumberOf(year, month, date) * 86_400;
}
