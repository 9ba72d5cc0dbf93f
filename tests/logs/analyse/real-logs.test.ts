import { evaluate } from "crankworthy";
import { analyseLog, type LogAnalysis, type LogFormat, recordFromLog } from "crankworthy/logs";
import { describe, expect, it } from "vitest";
import { given, present, ROBOT, SKIPPED, STATION, VRLA } from "../datasets.js";

const vrla: LogFormat = {
  columns: {
    time: { column: "time", unit: "local-clock" },
    voltage: { column: "voltage", unit: "V" },
    current: { column: "current", unit: "A", positive: "discharging" },
    temperature: { column: "temperature", unit: "degC" },
  },
};
const analyse = (name: string) =>
  analyseLog({ path: `${VRLA}/${name}` }, vrla, {
    rule: { ratedAmpereHours: 17 },
    reorderWithinSeconds: 1,
  });
const kinds = ({ segments }: LogAnalysis) => segments.map(({ kind }) => kind);

describe.skipIf(!present(VRLA))(
  `logs of one 12 V 17 Ah valve-regulated battery (valentinsulzer/faster-lead-acid)${present(VRLA) ? "" : `: ${SKIPPED}`}`,
  () => {
    // Published: current [A], hours, ampere-hours and the voltage at the end of the recorded rest, recomputed from the files.
    it.each([
      ["discharge_A_3.0A.csv", 3.043, 6.486, 19.74, 11.445],
      ["discharge_A_2.5A.csv", 2.54, 7.811, 19.84, 11.383],
      ["discharge_A_1.5A.csv", 1.536, 12.554, 19.28, 11.232],
      ["discharge_A_1.0A_first.csv", 1.033, 18.357, 18.97, 11.097],
      ["discharge_A_0.5A.csv", 0.531, 34.827, 18.46, 10.981],
    ])(
      "%s: one discharge with its current, time and charge, then a rest",
      async (name, amperes, hours, charge, volts) => {
        const log = await analyse(name);
        expect(kinds(log)).toEqual(["rest", "discharge", "rest"]);
        const { totals, fromSeconds, toSeconds } = log.segments[1]!;
        expect(Math.abs(-totals.meanAmperes / amperes - 1)).toBeLessThan(0.005);
        expect(Math.abs((toSeconds - fromSeconds) / 3600 / hours - 1)).toBeLessThan(0.005);
        expect(Math.abs(totals.chargeOutAmpereHours / charge - 1)).toBeLessThan(0.005);
        expect(totals.chargeInAmpereHours).toBe(0);
        const rest = log.measurements.findLast(({ quantity }) => quantity === "last-rest-voltage");
        if (rest?.quantity !== "last-rest-voltage") throw new Error("no rest");
        expect(rest.result.volts.toFixed(3)).toBe(volts.toFixed(3));
        expect(rest.result.before).toBe("discharge");
        // Temperature stands in rows of its own; the room had 18 to 26 °C.
        expect(rest.temperatureCelsius).toBeGreaterThan(18);
        expect(rest.temperatureCelsius).toBeLessThan(30);
      },
    );

    it("the record of such a log is evaluated, and every field says which rows it comes from", async () => {
      const log = await analyse("discharge_A_3.0A.csv");
      const { record, origin } = recordFromLog(log, {
        chemistry: "agm",
        rating: { standard: "sae-j537", amperes: 200 },
      });
      expect(record.conditions).toMatchObject({ lastEvent: "discharge" });
      expect(record.measurements.restVolts).toBeCloseTo(11.445, 3);
      for (const path of Object.keys(origin)) {
        const { firstRow, lastRow } = origin[path]!;
        expect(firstRow).toBeGreaterThan(0);
        expect(lastRow).toBeGreaterThanOrEqual(firstRow);
      }
      const fields = Object.entries(record.conditions ?? {}).map(([field]) => `conditions.${field}`);
      expect(Object.keys(origin)).toEqual(expect.arrayContaining(fields));
      expect(evaluate(record).verdict.action).toBe("charge-then-repeat");
    });

    it("ten days of cycles: eight discharges, each with a recharge at constant current and then at constant voltage", async () => {
      const log = await analyse("cycles_A_10days_with_charging.csv");
      expect(log.rowsReordered).toBeGreaterThan(0);
      expect(log.stoppedAtRow).toBeUndefined();
      const long = log.segments.filter(({ fromSeconds, toSeconds }) => toSeconds - fromSeconds > 3 * 3600);
      const order = long.map(({ kind }) => kind).filter((kind) => kind !== "rest");
      const runs = order.filter((kind) => kind === "discharge").length;
      expect(runs).toBeGreaterThanOrEqual(8);
      for (const [i, kind] of order.entries())
        if (kind === "charge-constant-current") {
          expect(order[i - 1]).toBe("discharge");
          expect(order[i + 1]).toBe("charge-constant-voltage");
        }
      // Taper at 14.36 to 14.43 V, as the source says; hours of float at 13.6 V may follow.
      const tapers = long.filter((_one, i) => long[i - 1]?.kind === "charge-constant-current");
      expect(tapers.length).toBeGreaterThanOrEqual(6);
      for (const { kind, totals } of tapers) {
        expect(kind).toBe("charge-constant-voltage");
        expect(totals.meanVolts).toBeGreaterThan(14.35);
        expect(totals.meanVolts).toBeLessThan(14.45);
      }
      // The last discharge is not recharged any more, so more went out than in.
      expect(given(log.chargeFactor).value).toBeLessThan(1);
    });

    it("without leave to reorder, nothing behind the first late row is measured, and it says which row", async () => {
      const log = await analyseLog({ path: `${VRLA}/cycles_A_10days_with_charging.csv` }, vrla);
      expect(log.stoppedAtRow).toBeGreaterThan(1);
      expect(log.charge).toMatchObject({ refused: true, code: "out-of-order" });
      expect(log.segments.at(-1)!.lastRow).toBeLessThan(log.stoppedAtRow!);
    });
  },
);

