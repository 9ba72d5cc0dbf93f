import { readFileSync } from "node:fs";
import { checkLog, type LogChunk, type LogQuality } from "crankworthy/logs";
import { describe, expect, it } from "vitest";
import { present, ROBOT, SKIPPED, VRLA, vrlaRows } from "../datasets.js";

const ARCTIC = "../shared/datasets/station-12v-arctic/GCNet_Summit_20120817.txt";

/** Files with the sign their source describes, positive = discharging, unless read wrongly on purpose. */
function chunk(rows: readonly (readonly (number | null)[])[], factor: number, sign: 1 | -1): LogChunk {
  const column = (at: number, by = 1) =>
    Float64Array.from(rows, (row) => (row[at] === null || row[at] === undefined ? Number.NaN : row[at] * by));
  return {
    firstRow: 1,
    rows: rows.length,
    seconds: column(0, factor),
    volts: column(1),
    amperes: column(2, sign),
    temperatureCelsius: column(3),
  };
}
const vrla = (name: string, sign: 1 | -1 = -1) => chunk(vrlaRows(name), 0.001, sign);
function robot(sign: 1 | -1 = -1): LogChunk {
  const rows = readFileSync(ROBOT, "utf8").trim().split("\n").slice(1);
  return chunk(
    rows.map((row) =>
      row
        .split(",")
        .slice(0, 3)
        .map((cell) => (cell ? Number(cell) : null)),
    ),
    1,
    sign,
  );
}
function arctic(): LogChunk {
  const rows = readFileSync(ARCTIC, "utf8")
    .split("\n")
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length > 40);
  return chunk(
    rows.map((row) => [row[2]! * 86_400, row[29]!, null, row[6]!]),
    1,
    1,
  );
}

/** "code: ranges, rows", one per defect and channel; errors are marked. */
const summary = ({ totals }: LogQuality) =>
  totals.map(({ code, severity, ranges, rows }) => `${severity} ${code}: ${ranges}, ${rows} rows`);

const IDLE = (rows: number) => `note idle-current: 1, ${rows} rows`;
const DISORDER = (rows: number) => `warning time-out-of-order: ${rows}, ${rows} rows`;
// All that is found in the files, none of it an error. The gaps are minutes that the file does not hold: around them the
// logger writes once a minute with the charger on, and time goes on in a new grid behind them.
const TABLE: readonly (readonly [file: string, expected: readonly string[]])[] = [
  ["discharge_A_3.0A.csv", [DISORDER(1), IDLE(22)]],
  ["discharge_A_2.5A.csv", [DISORDER(2), IDLE(22)]],
  ["discharge_A_1.5A.csv", [IDLE(23)]],
  ["discharge_A_1.0A_first.csv", [DISORDER(7), IDLE(22)]],
  ["discharge_A_0.5A.csv", [DISORDER(1), IDLE(22)]],
  ["cycles_A_10days_with_charging.csv", [DISORDER(32), "warning gap: 10, 20 rows", IDLE(215)]],
];
const WHAT = "12 V 17 Ah VRLA telemetry, repository valentinsulzer/faster-lead-acid";

