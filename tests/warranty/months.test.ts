import { addMonthsFrom, countDays, countMonths, lastCoveredDay, type MonthCount } from "crankworthy/warranty";
import fc from "fast-check";
import { afterEach, describe, expect, it } from "vitest";

const day = fc
  .integer({ min: 0, max: 40_000 })
  .map((n) => new Date(n * 86_400_000).toISOString().slice(0, 10));
const ordered = fc.tuple(day, day).map(([a, b]) => (a < b ? [a, b] : [b, a]) as [string, string]);

describe("countMonths", () => {
  it("completed-clamped is the largest n whose anniversary is not after the end", () => {
    fc.assert(
      fc.property(ordered, ([a, b]) => {
        const n = countMonths(a, b, "completed-clamped");
        expect(addMonthsFrom(a, n) <= b).toBe(true);
        expect(addMonthsFrom(a, n + 1) > b).toBe(true);
      }),
    );
  });

  it("conventions keep their order: day-of-month ≤ clamped ≤ started ≤ clamped + 1, clamped ≤ calendar", () => {
    fc.assert(
      fc.property(ordered, ([a, b]) => {
        const [dom, clamped, started, calendar] = (
          ["completed-day-of-month", "completed-clamped", "started", "calendar"] as const
        ).map((rule) => countMonths(a, b, rule)) as [number, number, number, number];
        expect(dom).toBeLessThanOrEqual(clamped);
        expect(clamped).toBeLessThanOrEqual(started);
        expect(started).toBeLessThanOrEqual(clamped + 1);
        expect(clamped).toBeLessThanOrEqual(calendar);
      }),
    );
  });

  it("started is the smallest n whose last covered day is not before the end, under both conventions", () => {
    fc.assert(
      fc.property(ordered, fc.constantFrom("anniversary", "day-before"), ([a, b], rule) => {
        const n = countMonths(a, b, "started", rule);
        expect(lastCoveredDay(a, n, rule) >= b).toBe(true);
        if (n > 0) expect(lastCoveredDay(a, n - 1, rule) < b).toBe(true);
      }),
    );
    expect(countMonths("2023-01-15", "2025-01-15", "started")).toBe(24);
    expect(countMonths("2023-01-15", "2025-01-14", "started", "day-before")).toBe(24);
    expect(countMonths("2023-01-15", "2025-01-15", "started", "day-before")).toBe(25);
    // Where the day number is missing, the month's last day is the last covered one under both.
    expect(countMonths("2023-01-31", "2023-02-28", "started", "day-before")).toBe(1);
  });

  it("never falls as the end moves on", () => {
    fc.assert(
      fc.property(
        ordered,
        fc.integer({ min: 0, max: 70 }),
        fc.constantFrom<MonthCount>(
          "completed-clamped",
          "completed-day-of-month",
          "started",
          "calendar",
          "days",
        ),
        ([a, b], later, rule) => {
          const c = new Date(Date.parse(b) + later * 86_400_000).toISOString().slice(0, 10);
          expect(countMonths(a, c, rule)).toBeGreaterThanOrEqual(countMonths(a, b, rule));
        },
      ),
    );
  });

  it("throws for no date, a backward interval, an unknown convention", () => {
    expect(() => countMonths("2025-02-29", "2025-03-01", "calendar")).toThrow(/from: received 2025-02-29/);
    expect(() => countMonths("2025-03-02", "2025-03-01", "calendar")).toThrow(RangeError);
    expect(() => countMonths("2025-03-01", "2025-03-02", "lunar" as MonthCount)).toThrow(/convention/);
    expect(() => addMonthsFrom("2025-03-01", 1.5)).toThrow(RangeError);
    expect(addMonthsFrom("9999-01-31", 11)).toBe("9999-12-31");
    expect(() => addMonthsFrom("9999-01-31", 12)).toThrow(/months: received 12/);
    expect(() => addMonthsFrom("9999-12-05", 1)).toThrow(RangeError);
    expect(addMonthsFrom("1000-02-05", -1)).toBe("1000-01-05");
    expect(() => addMonthsFrom("1000-01-05", -1)).toThrow(RangeError);
  });
});

describe("lastCoveredDay", () => {
  it("day-before is one day earlier where the date exists, the same day where it does not", () => {
    fc.assert(
      fc.property(day, fc.integer({ min: 1, max: 120 }), (start, months) => {
        const anniversary = lastCoveredDay(start, months, "anniversary");
        const exists = anniversary.slice(8) === start.slice(8);
        expect(countDays(lastCoveredDay(start, months, "day-before"), anniversary)).toBe(exists ? 1 : 0);
      }),
    );
  });
});

describe("time zones", () => {
  const before = process.env.TZ;
  afterEach(() => {
    if (before === undefined) delete process.env.TZ;
    else process.env.TZ = before;
  });

  it.each([
    ["UTC", 0],
    ["America/St_Johns", 210],
    ["Pacific/Apia", -780],
    ["Africa/Casablanca", -60],
  ])("%s: the same dates and counts", (zone, offsetInJuly) => {
    process.env.TZ = zone;
    // Without this the test could pass without the zone having been set.
    const shift = new Date(Date.UTC(2019, 6, 1)).getTimezoneOffset();
    expect(zone === "America/St_Johns" ? shift + 60 : shift).toBe(offsetInJuly);
    expect(addMonthsFrom("2011-11-30", 1)).toBe("2011-12-30");
    expect(addMonthsFrom("2011-12-31", 1)).toBe("2012-01-31");
    expect(countDays("2011-12-29", "2011-12-31")).toBe(2);
    expect(countMonths("2011-11-30", "2011-12-30", "completed-clamped")).toBe(1);
    expect(countMonths("2011-12-30", "2012-02-29", "started")).toBe(2);
    expect(lastCoveredDay("2010-12-31", 12, "day-before")).toBe("2011-12-30");
    for (const start of ["2024-03-10", "2024-11-03", "2024-03-31", "2024-10-27", "2025-03-30"]) {
      expect(addMonthsFrom(start, 12)).toBe(`${Number(start.slice(0, 4)) + 1}${start.slice(4)}`);
      expect(countMonths(start, addMonthsFrom(start, 7), "completed-clamped")).toBe(7);
    }
  });
});
