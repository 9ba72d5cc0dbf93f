import { type Refusal, refuse, requireFinite, wrongArgument } from "../numeric/index.js";
import type { LogChunk } from "./chunk.js";
import { convert, type LogColumns, type LogQuantity, requireColumns, scaleOf } from "./read/columns.js";
import { completeRows } from "./read/complete-rows.js";

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
  /** By how much the latest of them comes too late [s]; 0 without any. */
  readonly mostSecondsLate: number;
  /** Kept rows at the very time of another kept row. */
  readonly sameTime: number;
}

const outOfOrderRefusal = () => refuse("out-of-order", "Rows run back in time.", "Sorted rows.");

/** What to do with rows that run back in time. */
export interface SeriesOptions {
  /** `true` puts rows in order of time; rows of the same time keep theirs. */
  readonly sort?: boolean;
  /** The same for rows at most this late [s] (≥ 0); a later one is refused: the clock was set back. */
  readonly reorderWithinSeconds?: number;
}

/** A series with what became of the rows, or why there is none. */
export type SeriesResult =
  | { readonly series: LogSeries; readonly counts: RowCounts }
  | (Refusal<"out-of-order" | "no-rows"> & { readonly counts: RowCounts });

/**
 * Makes a series from the rows of a table and reports what it left out.
 *
 * @param rows the rows, numbers already parsed
 * @param columns column, unit and sign of each quantity; time in numbers, not as a date
 * @param options whether rows may be put in order of time
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
  options?: SeriesOptions,
): SeriesResult {
  requireColumns(columns, false);
  const read = (quantity: LogQuantity): Float64Array => {
    const one = columns[quantity];
    const scale = scaleOf(columns, quantity);
    if (!one || !scale) return new Float64Array(rows.length).fill(Number.NaN);
    return Float64Array.from(rows, (row) => convert(cell(row, one.column), scale));
  };
  const builder = createSeriesBuilder(options);
  builder.push({
    firstRow: 1,
    rows: rows.length,
    seconds: read("time"),
    volts: read("voltage"),
    amperes: read("current"),
    ...(columns.temperature ? { temperatureCelsius: read("temperature") } : {}),
  });
  return builder.finish();
}

/**
 * Gathers the chunks of a log into one series in memory and reports what it left out.
 *
 * Scope: 24 to 32 bytes a row, three times that while it gathers; for logs of any length use the streaming functions. A log without a current column has no
 * complete row.
 *
 * @param chunks of `openLog`, or any others in the order of the file
 * @param options whether rows may be put in order of time
 * @returns the series of the complete rows, and the counts
 *
 * Refuses `out-of-order` for rows that run back in time, or further than allowed, and `no-rows` when none is complete.
 * @throws what the chunks throw
 * @example
 * ```ts
 * import { openLog, seriesFromChunks } from "crankworthy/logs";
 * const log = await openLog("Test Time / s,Voltage / V,Current / A\n0,12.6,0\n1,,\n2,12.4,-3\n", "bdf");
 * const made = await seriesFromChunks(log.chunks);
 * made.counts.leftOut; // => 1
 * [...made.series.volts]; // => [12.6, 12.4]
 * ```
 */
export async function seriesFromChunks(
  chunks: AsyncIterable<LogChunk> | Iterable<LogChunk>,
  options?: SeriesOptions,
): Promise<SeriesResult> {
  const builder = createSeriesBuilder(options);
  for await (const chunk of chunks) builder.push(chunk);
  return builder.finish();
}

function createSeriesBuilder({ sort, reorderWithinSeconds }: SeriesOptions = {}) {
  if (reorderWithinSeconds !== undefined)
    requireFinite("options.reorderWithinSeconds", reorderWithinSeconds, 0);
  const mostLate = sort ? Number.POSITIVE_INFINITY : (reorderWithinSeconds ?? 0);
  const parts: LogChunk[] = [];
  let [rows, kept, withoutTime, withoutVoltage, withoutCurrent] = [0, 0, 0, 0, 0];
  let [outOfOrder, mostSecondsLate, latest] = [0, 0, Number.NEGATIVE_INFINITY];
  let hasTemperature = false;
  return {
    push: (chunk: LogChunk): void => {
      rows += chunk.rows;
      withoutTime += countMissing(chunk.seconds);
      withoutVoltage += countMissing(chunk.volts);
      withoutCurrent += countMissing(chunk.amperes);
      if (chunk.temperatureCelsius) hasTemperature = true;
      const complete = completeRows(chunk);
      kept += complete.rows;
      parts.push(complete);
      for (const seconds of complete.seconds) {
        if (seconds >= latest) latest = seconds;
        else {
          outOfOrder++;
          mostSecondsLate = Math.max(mostSecondsLate, latest - seconds);
        }
      }
    },
    finish: (): SeriesResult => {
      const seconds = joined(parts, kept, (chunk) => chunk.seconds);
      const order = outOfOrder > 0 ? orderOf(seconds) : undefined;
      const column = (of: (chunk: LogChunk) => Float64Array | undefined): Float64Array => {
        const all = joined(parts, kept, of);
        return order ? Float64Array.from(order, (index) => all[index]!) : all;
      };
      const ordered = column((chunk) => chunk.seconds);
      let sameTime = 0;
      for (let i = 1; i < kept; i++) if (ordered[i] === ordered[i - 1]) sameTime++;
      const missing = { leftOut: rows - kept, withoutTime, withoutVoltage, withoutCurrent };
      const counts: RowCounts = { rows, kept, ...missing, outOfOrder, mostSecondsLate, sameTime };
      if (kept === 0)
        return { ...refuse("no-rows", "No row has time, voltage and current.", "Complete rows."), counts };
      if (mostSecondsLate > mostLate) return { ...outOfOrderRefusal(), counts };
      const series = {
        seconds: ordered,
        volts: column((chunk) => chunk.volts),
        amperes: column((chunk) => chunk.amperes),
      };
      if (!hasTemperature) return { series, counts };
      return {
        series: { ...series, temperatureCelsius: column((chunk) => chunk.temperatureCelsius) },
        counts,
      };
    },
  };
}

function cell(row: LogRow, column: number | string): number {
  const value = (row as Readonly<Record<number | string, number | null | undefined>>)[column];
  return typeof value === "number" && Number.isFinite(value) ? value : Number.NaN;
}

function countMissing(column: Float64Array): number {
  let missing = 0;
  for (const value of column) if (Number.isNaN(value)) missing++;
  return missing;
}

function joined(
  parts: readonly LogChunk[],
  rows: number,
  column: (chunk: LogChunk) => Float64Array | undefined,
): Float64Array {
  const all = new Float64Array(rows).fill(Number.NaN);
  let at = 0;
  for (const chunk of parts) {
    const values = column(chunk);
    if (values) all.set(values, at);
    at += chunk.rows;
  }
  return all;
}

function orderOf(seconds: Float64Array): Uint32Array {
  return Uint32Array.from(seconds, (_, i) => i).sort((a, b) => seconds[a]! - seconds[b]! || a - b);
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
