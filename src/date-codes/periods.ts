import { dayNumberOf, daysInMonth } from "../numeric/index.js";
import type { DayRange, DecodeContext, WeekRule } from "./scheme.js";
import { firstMonday } from "./weeks.js";

/** The days that a year and one or two numbers within it mean; undefined when the calendar has no such thing. */
export type PeriodOf = (year: number, major: number, minor: number, rule: WeekRule) => DayRange | undefined;

/** The usual answer of most schemes, shared. */
export const NO_PERIODS: readonly DayRange[] = [];

/**
 * The periods inside the context, newest year first, for a year known only modulo `cycle` (negative: no year, nothing).
 * One year is looked at beyond each end, because the first and last week of a week year reach into the neighbouring
 * calendar year.
 */
export function periodsInside(
  yearInCycle: number,
  cycle: number,
  context: DecodeContext,
  periodOf: PeriodOf,
  major: number,
  minor = 0,
): readonly DayRange[] {
  if (yearInCycle < 0) return NO_PERIODS;
  const { earliestDay, latestDay, earliestYear, latestYear, weekRule = "iso" } = context;
  let found: DayRange[] | undefined;
  let year = latestYear + 1 - ((latestYear + 1 + cycle - yearInCycle) % cycle);
  for (; year >= earliestYear - 1; year -= cycle) {
    const period = periodOf(year, major, minor, weekRule);
    if (period && period.fromDay <= latestDay && period.toDay >= earliestDay) {
      if (found) found.push(period);
      else found = [period];
    }
  }
  return found ?? NO_PERIODS;
}

/** {@link periodsInside} for weeks: without a rule in the context those of both, what they agree on once. */
export function weeksInside(
  yearInCycle: number,
  cycle: number,
  context: DecodeContext,
  periodOf: PeriodOf,
  week: number,
  weekday: number,
): readonly DayRange[] {
  const under = (weekRule: WeekRule | undefined) =>
    periodsInside(yearInCycle, cycle, { ...context, weekRule }, periodOf, week, weekday);
  if (context.weekRule !== undefined) return under(context.weekRule);
  const iso = under("iso");
  const jan1 = under("jan1");
  const without = (periods: readonly DayRange[], others: readonly DayRange[], weekRule: WeekRule) =>
    periods.map((one) => (others.some((other) => isSame(one, other)) ? one : { ...one, weekRule }));
  const both = without(iso, jan1, "iso");
  const rest = without(jan1, iso, "jan1").filter((one) => one.weekRule !== undefined);
  return [...both, ...rest].sort((a, b) => b.fromDay - a.fromDay);
}

const isSame = (a: DayRange, b: DayRange): boolean => a.fromDay === b.fromDay && a.toDay === b.toDay;

/** A whole month, 1..12. */
export function monthPeriod(year: number, month: number): DayRange | undefined {
  if (month < 1 || month > 12) return undefined;
  const fromDay = dayNumberOf(year, month, 1);
  return { fromDay, toDay: fromDay + daysInMonth(year, month) - 1 };
}

/** A day of a month. */
export function dayPeriod(year: number, month: number, day: number): DayRange | undefined {
  const whole = day < 1 || day > daysInMonth(year, month) ? undefined : monthPeriod(year, month);
  return whole && single(whole.fromDay + day - 1);
}

/** The n-th day of a year. */
export function ordinalPeriod(year: number, dayOfYear: number): DayRange | undefined {
  if (dayOfYear < 1 || dayOfYear > 337 + daysInMonth(year, 2)) return undefined;
  return single(dayNumberOf(year, 1, dayOfYear));
}

/** A whole week, Monday to Sunday. The third parameter is not used; the fourth says which week is the first. */
export function weekPeriod(year: number, week: number, _: number, rule: WeekRule): DayRange | undefined {
  if (week < 1 || week > 54) return undefined;
  const fromDay = firstMonday(year, rule) + 7 * (week - 1);
  if (week < 53 || fromDay < firstMonday(year + 1, rule)) return { fromDay, toDay: fromDay + 6 };
  // Week 1 of the next year. Makers who count from 1 January also print its days before that day as one more week.
  const toDay = dayNumberOf(year, 12, 31);
  return rule === "jan1" && fromDay <= toDay ? { fromDay, toDay } : undefined;
}

/** A day of a week, Monday = 1 .. Sunday = 7. */
export function weekdayPeriod(
  year: number,
  week: number,
  weekday: number,
  rule: WeekRule,
): DayRange | undefined {
  const whole = weekday < 1 || weekday > 7 ? undefined : weekPeriod(year, week, 0, rule);
  const day = whole ? whole.fromDay + weekday - 1 : 0;
  return whole && day <= whole.toDay ? single(day) : undefined;
}

function single(day: number): DayRange {
  return { fromDay: day, toDay: day };
}
