import { checkLog, compareTimeScale } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { check, soundLog } from "./made-log.js";

const columns = (clockStep: number, step: number, rows = 40) => ({
  elapsed: Float64Array.from({ length: rows }, (_, i) => i * step),
  clock: Float64Array.from({ length: rows }, (_, i) => 1.7e9 + i * clockStep),
});
const judged = (clockStep: number, step: number, rows?: number) => {
  const { elapsed, clock } = columns(clockStep, step, rows);
  return compareTimeScale(elapsed, clock);
};

describe("elapsed time against a clock", () => {
  // Steps of clock and elapsed time; worked out by hand from the rule of the Battery Data Format's reference validator.
  it.each([
    [1, 1, "consistent", 1],
    [1, 1.04, "consistent", 1.04],
    [1, 1.06, "unexplained", 1.06],
    [1, 1000, "milliseconds", 1000],
    [10, 10_400, "milliseconds", 1040],
    [10, 10_600, "unexplained", 1060],
    [60, 1, "minutes", 1 / 60],
    [1800, 0.5, "hours", 0.5 / 1800],
    [1, 1e6, "microseconds", 1e6],
    [1, 1e9, "nanoseconds", 1e9],
  ] as const)("Δclock %d s, Δelapsed %d: %s", (clockStep, step, statement, ratio) => {
    const scale = judged(clockStep, step);
    expect(scale).toMatchObject({ statement, pairs: 39, compared: "neighbouring-rows" });
    expect(scale.ratio! / ratio).toBeCloseTo(1, 6);
  });

  it("says nothing of neighbours less than half a second apart, and compares rows further apart", () => {
    // 40 rows make 7 such pairs: too few.
    expect(judged(0.1, 100)).toEqual({ statement: "no-statement", pairs: 0, compared: "neighbouring-rows" });
    expect(judged(0.1, 100, 100)).toMatchObject({ statement: "milliseconds", compared: "rows-apart" });
    expect(judged(0.1, 0.1, 100)).toMatchObject({ statement: "consistent", compared: "rows-apart" });
  });

  it("needs ten pairs", () => {
    expect(judged(1, 1, 10).statement).toBe("no-statement");
    expect(judged(1, 1, 11).statement).toBe("consistent");
  });

  it("takes the median: pauses, restarts and missing values do not count", () => {
    const { elapsed, clock } = columns(1, 1000, 100);
    fc.assert(
      fc.property(fc.array(fc.nat(99), { maxLength: 12 }), (rows) => {
        const spoiled = elapsed.slice();
        for (const row of rows) spoiled[row] = row % 2 ? Number.NaN : 0;
        expect(compareTimeScale(spoiled, clock).statement).toBe("milliseconds");
      }),
    );
  });

  it("needs both columns of one length", () => {
    expect(() => compareTimeScale(new Float64Array(3), new Float64Array(4))).toThrow(RangeError);
  });

  it("is an error where the unit is known, a warning where it is not, nothing without a clock", () => {
    const log = soundLog(1, 100);
    const spoiled = (factor: number) => check({ ...log, seconds: log.seconds.map((one) => one * factor) });
    expect(spoiled(1).timeScale).toMatchObject({ statement: "consistent" });
    expect(spoiled(1.2).defects).toMatchObject([{ code: "time-scale", severity: "warning" }]);
    expect(spoiled(1 / 60).defects).toMatchObject([{ code: "time-scale", severity: "error" }]);
    const bare = { seconds: new Float64Array(3), volts: new Float64Array(3), amperes: new Float64Array(3) };
    expect(checkLog([{ firstRow: 1, rows: 3, ...bare }])).not.toHaveProperty("timeScale");
  });
});
