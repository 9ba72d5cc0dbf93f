import { dateSchemes } from "crankworthy/date-codes";
import { dayNumber, plainDate, UtcDate, utcContext } from "crankworthy/numeric";
import { getISOWeek, getISOWeekYear, getWeek, getWeekYear, setISOWeek } from "date-fns";
import { describe, expect, it } from "vitest";

const DAY_MS = 86_400_000;
const FIRST = dayNumber("1990-01-01");
const LAST = dayNumber("2049-12-31");
const padded = (value: number): string => String(value % 100).padStart(2, "0");

describe("week numbers against date-fns, every day of sixty years", () => {
  it("ISO weeks", () => {
    for (let day = FIRST; day <= LAST; day++) {
      const date = new UtcDate(day * DAY_MS);
      const theirs =
        padded(getISOWeekYear(date, { in: utcContext })) + padded(getISOWeek(date, { in: utcContext }));
      const ours = dateSchemes.yyww.encode(day, "iso");
      if (ours !== theirs) expect.fail(`${plainDate(day)}: ${ours}, date-fns ${theirs}`);
    }
  });

  it("weeks whose first holds 1 January", () => {
    const options = { in: utcContext, weekStartsOn: 1, firstWeekContainsDate: 1 } as const;
    for (let day = FIRST; day <= LAST; day++) {
      const date = new UtcDate(day * DAY_MS);
      const theirs = padded(getWeekYear(date, options)) + padded(getWeek(date, options));
      const ours = dateSchemes.yyww.encode(day, "jan1");
      if (ours !== theirs) expect.fail(`${plainDate(day)}: ${ours}, date-fns ${theirs}`);
    }
  });

  it("the Thursday of a decoded week lies where date-fns puts it", () => {
    const context = {
      inspectionDay: LAST,
      earliestDay: FIRST,
      latestDay: LAST,
      earliestYear: 1990,
      latestYear: 2049,
      weekRule: "iso",
    } as const;
    for (let year = 1990; year < 2050; year++) {
      for (const week of [1, 9, 27, 52]) {
        const [period] = dateSchemes.yyww.decode(padded(year) + padded(week), context);
        const fourth = new UtcDate(Date.UTC(year, 0, 4));
        const theirs = setISOWeek(fourth, week, { in: utcContext }).getTime() / DAY_MS;
        expect(theirs).toBeGreaterThanOrEqual(period!.fromDay);
        expect(theirs).toBeLessThanOrEqual(period!.toDay);
        expect(period!.toDay - period!.fromDay).toBe(6);
      }
    }
  });
});
