import { type Refusal, refuse, requireKey, wrongArgument } from "../numeric/index.js";

/** A logger's time series, one value per row in every column. */
export interface LogSeries {
  /** Time of each row on the logger's own clock [s], not decreasing. */
  readonly seconds: Float64Array;
  /** At the posts [V]. */
  readonly volts: Float64Array;
  /** Positive charges the battery, negative discharges it [A]. */
  readonly amperes: Float64Array;
  /** NaN where a row has no temperature [°C]. */
  readonly temperatureCelsius?: Float64Array;
}

/** A row of a table: by position or by column name. Anything but a finite number counts as missing. */
export type LogRow =
  | readonly (number | null | undefined)[]
  | { readonly [column: string]: number | null | undefined };

/** Which column holds what, in which unit and with which sign. Nothing of it is guessed. */
export interface LogColumns {
  readonly time: { readonly column: number | string; readonly unit: "ms" | "s" | "min" | "h" };
  readonly voltage: { readonly column: number | string; readonly unit: "mV" | "V" };
  readonly current: {
    readonly column: number | string;
    readonly unit: "mA" | "A";
    /** What a positive number in the file means. */
    readonly positive: "charging" | "discharging";
  };
  readonly temperature?: { readonly column: number | string; readonly unit: "degC" | "degF" | "K" };
}

/** What became of the rows. */
export interface RowCounts {
  readonly rows: number;
  readonly kept: number;
  /** Left out for lack of time, voltage or current. A row that lacks several counts in each. */
  readonly leftOut: number;
  readonly withoutTime: number;
  readonly withoutVoltage: number;
  readonly withoutCurrent: number;
  /** Kept rows whose time lies before that of a kept row above them. */
  readonly outOfOrder: number;
  /** Kept rows at the very time of another kept row. */
  readonly sameTime: number;
}

const outOfOrderRefusal = () => refuse("out-of-order", "Rows run back in time.", "Sorted rows.");

const TIME = { ms: 0.001, s: 1, min: 60, h: 3600 } as const;

/**
 * Makes a series from the rows of a table and reports what it left out.
 *
 * @param rows the rows, numbers already parsed
 * @param columns column, unit and sign of each quantity, all required
 * @param options `sort: true` puts rows in order of time (rows of the same time keep theirs)
 * @returns the series in s, V, A (positive = charging), °C, and the counts
 *
 * Refuses `out-of-order` for rows that run back in time unless sorting is asked for, `no-rows` when none is complete.
 * @example
 * ```ts
 * import { seriesFromRows } from "crankworthy/logs";
 * const columns = {
 *   time: { column: 0, unit: "s" },
 *   voltage: { column: 1, unit: "V" },
 *   current: { column: 2, unit: "A", positive: "discharging" },
 * } as const;
 * const made = seriesFromRows([[0, 12.6, 0], [60, null, 3], [120, 12.4, 3]], columns);
 * made.counts.withoutVoltage; // => 1
 * made.series.amperes[1]; // => -3
 * ```
 */
export function seriesFromRows(
  rows: readonly LogRow[],
  columns: LogColumns,
  options?: { readonly sort?: boolean },
):
  | { readonly series: LogSeries; readonly counts: RowCounts }
  | (Refusal<"out-of-order" | "no-rows"> & { readonly counts: RowCounts }) {
  const { time, voltage, current, temperature } = columns;
  requireKey("columns.time.unit", time.unit, TIME);
  requireKey("columns.voltage.unit", voltage.unit, { mV: 0, V: 0 });
  requireKey("columns.current.unit", current.unit, { mA: 0, A: 0 });
  requireKey("columns.current.positive", current.positive, { charging: 0, discharging: 0 });
  if (temperature) requireKey("columns.temperature.unit", temperature.unit, { degC: 0, degF: 0, K: 0 });
  const toVolts = voltage.unit === "V" ? 1 : 0.001;
  const toAmperes = (current.unit === "A" ? 1 : 0.001) * (current.positive === "charging" ? 1 : -1);
  const kept: number[][] = [];
  let [withoutTime, withoutVoltage, withoutCurrent, outOfOrder, sameTime] = [0, 0, 0, 0, 0];
  let latest = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    const seconds = read(row, time.column) * TIME[time.unit];
    const volts = read(row, voltage.column) * toVolts;
    const amperes = read(row, current.column) * toAmperes;
    if (Number.isNaN(seconds)) withoutTime++;
    if (Number.isNaN(volts)) withoutVoltage++;
    if (Number.isNaN(amperes)) withoutCurrent++;
    if (Number.isNaN(seconds + volts + amperes)) continue;
    if (seconds < latest) outOfOrder++;
    else latest = seconds;
    kept.push([
      seconds,
      volts,
      amperes,
      temperature ? celsius(read(row, temperature.column), temperature.unit) : 0,
    ]);
  }
  const ordered = options?.sort && outOfOrder ? kept.sort((a, b) => a[0]! - b[0]!) : kept;
  for (let i = 1; i < ordered.length; i++) if (ordered[i]![0] === ordered[i - 1]![0]) sameTime++;
  const counts: RowCounts = {
    rows: rows.length,
    kept: kept.length,
    leftOut: rows.length - kept.length,
    withoutTime,
    withoutVoltage,
    withoutCurrent,
    outOfOrder,
    sameTime,
  };
  if (kept.length === 0)
    return { ...refuse("no-rows", "No row has time, voltage and current.", "Complete rows."), counts };
  if (outOfOrder && !options?.sort) return { ...outOfOrderRefusal(), counts };
  const column = (i: number) => Float64Array.from(ordered, (row) => row[i]!);
  const series = { seconds: column(0), volts: column(1), amperes: column(2) };
  return { series: temperature ? { ...series, temperatureCelsius: column(3) } : series, counts };
}

function read(row: LogRow, column: number | string): number {
  const value = (row as Readonly<Record<number | string, number | null | undefined>>)[column];
  return typeof value === "number" && Number.isFinite(value) ? value : Number.NaN;
}

function celsius(value: number, unit: "degC" | "degF" | "K"): number {
  if (unit === "degC") return value;
  return unit === "K" ? value - 273.15 : (value - 32) / 1.8;
}

/** @internal Throws for columns of different length or with numbers that are none; refuses rows that run back in time. */
export function refuseDisorder({ seconds, volts, amperes }: LogSeries): Refusal<"out-of-order"> | undefined {
  const rows = seconds.length;
  if (volts.length !== rows || amperes.length !== rows)
    throw new RangeError(
      `series: received ${rows}, ${volts.length}, ${amperes.length} rows, expected equal lengths`,
    );
  // One pass over the sums: NaN and Infinity anywhere show in them. Nothing a logger writes comes near 1e12.
  for (let i = 0; i < rows; i++) {
    const row = Math.abs(seconds[i]!) + Math.abs(volts[i]!) + Math.abs(amperes[i]!);
    if (!(row <= 1e13))
      wrongArgument(`series, row ${i}`, `${seconds[i]}, ${volts[i]}, ${amperes[i]}`, "finite numbers");
  }
  for (let i = 1; i < rows; i++) if (seconds[i]! < seconds[i - 1]!) return outOfOrderRefusal();
  return undefined;
}
