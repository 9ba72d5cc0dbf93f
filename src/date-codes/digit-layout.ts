import { calendarOf, dayNumberOf } from "../numeric/index.js";
import type { SourceId, Standing } from "../sources/index.js";
import { type PeriodOf, periodsInside } from "./periods.js";
import type { DateScheme, DateSchemeId } from "./scheme.js";
import { digits, extract, lastDigits } from "./text.js";
import { weekDateOf } from "./weeks.js";

/**
 * A scheme of digits in fixed places. In a layout `Y`, `M` and `W` are digits of year, month and week; `D` is a digit of
 * the day of the month beside `M`, of the weekday (Monday = 1) beside `W`, of the day of the year alone.
 *
 * @param layouts forms that mean the same, with their separators; the shortest first, `encode` writes it
 * @param periodOf the days that year, month | week | day of year, and day | weekday mean
 */
export function digitLayout(
  id: DateSchemeId,
  layouts: readonly string[],
  periodOf: PeriodOf,
  source: SourceId,
  standing: Standing,
): DateScheme {
  const [first] = layouts as [string];
  // Positions are those among the letters, whatever separators a form has.
  const letters = first.replace(/\W/g, "");
  const templates = layouts.map((layout) => layout.replace(/\w/g, "#"));
  const field = (letter: string) => [letters.indexOf(letter), letters.lastIndexOf(letter) + 1] as const;
  const major = letters.includes("M") ? "M" : letters.includes("W") ? "W" : "D";
  const [yearAt, majorAt, dayAt] = [field("Y"), field(major), field("D")];
  const cycle = 10 ** (yearAt[1] - yearAt[0]);
  return {
    id,
    structure: layouts.join(", "),
    precision: dayAt[1] ? "day" : major === "W" ? "week" : "month",
    yearCycle: cycle,
    source,
    standing,
    decode(text, context) {
      let code: string | undefined;
      for (const template of templates) code ??= extract(text, template);
      if (code === undefined) return [];
      const year = digits(code, ...yearAt);
      return periodsInside(year, cycle, context, periodOf, digits(code, ...majorAt), digits(code, ...dayAt));
    },
    encode(dayNumber, weekRule = "iso") {
      const date = calendarOf(dayNumber);
      const weekDate = weekDateOf(dayNumber, weekRule);
      const year = major === "W" ? weekDate.year : date.year;
      const values: Record<string, number> = {
        Y: year,
        M: date.month,
        W: weekDate.week,
        D: major === "M" ? date.day : major === "W" ? weekDate.weekday : dayNumber - dayNumberOf(year, 1, 0),
      };
      return first.replace(/Y+|M+|W+|D+/g, (run) => lastDigits(values[run[0]!]!, run.length));
    },
  };
}
