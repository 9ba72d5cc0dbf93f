/**
 * A piece of a log: the same rows in every column, in the order of the file. A log of any length is a row of chunks;
 * one held in memory is a single chunk.
 */
export interface LogChunk {
  /** Number of the first row; data rows count from 1, headers and comments do not count. */
  readonly firstRow: number;
  /** Rows in this chunk; every column has this length. */
  readonly rows: number;
  /** Elapsed time, or seconds on the logger's own clock [s]; NaN where a row has none. */
  readonly seconds: Float64Array;
  /** At the posts [V]; NaN where not sampled. */
  readonly volts: Float64Array;
  /** Positive charges the battery, negative discharges it [A]; NaN where not sampled, everywhere without a current column. */
  readonly amperes: Float64Array;
  /** [°C]; NaN where not sampled. Missing without a temperature column. */
  readonly temperatureCelsius?: Float64Array;
  /** A second clock, seconds since 1970-01-01T00:00:00Z [s]; NaN where a row has none. Missing without such a column. */
  readonly clockSeconds?: Float64Array;
  /** The row number of each row, where rows were left out or moved and `firstRow` no longer tells. */
  readonly rowNumbers?: Float64Array;
}

/** The number of a row of a chunk in its file. */
export function rowNumber(chunk: LogChunk, index: number): number {
  return chunk.rowNumbers?.[index] ?? chunk.firstRow + index;
}
