import { findFinalRest, type LogSeries } from "crankworthy/logs";
import { describe, expect, it } from "vitest";
import { given, present, readVrla, SKIPPED, VRLA } from "../datasets.js";

const RULE = { restAmperes: 0.25, leastSeconds: 600 };

function series(rows: readonly (readonly [number, number, number])[]): LogSeries {
  const column = (i: 0 | 1 | 2) => Float64Array.from(rows, (row) => row[i]);
  return { seconds: column(0), volts: column(1), amperes: column(2) };
}

describe("findFinalRest", () => {
  it("passes over a rest that is too short", () => {
    const rest = given(
      findFinalRest(
        series([
          [0, 12, 5],
          [10, 13, 0],
          [900, 12.9, 0],
          [1000, 12, -5],
          [1010, 12.4, 0],
          [1100, 12.5, 0],
        ]),
        RULE,
      ),
    );
    expect(rest).toMatchObject({
      lastVolts: 12.9,
      restSeconds: 890,
      before: "charging",
      endsLog: false,
      edgeRows: 0,
    });
  });

  it("leaves out edge rows on either side, by time and by repeated voltage", () => {
    const rest = given(
      findFinalRest(
        series([
          [0, 10.8, -3],
          [600, 10.8, 0],
          [1200, 11.3, 0],
          [1800, 11.4, 0],
          [1999.8, 11, 0],
          [2000, 10.6, -3],
        ]),
        RULE,
      ),
    );
    expect(rest).toMatchObject({ firstRow: 2, lastRow: 3, lastVolts: 11.4, restSeconds: 1200, edgeRows: 2 });
  });

  it("knows a log that rests throughout, and refuses one that never does", () => {
    const quiet = series([
      [0, 12.6, 0.01],
      [700, 12.6, 0.01],
    ]);
    expect(given(findFinalRest(quiet, RULE))).toMatchObject({ before: "nothing", endsLog: true });
    expect(findFinalRest({ ...quiet, amperes: Float64Array.of(-3, -3) }, RULE)).toMatchObject({
      code: "no-rest",
    });
  });
});

// Voltage at the end of the rest and its length: from the description of the data set.
const RESTS = [
  ["discharge_A_3.0A.csv", 11.445, 6000],
  ["discharge_A_2.5A.csv", 11.383, 5400],
  ["discharge_A_1.5A.csv", 11.232, 4881],
  ["discharge_A_1.0A_first.csv", 11.097, 4800],
  ["discharge_A_0.5A.csv", 10.981, 4200],
] as const;

describe.skipIf(!present(VRLA))(
  `12 V 17 Ah VRLA telemetry, repository valentinsulzer/faster-lead-acid (${SKIPPED} when absent)`,
  () => {
    it.each(RESTS)("%s ends at %f V after %d s of rest", (file, volts, seconds) => {
      const rest = given(findFinalRest(readVrla(file).series, RULE));
      expect(rest.lastVolts.toFixed(3)).toBe(volts.toFixed(3));
      expect(Math.abs(rest.restSeconds - seconds)).toBeLessThan(1);
      expect(rest).toMatchObject({ before: "discharging", endsLog: true, edgeRows: 2 });
    });

    it("discharge_A_3.0A.csv: no row of the rest is the mean at the step, 10.799 V", () => {
      const { series: log } = readVrla("discharge_A_3.0A.csv");
      const rest = given(findFinalRest(log, RULE));
      expect(log.volts[rest.firstRow - 1]!.toFixed(3)).toBe("10.799");
      expect(log.volts[rest.firstRow]!.toFixed(3)).toBe("11.263");
    });
  },
);
