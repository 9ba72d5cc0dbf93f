import { calendarOf, dayNumberOf } from "../numeric/index.js";
import type { WeekRule } from "./scheme.js";

// Integer arithmetic instead of a calendar library: decoding looks at several weeks per code. The tests hold it against date-fns and Python for every day of sixty years.

/** Monday = 0 .. Sunday = 6; day 0 (1970-01-01) was a Thursday. */
function weekdayIndex(day: number): number {
  return (((day + 3) % 7) + 7) % 7;
}

/** Day number of the Monday that begins week 1. */
export function firstMonday(weekYear: number, rule: WeekRule): number {
  const inWeekOne = dayNumberOf(weekYear, 1, rule === "iso" ? 4 : 1);
  return inWeekOne - weekdayIndex(inWeekOne);
}

/** A day as week date. */
export interface WeekDate {
  readonly year: number;
  readonly week: number;
  /** Monday = 1 .. Sunday = 7. */
  readonly weekday: number;
}

/** The week date of a day number; the week year differs from the calendar year around 1 January. */
export function weekDateOf(day: number, rule: WeekRule): WeekDate {
  const monday = day - weekdayIndex(day);
  // A week belongs to the year of its Thursday (ISO) or, where 1 January decides, of its Sunday.
  const year = calendarOf(monday + (rule === "iso" ? 3 : 6)).year;
  return { year, week: (monday - firstMonday(year, rule)) / 7 + 1, weekday: day - monday + 1 };
}
