import { checkLog, type LogQuality } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { found, randomNumbers } from "./made-log.js";

/** Rows at given times, each with its current; the voltage follows. */
function logged(rows: readonly (readonly [seconds: number, amperes: number])[]): LogQuality {
  const amperes = Float64Array.from(rows, ([, one]) => one);
  const seconds = Float64Array.from(rows, ([one]) => one);
  const volts = amperes.map((one, i) => 12.6 + 0.02 * one + 0.001 * (i % 7));
  return checkLog([{ firstRow: 1, rows: rows.length, seconds, volts, amperes }]);
}
/** Rows at equal steps. */
function run(from: number, step: number, count: number, amperes: number): [number, number][] {
  return Array.from({ length: count }, (_, i) => [from + i * step, amperes]);
}
const gaps = (quality: LogQuality) => quality.defects.filter((one) => one.code === "gap");

describe("gaps", () => {
  it("a change-driven log may be silent for ten minutes at rest, also before its first long rest", () => {
    const quality = logged([
      ...run(0, 60, 50, -3),
      // A single long interval, then rest at one row in ten minutes with an event in between.
      ...run(3540, 600, 6, 0),
      [6740, 0],
      [7140, 0],
      ...run(7140.2, 60, 30, -3),
    ]);
    expect(quality.sampling).toMatchObject({ kind: "change-driven", slowestRateSeconds: 600 });
    expect(gaps(quality)).toEqual([]);
  });

  it("the same silence under load is a gap, a longer one at rest too, of less weight", () => {
    const quality = logged([
      ...run(0, 60, 50, -3),
      ...run(3540, 600, 6, 0),
      ...run(6600, 60, 20, -3),
      ...run(8340, 60, 20, -3),
      ...run(9540, 600, 8, 0),
      ...run(23_740, 600, 8, 0),
    ]);
    expect(gaps(quality)).toMatchObject([
      {
        severity: "warning",
        firstRow: 76,
        lastRow: 77,
        values: { seconds: 600, usualSeconds: 60, rowsMissing: 9 },
      },
      { severity: "note", firstRow: 104, lastRow: 105, values: { seconds: 10_000, usualSeconds: 600 } },
    ]);
  });

  it("a change of rate is none, however large", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 100, noNaN: true }),
        fc.double({ min: 2, max: 1e4, noNaN: true }),
        (step, factor) => {
          const first = run(0, step, 40, -3);
          const second = run(39 * step + factor * step, factor * step, 40, -3);
          const third = run(second.at(-1)![0] + step, step, 40, -3);
          expect(gaps(logged([...first, ...second, ...third]))).toEqual([]);
        },
      ),
    );
  });

  it("a logger without any rate has no gap by chance", () => {
    const random = randomNumbers(77);
    let time = 0;
    const rows = Array.from({ length: 20_000 }, (): [number, number] => {
      time -= 10 * Math.log(random());
      return [time, -3];
    });
    expect(gaps(logged(rows))).toEqual([]);
    const late = rows.map(([t, i], k): [number, number] => [k < 9000 ? t : t + 5000, i]);
    expect(gaps(logged(late))).toMatchObject([{ firstRow: 9000, lastRow: 9001 }]);
  });

  it("finds every lost row of a regular log", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 5, max: 5990 }), { maxLength: 30 }),
        fc.double({ min: 1e-3, max: 600, noNaN: true }),
        (lost, step) => {
          const apart = lost.sort((a, b) => a - b).filter((row, i, all) => i === 0 || row - all[i - 1]! > 4);
          const quality = logged(run(0, step, 6000, -3).filter((_, i) => !apart.includes(i)));
          const rows = apart.map((row, i) => row - i);
          expect(found(quality).filter((one) => one.startsWith("gap"))).toEqual(
            rows.map((row) => `gap ${row}-${row + 1}`),
          );
        },
      ),
      { numRuns: 40 },
    );
  });

  it("counts intervals of rows with voltage or current only, and none back in time", () => {
    const rows = 40;
    const seconds = Float64Array.from({ length: rows }, (_, i) => 10 * i);
    const volts = seconds.map((_, i) => (i % 4 === 0 ? 12.6 : Number.NaN));
    const amperes = seconds.map((_, i) => (i % 4 === 2 ? -1 : Number.NaN));
    const quality = checkLog([{ firstRow: 1, rows, seconds, volts, amperes }]);
    expect(quality.sampling).toMatchObject({ medianSeconds: 20, leastSeconds: 20, mostSeconds: 20 });
    expect(quality.defects).toMatchObject([
      { code: "not-sampled-together", severity: "warning", count: 1 },
      ...Array(19).fill({ count: 1 }),
    ]);
  });

  it("reports a median that is exact for a regular log", () => {
    for (const step of [0.001, 0.02, 0.1, 1, 60, 64])
      expect(logged(run(1.7e9, step, 5000, 0)).sampling!.medianSeconds / step).toBeCloseTo(1, 3);
  });
});