const robot: LogFormat = {
  columns: {
    time: { column: "t_s", unit: "s" },
    voltage: { column: "voltage_V", unit: "V" },
    current: { column: "current_A", unit: "A", positive: "discharging" },
  },
};

describe.skipIf(!present(ROBOT))(
  `log of a robot's 12 V 18 Ah AGM battery (orangelight/DSLOG-Reader)${present(ROBOT) ? "" : `: ${SKIPPED}`}`,
  () => {
    it("motor starts and load steps, no charge; 12.43 V and 22.4 mΩ once the lag is taken out", async () => {
      const log = await analyseLog({ path: ROBOT }, robot, { rule: { ratedAmpereHours: 18 } });
      expect(new Set(kinds(log))).toEqual(new Set(["discharge", "crank", "load-step"]));
      const { line, ohmic } = given(log.resistance);
      const { electromotiveVolts, resistanceOhms, lagSeconds } = given(line);
      expect(lagSeconds).toBeCloseTo(0.1, 2);
      expect(Math.abs(electromotiveVolts.value / 12.43 - 1)).toBeLessThan(0.01);
      expect(Math.abs(resistanceOhms.value / 0.0224 - 1)).toBeLessThan(0.01);
      // Steps were paired before the lag was known: no value rather than a wrong one.
      expect(ohmic).toMatchObject({ refused: true, code: "current-lags" });
      expect(Math.abs(given(log.charge).outAmpereHours.value / 1.96 - 1)).toBeLessThan(0.01);
      // 50 rows a second do not catch a minimum.
      const crank = log.measurements.find(({ quantity }) => quantity === "crank");
      expect(crank!.result).toMatchObject({ refused: true, code: "sampling-too-slow" });
    });
  },
);

describe.skipIf(!present(STATION))(
  `log of an arctic station, voltage only (jaws/jaws)${present(STATION) ? "" : `: ${SKIPPED}`}`,
  () => {
    it("has neither charge nor resistance, and says why; a bank far above 15 V is no rest", async () => {
      const log = await analyseLog({ path: STATION }, {
        delimiter: "spaces",
        headerRowCount: 0,
        skipRows: 54,
        columns: { time: { column: 2, unit: "d" }, voltage: { column: 29, unit: "V" } },
      } as LogFormat);
      expect(log.quality.rows).toBe(24);
      expect(log.charge).toMatchObject({ refused: true, code: "no-current" });
      expect(log.resistance).toMatchObject({ refused: true, code: "no-current" });
      expect(kinds(log)).not.toContain("discharge");
    });
  },
);
