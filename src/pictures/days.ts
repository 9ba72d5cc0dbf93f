import { dayNumber, type PlainDate } from "../numeric/index.js";

/** Milliseconds of a day. */
const DAY = 86_400_000;

/** Calendar days as a language writes them; no time zone moves them. What is no day stays as it is. */
export function daysIn(language: string): (day: PlainDate) => string {
  let format: Intl.DateTimeFormat | undefined;
  return (day) => {
    const number = dayNumber(day);
    if (Number.isNaN(number)) return day;
    format ??= new Intl.DateTimeFormat(language, {
      year: "numeric",
      month: "short",
      day: "numeric",
      calendar: "gregory",
      numberingSystem: "latn",
      timeZone: "UTC",
    });
    // A date stays on one line.
    return format.format(number * DAY).replaceAll(" ", "\u00a0");
  };
}