describe.skipIf(!present(VRLA))(`${WHAT} (${SKIPPED} when absent)`, () => {
  it.each(TABLE)("%s: %j", (file, expected) => {
    expect(summary(checkLog([vrla(file)]))).toEqual(expected);
  });

  it.each(TABLE)("%s read with the wrong sign: the same and the sign", (file, expected) => {
    const wrong = summary(checkLog([vrla(file, 1)]));
    expect(wrong.filter((one) => !one.includes("current-sign"))).toEqual(expected);
    expect(wrong.filter((one) => one.startsWith("error current-sign"))).toHaveLength(1);
  });

  it("cycles_A_10days_with_charging.csv: the rows out of order are those of a plain loop", () => {
    const file = "cycles_A_10days_with_charging.csv";
    const rows = vrlaRows(file);
    const out: number[] = [];
    let [latest, back] = [Number.NEGATIVE_INFINITY, 0];
    for (const [i, row] of rows.entries()) {
      if (row[0]! < latest) {
        out.push(i + 1);
        back = Math.max(back, latest - row[0]!);
      } else latest = row[0]!;
    }
    expect(out).toHaveLength(32);
    const quality = checkLog([vrla(file)]);
    const disorder = quality.defects.filter((one) => one.code === "time-out-of-order");
    expect(disorder.map((one) => one.firstRow)).toEqual(out);
    expect(disorder.every((one) => one.firstRow === one.lastRow)).toBe(true);
    // The description says 0.6 s: that is among rows with a voltage. A row with a temperature alone is 0.8 s back.
    const total = quality.totals.find((one) => one.code === "time-out-of-order")!;
    expect(total.greatest).toBeCloseTo(back / 1000, 6);
    expect(total.greatest).toBeCloseTo(0.8, 6);
    const electrical = vrlaRows(file).filter((row) => row[1] !== null);
    const one = checkLog([chunk(electrical, 0.001, -1)]).totals[0]!;
    expect(one).toMatchObject({ code: "time-out-of-order", rows: 10 });
    expect(one.greatest).toBeCloseTo(0.6, 6);
    expect(quality.missing).toMatchObject({ volts: 495, amperes: 495, temperatureCelsius: 11_739 });
    expect(quality.completeRows).toBe(12_726);
    expect(quality.sampling).toMatchObject({ kind: "change-driven", slowestRateSeconds: 600 });
  });

  it("the idle reading flips between 6, 10 and 32 mA, each in steps of 1.4 mA", () => {
    for (const file of ["discharge_A_3.0A.csv", "cycles_A_10days_with_charging.csv"]) {
      const { defects } = checkLog([vrla(file)]);
      const { values } = defects.find((one) => one.code === "idle-current")!;
      expect(values.differentReadings).toBeGreaterThan(3);
      expect(Math.abs(values.mostAmperes!)).toBeLessThan(0.011);
      expect(values.commonestAmperes).toBeGreaterThan(-0.011);
      expect(values.leastAmperes).toBeLessThan(-0.03);
    }
  });

  it("answers about capacity and rest, not about a crank or a load step", () => {
    const questions = ["capacity", "rest", "crank", "load-step", "self-discharge"] as const;
    const { defects } = checkLog([vrla("discharge_A_2.5A.csv")], { questions });
    const slow = defects.filter((one) => one.code === "sampling-too-slow").map((one) => one.question);
    expect(slow).toEqual(["crank", "load-step"]);
  });
});

describe.skipIf(!present(ROBOT))(
  `robot log 2022-03-19, repository orangelight/DSLOG-Reader (${SKIPPED} when absent)`,
  () => {
    it("has a late current and nothing else", () => {
      const quality = checkLog([robot()]);
      expect(summary(quality)).toEqual(["warning current-lag: 1, 13430 rows"]);
      expect(quality).toMatchObject({
        rows: 13_430,
        completeRows: 12_349,
        missing: { volts: 1081, amperes: 1081 },
      });
      expect(quality.sampling).toMatchObject({ kind: "regular" });
      expect(quality.sampling!.medianSeconds).toBeCloseTo(0.02, 9);
      const { lagSeconds, standardUncertainty } = quality.defects[0]!.values;
      expect(Math.abs(lagSeconds! - 0.1)).toBeLessThan(standardUncertainty!);
    });

    it("read with the wrong sign, has the wrong sign", () => {
      expect(summary(checkLog([robot(1)]))).toEqual([
        "error current-sign: 1, 12349 rows",
        "warning current-lag: 1, 13430 rows",
      ]);
    });

    it("with the current clipped at 150 A, is found clipped at its first peaks", () => {
      const one = robot();
      const clipped = checkLog([{ ...one, amperes: one.amperes.map((i) => Math.max(-150, i)) }]);
      expect(summary(clipped).some((code) => code.startsWith("warning clipping"))).toBe(true);
    });

    it("is fast enough for load steps, not for a crank", () => {
      const { defects } = checkLog([robot()], { questions: ["load-step", "crank"] });
      expect(defects.at(-1)).toMatchObject({ code: "sampling-too-slow", question: "crank" });
      expect(defects).toHaveLength(2);
    });
  },
);

describe.skipIf(!present(ARCTIC))(
  `arctic station GCNet_Summit_20120817.txt, repository jaws/jaws (${SKIPPED} when absent)`,
  () => {
    it("is clean: no current column, up to 15.1 V in the cold, one row an hour", () => {
      const quality = checkLog([arctic()]);
      expect(summary(quality)).toEqual([]);
      expect(quality).toMatchObject({ rows: 24, completeRows: 0, missing: { amperes: 24 } });
      expect(quality).not.toHaveProperty("lag");
    });
  },
);
