import { readFileSync } from "node:fs";
import { type DelimitedFormat, openLog, seriesFromChunks } from "crankworthy/logs";
import { describe, expect, it } from "vitest";
import { given, present, ROBOT, readRobot, readVrla, SKIPPED, STATION, VRLA } from "../datasets.js";
import { readAll } from "./rows.js";

/** Cells of a file by nothing but splitting, first row of data first. */
const cellsOf = (path: string): string[][] =>
  readFileSync(path, "utf8")
    .trimEnd()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","));

const number = (text: string): number => (text === "" ? Number.NaN : Number(text));

const FORMAT: DelimitedFormat = {
  columns: {
    time: { column: "time", unit: "local-clock" },
    voltage: { column: "voltage", unit: "V" },
    current: { column: "current", unit: "A", positive: "discharging" },
    temperature: { column: "temperature", unit: "degC" },
  },
};

const VRLA_FILES = [
  "discharge_A_3.0A.csv",
  "discharge_A_2.5A.csv",
  "discharge_A_1.5A.csv",
  "discharge_A_1.0A_first.csv",
  "discharge_A_0.5A.csv",
  "cycles_A_10days_with_charging.csv",
];

describe.skipIf(!present(VRLA))(
  `12 V 17 Ah VRLA telemetry, repository valentinsulzer/faster-lead-acid (${SKIPPED} when absent)`,
  () => {
    it.each(VRLA_FILES)("%s: every cell of every row", async (file) => {
      const path = `${VRLA}/${file}`;
      const cells = cellsOf(path);
      const { seconds, volts, amperes, celsius, tally } = await readAll({ path }, FORMAT);
      expect(tally).toEqual({
        rows: cells.length,
        badCells: 0,
        badRows: 0,
        problems: [],
        timeZero: cells[0]![0],
      });
      expect(volts).toEqual(cells.map(([, one]) => number(one!)));
      expect(amperes).toEqual(cells.map(([, , one]) => 0 - number(one!)));
      expect(celsius).toEqual(cells.map(([, , , one]) => number(one!)));
      const milliseconds = cells.map(([time]) => Date.parse(`${time!.replace(" ", "T")}Z`));
      milliseconds.forEach((time, i) => {
        expect(Math.abs(seconds[i]! - (time - milliseconds[0]!) / 1000)).toBeLessThan(1e-9);
      });
    });

    it("cycles_A_10days_with_charging.csv: 10 complete rows out of order by up to 0.6 s", async () => {
      const path = `${VRLA}/cycles_A_10days_with_charging.csv`;
      const log = await openLog({ path }, FORMAT);
      const { series, counts } = given(await seriesFromChunks(log.chunks, { reorderWithinSeconds: 1 }));
      const before = readVrla("cycles_A_10days_with_charging.csv");
      expect(counts).toMatchObject({
        ...before.counts,
        mostSecondsLate: expect.closeTo(counts.mostSecondsLate, 6),
      });
      expect(counts.outOfOrder).toBe(10);
      expect(counts.mostSecondsLate).toBeGreaterThan(0);
      expect(counts.mostSecondsLate).toBeLessThan(0.65);
      expect(series.volts).toEqual(before.series.volts);
    });
  },
);

describe.skipIf(!present(ROBOT))(
  `12 V 18 Ah AGM robot log, repository orangelight/DSLOG-Reader (${SKIPPED} when absent)`,
  () => {
    it("agm12v18ah_robot_match_20220319.csv: every cell, 1 081 frames without telemetry", async () => {
      const cells = cellsOf(ROBOT);
      const format: DelimitedFormat = {
        columns: {
          time: { column: "t_s", unit: "s" },
          voltage: { column: "voltage_V", unit: "V" },
          current: { column: "current_A", unit: "A", positive: "discharging" },
        },
      };
      const { seconds, volts, amperes } = await readAll({ path: ROBOT }, format);
      expect(seconds).toEqual(cells.map(([one]) => number(one!)));
      expect(volts).toEqual(cells.map(([, one]) => number(one!)));
      expect(amperes).toEqual(cells.map(([, , one]) => 0 - number(one!)));
      expect(volts.filter((one) => Number.isNaN(one))).toHaveLength(1081);
      const log = await openLog({ path: ROBOT }, format);
      expect(log.header.leftOver).toEqual(["enabled"]);
      expect(given(await seriesFromChunks(log.chunks))).toEqual(readRobot());
    });
  },
);

describe.skipIf(!present(STATION))(
  `arctic station with a nominal 12 V bank, repository jaws/jaws (${SKIPPED} when absent)`,
  () => {
    it("GCNet_Summit_20120817.txt: hourly battery voltage under a head of 54 lines, no current, time in days of the year", async () => {
      const lines = readFileSync(STATION, "utf8").trimEnd().split("\n");
      const rows = lines.filter((line) => /^6 2012 /.test(line)).map((line) => line.trim().split(/\s+/));
      const { seconds, volts, amperes, tally } = await readAll(
        { path: STATION },
        {
          delimiter: "spaces",
          skipRows: 54,
          headerRowCount: 0,
          // The head gives each column a line of its own, counted from 1: 3 is the day of the year, 30 the battery.
          columns: { time: { column: 2, unit: "d" }, voltage: { column: 29, unit: "V" } },
        },
      );
      expect(tally.rows).toBe(24);
      expect(volts).toEqual(rows.map((row) => Number(row[29])));
      expect(volts[0]).toBe(14.04);
      expect(amperes.every((one) => Number.isNaN(one))).toBe(true);
      // Four decimals of a day are 8.64 s: an hour is met within half of it at either end.
      for (let i = 1; i < 24; i++) expect(Math.abs(seconds[i]! - seconds[i - 1]! - 3600)).toBeLessThan(8.65);
    });
  },
);
