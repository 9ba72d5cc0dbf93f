import { ageInterval, withinLimit } from "crankworthy/date-codes";
import { dayNumber, plainDate, UtcDate, utcContext } from "crankworthy/numeric";
import { addMonths } from "date-fns";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const DAY_MS = 86_400_000;
const anyDay = fc.integer({ min: dayNumber("1990-01-01"), max: dayNumber("2049-12-31") });

describe("ageInterval", () => {
  it("counts a month as complete on the same day, or on the last day where that is missing", () => {
    const monthsOf = (made: string, on: string) => ageInterval({ from: made, to: made }, on).months.lower;
    expect(monthsOf("2024-01-31", "2024-02-28")).toBe(0);
    expect(monthsOf("2024-01-31", "2024-02-29")).toBe(1);
    expect(monthsOf("2024-01-31", "2024-03-30")).toBe(1);
    expect(monthsOf("2024-02-29", "2025-02-28")).toBe(12);
    expect(monthsOf("2024-03-31", "2024-03-01")).toBe(-1);
  });

  it("months are the largest number that date-fns can add without passing the day", () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -40, max: 9000 }), (made, days) => {
        const text = plainDate(made);
        const { months } = ageInterval({ from: text, to: text }, plainDate(made + days));
        const monthsLater = (count: number) =>
          addMonths(new UtcDate(made * DAY_MS), count, { in: utcContext }).getTime() / DAY_MS;
        expect(monthsLater(months.lower)).toBeLessThanOrEqual(made + days);
        expect(monthsLater(months.lower + 1)).toBeGreaterThan(made + days);
      }),
    );
  });

  it("is as wide as the period, and never below zero days unless the period had not ended", () => {
    fc.assert(
      fc.property(anyDay, fc.nat(30), fc.nat(5000), (from, width, later) => {
        const made = { from: plainDate(from), to: plainDate(from + width) };
        const { days, months } = ageInterval(made, plainDate(from + later));
        expect(days.upper - days.lower).toBe(width);
        expect(days.lower < 0).toBe(later < width);
        expect(months.lower).toBeLessThanOrEqual(months.upper);
      }),
    );
  });

  it("throws for a date that is none", () => {
    expect(() => ageInterval({ from: "2024-02-30", to: "2024-03-01" }, "2024-04-01")).toThrow(
      /made\.from.*2024-02-30/,
    );
    expect(() => ageInterval({ from: "2024-02-01", to: "2024-03-01" }, "today")).toThrow(RangeError);
  });
});

describe("withinLimit", () => {
  it("has three answers", () => {
    const age = { lower: 168, upper: 198 };
    expect([167, 168, 180, 197, 198, 365].map((limit) => withinLimit(age, limit))).toEqual([
      "beyond",
      "cannot-tell",
      "cannot-tell",
      "cannot-tell",
      "within",
      "within",
    ]);
    expect(() => withinLimit(age, Number.NaN)).toThrow(RangeError);
  });

  it("never says more about a wider interval than about any day in it", () => {
    fc.assert(
      fc.property(fc.integer(), fc.nat(60), fc.integer(), (lower, width, limit) => {
        const answers = new Set(
          [lower, lower + width].map((age) => withinLimit({ lower: age, upper: age }, limit)),
        );
        const answer = withinLimit({ lower, upper: lower + width }, limit);
        expect(answer).toBe(answers.size === 1 ? [...answers][0] : "cannot-tell");
      }),
    );
  });
});
