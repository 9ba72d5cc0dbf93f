import { existsSync, readFileSync } from "node:fs";
import { type LogSeries, type RowCounts, seriesFromRows } from "crankworthy/logs";
import { isRefusal } from "crankworthy/numeric";

const DATASETS = "../shared/datasets";

/**
 * 12 V valve-regulated battery, nominal 17 Ah: telemetry of the code published with "Faster lead-acid battery simulations
 * from porous-electrode theory" (arXiv 1902.01771, 1902.01774), repository valentinsulzer/faster-lead-acid, BSD-3-Clause.
 * Published sign: positive = discharge. Local clock without a zone, read as if UTC: only differences are used.
 */
export const VRLA = `${DATASETS}/vrla-12v-17ah-discharge`;

/**
 * 12 V 18 Ah sealed AGM battery of a student competition robot: test log 2022-03-19 of the repository
 * orangelight/DSLOG-Reader, MIT licence. Published sign: positive = discharge; current reported about 0.1 s late.
 */
export const ROBOT = `${DATASETS}/agm-12v-18ah-robot-loads/agm12v18ah_robot_match_20220319.csv`;

/**
 * Automatic weather station in Greenland, 2012, nominal 12 V bank: `sample_data` of the repository jaws/jaws, Apache-2.0;
 * station data published openly (GC-Net).
 */
export const STATION = `${DATASETS}/station-12v-arctic/GCNet_Summit_20120817.txt`;

export const SKIPPED = "skipped: ../shared/datasets is not beside this repository";
export const present = (path: string): boolean => existsSync(path);

function table(path: string): string[][] {
  const lines = readFileSync(path, "utf8").trim().split("\n");
  return lines.slice(1).map((line) => line.split(","));
}

const number = (text: string | undefined): number | null => (text ? Number(text) : null);

export function vrlaRows(name: string): (number | null)[][] {
  return table(`${VRLA}/${name}`).map(([time, ...rest]) => [
    Date.parse(`${time!.replace(" ", "T")}Z`),
    ...rest.map(number),
  ]);
}

export function readVrla(name: string): { series: LogSeries; counts: RowCounts } {
  const made = seriesFromRows(
    vrlaRows(name),
    {
      time: { column: 0, unit: "ms" },
      voltage: { column: 1, unit: "V" },
      current: { column: 2, unit: "A", positive: "discharging" },
      temperature: { column: 3, unit: "degC" },
    },
    { sort: true },
  );
  if (isRefusal(made)) throw new Error(made.reason);
  return made;
}

export function readRobot(): { series: LogSeries; counts: RowCounts } {
  const made = seriesFromRows(
    table(ROBOT).map((row) => row.map(number)),
    {
      time: { column: 0, unit: "s" },
      voltage: { column: 1, unit: "V" },
      current: { column: 2, unit: "A", positive: "discharging" },
    },
  );
  if (isRefusal(made)) throw new Error(made.reason);
  return made;
}

/** Narrows a result to its value, or fails the test with the refusal. */
export function given<T extends object>(result: T): Exclude<T, { readonly refused: true }> {
  if (isRefusal(result)) throw new Error(`refused: ${JSON.stringify(result)}`);
  return result as Exclude<T, { readonly refused: true }>;
}
