import { calendarOf, dayNumberOf } from "../numeric/index.js";
import type { SourceId, Standing } from "../sources/index.js";
import { NO_PERIODS, type PeriodOf, periodsInside, weeksInside } from "./periods.js";
import type { DateScheme, DateSchemeId } from "./scheme.js";
import { lastDigits } from "./text.js";
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
  const major = first.includes("M") ? "M" : first.includes("W") ? "W" : "D";
  const cycle = 10 ** first.replace(/[^Y]/g, "").length;
  return {
    id,
    structure: layouts.join(", "),
    precision: first.includes("D") ? "day" : major === "W" ? "week" : "month",
    yearCycle: cycle,
    source,
    standing,
    decode(text, context) {
      for (const layout of layouts) {
        if (!fits(text, layout)) continue;
        const year = numberAt(text, layout, "Y");
        const minor = numberAt(text, layout, "D");
        const inside = major === "W" ? weeksInside : periodsInside;
        return inside(year, cycle, context, periodOf, numberAt(text, layout, major), minor);
      }
      return NO_PERIODS;
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

/** Are there digits wherever the layout has a letter, and its separators between them? */
function fits(text: string, layout: string): boolean {
  if (text.length !== layout.length) return false;
  for (let i = 0; i < text.length; i++) {
    const character = text[i]!;
    const mark = layout[i]!;
    if (mark < "A" ? character !== mark : character < "0" || character > "9") return false;
  }
  return true;
}

/** The number under one letter of a layout that fits, 0 where the layout has no such letter. */
function numberAt(text: string, layout: string, letter: string): number {
  let value = 0;
  for (let i = 0; i < text.length; i++) if (layout[i] === letter) value = 10 * value + Number(text[i]);
  return value;
}
