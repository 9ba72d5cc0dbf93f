import { type LogChunk, type LogColumns, seriesFromChunks, seriesFromRows } from "crankworthy/logs";
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
      mostSecondsLate: 0,
      sameTime: 1,
    });
    expect([...series.seconds]).toEqual([0, 4, 4]);
  });

  it("refuses rows out of order unless asked to sort them, and says how many there are", () => {
    const rows = [0, 2, 1, 3].map((t) => ({ t, v: 12 + t, i: 0 }));
    expect(seriesFromRows(rows, columns)).toMatchObject({ code: "out-of-order", counts: { outOfOrder: 1 } });
    expect([...given(seriesFromRows(rows, columns, { sort: true })).series.volts]).toEqual([12, 13, 14, 15]);
  });

  it("puts rows in order that are a little late, and refuses those that are later", () => {
    const rows = [0, 2, 1.5, 3, 1].map((t) => ({ t, v: 12 + t, i: 0 }));
    expect(seriesFromRows(rows, columns, { reorderWithinSeconds: 1 })).toMatchObject({
      code: "out-of-order",
      counts: { outOfOrder: 2, mostSecondsLate: 2 },
    });
    const { series } = given(seriesFromRows(rows, columns, { reorderWithinSeconds: 2 }));
    expect([...series.volts]).toEqual([12, 13, 13.5, 14, 15]);
  });

  it("knows no dates: its cells are numbers", () => {
    const time = { column: "t", unit: "iso-8601" } as const;
    expect(() => seriesFromRows([], { ...columns, time })).toThrow(
      "columns.time.unit: received iso-8601, expected one of ms, s, min, h, d",
    );
  });

  it("has no row for a table without a current", () => {
    const { current: _, ...without } = columns;
    expect(seriesFromRows([{ t: 0, v: 12 }], without)).toMatchObject({
      code: "no-rows",
      counts: { rows: 1, withoutVoltage: 0, withoutCurrent: 1 },
    });
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

describe("seriesFromChunks", () => {
  const chunk = (firstRow: number, times: readonly number[], celsius?: readonly number[]): LogChunk => ({
    firstRow,
    rows: times.length,
    seconds: Float64Array.from(times),
    volts: Float64Array.from(times, (t) => 12 + t / 100),
    amperes: Float64Array.from(times, (t) => (t === 7 ? Number.NaN : 0 - t)),
    ...(celsius ? { temperatureCelsius: Float64Array.from(celsius) } : {}),
  });

  it("gathers chunks, with a temperature only some of them have, in order of time", async () => {
    const made = given(
      await seriesFromChunks([chunk(1, [0, 7, 9]), chunk(4, [8, 10], [20, 21])], { sort: true }),
    );
    expect(made.counts).toMatchObject({
      rows: 5,
      kept: 4,
      withoutCurrent: 1,
      outOfOrder: 1,
      mostSecondsLate: 1,
    });
    expect([...made.series.seconds]).toEqual([0, 8, 9, 10]);
    expect([...made.series.amperes]).toEqual([0, -8, -9, -10]);
    expect([...made.series.temperatureCelsius!]).toEqual([Number.NaN, 20, Number.NaN, 21]);
  });

  it("makes of the chunks of any cut what it makes of the rows", async () => {
    const times = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 30 });
    await fc.assert(
      fc.asyncProperty(times, fc.integer({ min: 1, max: 7 }), async (all, size) => {
        const chunks = [];
        for (let at = 0; at < all.length; at += size) chunks.push(chunk(at + 1, all.slice(at, at + size)));
        const rows = all.map((t) => ({ t, v: 12 + t / 100, i: t === 7 ? null : 0 - t }));
        expect(await seriesFromChunks(chunks, { sort: true })).toEqual(
          seriesFromRows(rows, columns, { sort: true }),
        );
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
