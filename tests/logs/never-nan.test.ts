import {
  chargeMoved,
  findFinalRest,
  findOhmicResistance,
  fitOhmicResistance,
  type LogSeries,
  seriesFromRows,
} from "crankworthy/logs";
import fc from "fast-check";
import { describe, it } from "vitest";
import { around, either, given, maybe, neverNaN } from "../fuzz/strange-numbers.js";

// Strange numbers in one row of some series only: a long log with one in ten of all numbers strange is never looked at.
const series: fc.Arbitrary<LogSeries> = fc
  .tuple(
    fc.array(
      fc.tuple(fc.double({ min: 9, max: 15, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true })),
      {
        minLength: 0,
        maxLength: 40,
      },
    ),
    fc.nat(39),
    around(9, 15),
    around(-9, 9),
    fc.boolean(),
  )
  .map(([rows, at, volts, amperes, still]) => {
    const all = rows.map((row, i): readonly [number, number] => (i === at ? [volts, amperes] : row));
    return {
      seconds: Float64Array.from(all, (_, i) => 10 * i),
      volts: Float64Array.from(all, ([one]) => one),
      amperes: Float64Array.from(all, ([, one]) => (still ? 0 : one)),
    };
  });

describe("logs give no NaN, whatever they are given", () => {
  it("charge moved and final rest", () => {
    const options = fc.record({
      fromSeconds: maybe(around(0, 100)),
      toSeconds: maybe(around(100, 400)),
      amperesStandardUncertainty: maybe(around(0, 1)),
    });
    neverNaN(fc.tuple(series, options), ([log, one]) => chargeMoved(log, given(one)));
    const rule = fc.record({
      restAmperes: around(0.1, 10),
      leastSeconds: around(0, 100),
      edgeSeconds: maybe(around(0, 20)),
    });
    neverNaN(fc.tuple(series, rule), ([log, one]) => findFinalRest(log, given(one)));
  });

  it("resistance", () => {
    const lag = fc.oneof(fc.integer({ min: -5, max: 5 }), around(0, 5));
    neverNaN(fc.tuple(series, lag), ([log, lagRows]) => fitOhmicResistance(log, lagRows));
    neverNaN(
      fc.tuple(series, fc.record({ firstLag: lag, lastLag: lag })),
      ([log, range]) => findOhmicResistance(log, range),
      500,
    );
  });

  it("series from rows", () => {
    const row = fc.tuple(around(0, 1e5), around(0, 15), around(-100, 100));
    const columns = fc.record({
      time: fc.record({ column: fc.constant(0), unit: either("ms", "s", "min", "h") }),
      voltage: fc.record({ column: fc.constant(1), unit: either("mV", "V") }),
      current: fc.record({
        column: fc.constant(2),
        unit: either("mA", "A"),
        positive: either("charging", "discharging"),
      }),
    });
    neverNaN(fc.tuple(fc.array(row, { maxLength: 10 }), columns), ([rows, one]) =>
      seriesFromRows(rows, one, { sort: true }),
    );
  });
});
