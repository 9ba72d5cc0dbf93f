import { checkLog, type LogQuality } from "crankworthy/logs";
import { describe, expect, it } from "vitest";
import { found, randomNumbers } from "./made-log.js";

// What sound batteries do that looks like a defect: none of it may be reported.

type Row = readonly [volts: number, amperes: number];
function logged(rows: readonly Row[], step = 1): LogQuality {
  return checkLog([
    {
      firstRow: 1,
      rows: rows.length,
      seconds: Float64Array.from(rows, (_, i) => i * step),
      volts: Float64Array.from(rows, ([one]) => one),
      amperes: Float64Array.from(rows, ([, one]) => one),
    },
  ]);
}
const many = (count: number, row: (i: number) => Row): Row[] =>
  Array.from({ length: count }, (_, i) => row(i));
const round = (value: number, step: number) => Math.round(value / step) * step;
const random = randomNumbers(4711);

describe("no false suspicion", () => {
  it("an alternator holds 14.4 V exactly while the current goes up and down", () => {
    const rows = many(9000, (i) => [14.4, round(10 + 30 * Math.sin(i / 20) + 3 * random(), 0.1)]);
    expect(found(logged(many(200, (): Row => [12.6, 0]).concat(rows)))).toEqual([]);
  });

  it("an electronic load holds 50 A exactly, switched on and off, with the voltage a few rows ahead", () => {
    const on = (i: number) => Math.floor(i / 100) % 2 === 1;
    const rows = many(4000, (i) => [
      round(12.6 - (on(i + 5) ? 0.5 + 0.002 * ((i + 5) % 100) : 0), 0.001),
      on(i) ? -50 : 0,
    ]);
    expect(found(logged(rows, 0.02)).filter((one) => !one.startsWith("current-lag"))).toEqual([]);
  });

  it("a meter of coarse steps stands still at rest and under small loads", () => {
    const rows = many(6000, (i) => [
      round(12.6 + (i < 3000 ? -0.3 * Math.exp(-i / 800) : 0.05 * Math.sin(i / 300)), 0.1),
      round(0.4 * Math.sin(i / 50), 0.5),
    ]);
    expect(found(logged(rows))).toEqual([]);
  });

  it("charging at constant current and then at constant voltage", () => {
    const rows = many(12_000, (i) => {
      const amperes = i < 6000 ? 5 : Math.max(0.3, 5 * Math.exp((6000 - i) / 1500));
      return [round(Math.min(14.4, 12.2 + (i / 6000) * 2.2), 0.01), round(amperes, 0.01)];
    });
    expect(found(logged(rows))).toEqual([]);
  });

  it("a discharge to the very end, then recovery", () => {
    const rows = many(3000, (i) =>
      i < 2500
        ? [round(12.5 - 0.0006 * i - (i > 2300 ? 0.01 * (i - 2300) : 0), 0.001), -5]
        : [round(11.4 - 0.8 * Math.exp((2500 - i) / 100), 0.001), 0],
    );
    expect(found(logged(rows, 10))).toEqual([]);
  });

  it("a cold bank charged at 15.1 V, without any current column", () => {
    expect(
      found(
        logged(
          many(500, (i) => [13.8 + 1.3 * Math.sin(i / 50) ** 2, Number.NaN]),
          3600,
        ),
      ),
    ).toEqual([]);
  });

  it("a 24 V system is one; 32.767 V among its values is a number of the converter", () => {
    const rows = many(500, (i) => [i === 200 ? 32.767 : 25 + 0.01 * (i % 9), 0]);
    expect(found(logged(rows))).toEqual(["sentinel-number 201-201", "system-voltage 1-500"]);
  });

  it("a crank of 999 A that pulls the voltage down is a crank", () => {
    const rows = many(500, (i) => (i > 200 && i < 260 ? [7.5, -999 - (i % 3)] : [12.6, 0]));
    rows[230] = [7.5, -999];
    expect(found(logged(rows)).filter((one) => one.startsWith("sentinel"))).toEqual([]);
  });
});

describe("idle current", () => {
  it("that flips between a few readings is told with its readings", () => {
    const readings = [-0.006, -0.01, -0.032];
    const quality = logged(
      many(200, (i) => [12.8, readings[(i * i) % 3]!]),
      60,
    );
    expect(quality.defects).toMatchObject([
      {
        code: "idle-current",
        severity: "note",
        firstRow: 1,
        lastRow: 200,
        values: { differentReadings: 2, leastAmperes: -0.01, mostAmperes: -0.006, commonestAmperes: -0.01 },
      },
    ]);
  });

  it("is a warning where a vehicle would be drawing too much, nothing in a pause of nine minutes or around zero", () => {
    expect(
      logged(
        many(100, () => [12.6, -0.07]),
        60,
      ).defects,
    ).toMatchObject([{ severity: "warning", values: { ampereHoursPerDay: expect.closeTo(-1.68, 9) } }]);
    expect(
      found(
        logged(
          many(1000, (i) => [12.6, i % 10 === 0 ? -5 : -0.02]),
          54,
        ),
      ).filter((one) => one.startsWith("idle")),
    ).toEqual([]);
    expect(
      found(
        logged(
          many(5000, () => [12.6, round(0.1 * (random() - 0.5), 0.001)]),
          60,
        ),
      ),
    ).toEqual([]);
  });
});
