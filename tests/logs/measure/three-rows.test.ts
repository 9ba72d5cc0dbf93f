import { describe, expect, it } from "vitest";
import { threeRows } from "../../../src/logs/measure/three-rows.js";
import { seeded } from "./recovery.js";

const shifted = (values: Float64Array, by: number): Float64Array =>
  values.map((_, k) => values[k + by] ?? Number.NaN);

describe("three rows", () => {
  it("tells the shares of a current smeared over rows: their sum and their centre", () => {
    const { even } = seeded(2);
    const amperes = Float64Array.from({ length: 300 }, () => -100 * even());
    const [early, late] = [shifted(amperes, -1), shifted(amperes, 1)];
    const volts = amperes.map((one, k) => 12 + 0.004 * early[k]! + 0.01 * one + 0.006 * late[k]!);
    const shares = threeRows(volts, early, amperes, late)!;
    expect(shares.ohms).toBeCloseTo(0.02, 12);
    expect(shares.centre).toBeCloseTo(0.1, 10);
    expect(shares.standardUncertaintyOhms).toBeLessThan(1e-12);
    const mixed = shares.mixedAt(0.25);
    expect(mixed[5]).toBeCloseTo(0.75 * amperes[5]! + 0.25 * amperes[6]!, 12);
    expect([mixed[0], mixed[299]]).toEqual([Number.NaN, Number.NaN]);
  });

  it("a smooth current has a lag but no bend of its own", () => {
    const seconds = Float64Array.from({ length: 500 }, (_, k) => 0.02 * k);
    const wave = (t: number) => -50 + 30 * Math.sin(3 * t);
    const column = (by: number) => seconds.map((t) => wave(t + 0.02 * by));
    const volts = seconds.map((t) => 12 + 0.01 * wave(t + 0.02 * 0.3));
    const shares = threeRows(volts, column(-1), column(0), column(1))!;
    expect(shares.centre).toBeCloseTo(0.3, 3);
    expect(shares.ohms).toBeCloseTo(0.01, 4);
  });

  it("says nothing for few rows, a current that stays, or a lag further off", () => {
    const seconds = Float64Array.from({ length: 60 }, (_, k) => 0.02 * k);
    const wave = (t: number) => -50 + 30 * Math.sin(9 * t);
    const at = (rows: number) => seconds.map((t) => wave(t + 0.02 * rows));
    const volts = at(3).map((one) => 12 + 0.01 * one);
    expect(threeRows(volts, at(-1), at(0), at(1))).toBeUndefined();
    expect(threeRows(volts, at(2), at(3), at(4))).toBeDefined();
    const still = new Float64Array(60).fill(-3);
    expect(threeRows(volts, still, still, still)).toBeUndefined();
    const first = (rows: number) => at(rows).subarray(0, 15);
    expect(threeRows(volts.subarray(0, 15), first(2), first(3), first(4))).toBeUndefined();
  });
});
