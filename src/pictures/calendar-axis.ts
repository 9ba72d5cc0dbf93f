import { range, tickStep } from "d3-array";
import { calendarOf, dayNumberOf } from "../numeric/index.js";
import { scaleOver } from "./axes.js";
import type { Sheet } from "./sheet.js";

/** Marks at the beginnings of years, or of months where a picture covers less than two years; places in day numbers. */
export function calendarTicks(
  sheet: Sheet,
  fromDay: number,
  toDay: number,
  most: number,
): { readonly at: number; readonly text: string }[] {
  const [first, last] = [calendarOf(fromDay), calendarOf(toDay)];
  const months = toDay - fromDay < 2 * 366;
  const start = months ? 12 * first.year + first.month - 1 : first.year;
  const end = months ? 12 * last.year + last.month - 1 : last.year;
  // Whole years or months only, twelve divided evenly.
  const wanted = Math.max(1, tickStep(start, end + 1, most));
  const step = months ? [1, 2, 3, 6, 12].find((one) => one >= wanted - 0.5)! : Math.ceil(wanted);
  return range(Math.ceil(start / step) * step, end + 1, step)
    .map((one) => {
      const year = months ? Math.floor(one / 12) : one;
      const month = months ? (one % 12) + 1 : 1;
      const text = months ? `${year}-${String(month).padStart(2, "0")}` : sheet.number(year, 0);
      return { at: dayNumberOf(year, month, 1), text };
    })
    .filter(({ at }) => at >= fromDay && at <= toDay);
}

/** Day numbers across the page, with a little room at both ends. */
export function calendarScale(days: readonly number[], left: number, right: number) {
  const [from, to] = [Math.min(...days), Math.max(...days)];
  const room = Math.max(15, (to - from) * 0.03);
  return scaleOver({ lower: Math.floor(from - room), upper: Math.ceil(to + room) }, left, right);
}
