import { dayNumber, daysInMonth, plainDate, UtcDate, utcContext } from "crankworthy/numeric";
import { addMonths } from "date-fns";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("plain dates", () => {
  it("day number and date undo each other for two centuries", () => {
    fc.assert(
      fc.property(fc.integer({ min: dayNumber("1900-01-01"), max: dayNumber("2099-12-31") }), (day) => {
        expect(dayNumber(plainDate(day))).toBe(day);
        expect(plainDate(day + 1) > plainDate(day)).toBe(true);
      }),
    );
  });

  it.each([
    "2025-02-29",
    "2025-13-01",
    "2025-00-10",
    "2025-04-31",
    "25-01-01",
    "2025-1-1",
    "2025-01-01T00",
    "",
    "0999-01-01",
  ])("%s is no date", (text) => expect(dayNumber(text)).toBeNaN());

  it("knows leap years by the Gregorian rule", () => {
    expect([1900, 2000, 2023, 2024].map((year) => daysInMonth(year, 2))).toEqual([28, 29, 28, 29]);
  });

  it("calculates in UTC whatever the machine's zone: the day Apia skipped exists", () => {
    const start = new UtcDate(dayNumber("2011-11-30") * 86_400_000);
    expect(addMonths(start, 1, { in: utcContext }).toISOString().slice(0, 10)).toBe("2011-12-30");
    expect(start.getHours()).toBe(0);
    expect(start.getTimezoneOffset()).toBe(0);
  });
});
