import { calendarOf } from "../numeric/index.js";
import type { SourceId, Standing } from "../sources/index.js";
import { monthPeriod, periodsInside } from "./periods.js";
import type { DateScheme, DateSchemeId } from "./scheme.js";

/** The last digit of a year. */
export const YEAR_DIGITS = "0123456789";

/**
 * A scheme of one character for the year and one for the month.
 *
 * @param yearAt place of the year's character
 * @param years one character for each year of the cycle, beginning with a year that the cycle's length divides
 * @param months twelve characters
 */
export function twoCharacters(
  id: DateSchemeId,
  yearAt: 0 | 1,
  years: string,
  months: string,
  source: SourceId,
  standing: Standing,
): DateScheme {
  const cycle = years.length;
  return {
    id,
    structure: `${yearAt ? "MY" : "YM"}, Y = ${years}, M = ${months}`,
    precision: "month",
    yearCycle: cycle,
    source,
    standing,
    decode(text, context) {
      const year = text.length === 2 ? years.indexOf(text[yearAt]!) : -1;
      return periodsInside(year, cycle, context, monthPeriod, months.indexOf(text[1 - yearAt]!) + 1);
    },
    encode(day) {
      const date = calendarOf(day);
      const year = years[date.year % cycle]!;
      const month = months[date.month - 1]!;
      return yearAt ? month + year : year + month;
    },
  };
}
