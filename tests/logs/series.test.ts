import { type LogColumns, seriesFromRows } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given, present, ROBOT, readRobot, readVrla, SKIPPED, VRLA, vrlaRows } from "./datasets.js";

const columns: LogColumns = {
  time: { column: "t", unit: "s" },
  voltage: { column: "v", unit: "V" },
  current: { column: "i", unit: "A", positive: "charging" },
};

describe("seriesFromRows", () => {
  it("converts units and turns the sign to positive = charging", () => {
    const { series } = given(
      seriesFromRows([[2, 12600, 300, 68]], {
        time: { column: 0, unit: "min" },
        voltage: { column: 1, unit: "mV" },
        current: { column: 2, unit: "mA", positive: "discharging" },
        temperature: { column: 3, unit: "degF" },
      }),
    );
    expect(series.seconds[0]).toBe(120);
    expect(series.volts[0]).toBeCloseTo(12.6, 12);
    expect(series.amperes[0]).toBeCloseTo(-0.3, 12);
    expect(series.temperatureCelsius?.[0]).toBeCloseTo(20, 12);
  });

  it("counts every row it leaves out, by what is missing", () => {
    const { counts, series } = given(
      seriesFromRows(
        [
          { t: 0, v: 12, i: 1 },
          { t: 1, v: null, i: 1 },
          { t: 2, v: Number.NaN, i: undefined },
          { v: 12, i: 1 },
          { t: 4, v: 12, i: 1 },
          { t: 4, v: 12, i: 2 },
        ],
        columns,
      ),
    );
    expect(counts).toEqual({
      rows: 6,
      kept: 3,
      leftOut: 3,
      withoutTime: 1,
      withoutVoltage: 2,
      withoutCurrent: 1,
      outOfOrder: 0,
      sameTime: 1,
    });
    expect([...series.seconds]).toEqual([0, 4, 4]);
  });

  it("refuses rows out of order unless asked to sort them, and says how many there are", () => {
    const rows = [0, 2, 1, 3].map((t) => ({ t, v: 12 + t, i: 0 }));
    expect(seriesFromRows(rows, columns)).toMatchObject({ code: "out-of-order", counts: { outOfOrder: 1 } });
    expect([...given(seriesFromRows(rows, columns, { sort: true })).series.volts]).toEqual([12, 13, 14, 15]);
  });

  it("refuses a table without a complete row, with the counts", () => {
    expect(seriesFromRows([{ t: 1, v: 12 }], columns)).toMatchObject({
      code: "no-rows",
      counts: { withoutCurrent: 1 },
    });
  });

  it("kept and left-out rows add up to all rows; sorting keeps every value", () => {
    const cell = fc.oneof(fc.double({ noNaN: true, min: -100, max: 100 }), fc.constant(null));
    fc.assert(
      fc.property(fc.array(fc.record({ t: cell, v: cell, i: cell }), { minLength: 1 }), (rows) => {
        const made = seriesFromRows(rows, columns, { sort: true });
        expect(made.counts.kept + made.counts.leftOut).toBe(made.counts.rows);
        if ("refused" in made) return;
        const complete = rows.filter((row) => row.t !== null && row.v !== null && row.i !== null);
        const up = (a: number, b: number) => a - b;
        expect([...made.series.volts].sort(up)).toEqual(complete.map((row) => row.v!).sort(up));
      }),
    );
  });
});

describe.skipIf(!present(VRLA))(`telemetry of a 12 V 17 Ah VRLA battery (${SKIPPED} when absent)`, () => {
  it("cycles_A_10days_with_charging.csv: 32 of all rows are out of time order, 10 of them complete ones", () => {
    const file = "cycles_A_10days_with_charging.csv";
    // The description counts every row, also those with a temperature alone: take the time for all three columns.
    const time = { column: 0, unit: "ms" } as const;
    const all = seriesFromRows(vrlaRows(file), {
      time,
      voltage: { column: 0, unit: "mV" },
      current: { column: 0, unit: "mA", positive: "charging" },
    });
    expect(all).toMatchObject({ code: "out-of-order", counts: { leftOut: 0, outOfOrder: 32 } });
    expect(readVrla(file).counts.outOfOrder).toBe(10);
  });
});

describe.skipIf(!present(ROBOT))(`robot log 2022-03-19 (${SKIPPED} when absent)`, () => {
  it("holds 13 430 rows, 1 081 of them without telemetry", () => {
    const { counts } = readRobot();
    expect(counts.rows).toBe(13430);
    expect(counts.leftOut).toBe(1081);
  });
});
