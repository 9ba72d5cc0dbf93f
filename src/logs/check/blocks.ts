import { wrongArgument } from "../../numeric/index.js";
import { type LogChunk, rowNumber } from "../chunk.js";

/** Rows of a block: its columns fit a processor's second cache. */
export const BLOCK_ROWS = 4096;

/** @internal Rows that are checked at once; only the last block of a log is shorter than {@link BLOCK_ROWS}. */
export interface Block {
  /** Rows before this block. */
  readonly firstIndex: number;
  readonly rows: number;
  readonly seconds: Float64Array;
  readonly volts: Float64Array;
  readonly amperes: Float64Array;
  readonly temperatureCelsius: Float64Array | undefined;
  readonly clockSeconds: Float64Array | undefined;
  /** Number in the file of a row of this block. */
  readonly number: (i: number) => number;
}

/**
 * @internal Cuts chunks of any length into blocks of one length, so that what is found cannot depend on the chunks.
 * Whole blocks inside a chunk are views, the rest is copied.
 */
export function createBlocks(use: (block: Block) => void): { push(chunk: LogChunk): void; finish(): void } {
  const column = () => new Float64Array(BLOCK_ROWS);
  const held = { seconds: column(), volts: column(), amperes: column() };
  const [temperature, clock, numbers] = [column(), column(), column()];
  let [hasTemperature, hasClock, count, firstIndex] = [false, false, 0, 0];

  function hold(chunk: LogChunk, from: number, rows: number): void {
    const to = from + rows;
    held.seconds.set(chunk.seconds.subarray(from, to), count);
    held.volts.set(chunk.volts.subarray(from, to), count);
    held.amperes.set(chunk.amperes.subarray(from, to), count);
    hasTemperature = fill(temperature, chunk.temperatureCelsius, from, rows, hasTemperature);
    hasClock = fill(clock, chunk.clockSeconds, from, rows, hasClock);
    for (let i = 0; i < rows; i++) numbers[count + i] = rowNumber(chunk, from + i);
    count += rows;
    if (count === BLOCK_ROWS) flush();
  }
  function fill(to: Float64Array, from: Float64Array | undefined, start: number, rows: number, had: boolean) {
    if (from) to.set(from.subarray(start, start + rows), count);
    else to.fill(Number.NaN, count, count + rows);
    return had || from !== undefined;
  }
  function flush(): void {
    if (count === 0) return;
    const part = (one: Float64Array) => (count === BLOCK_ROWS ? one : one.subarray(0, count));
    use({
      firstIndex,
      rows: count,
      seconds: part(held.seconds),
      volts: part(held.volts),
      amperes: part(held.amperes),
      temperatureCelsius: hasTemperature ? part(temperature) : undefined,
      clockSeconds: hasClock ? part(clock) : undefined,
      number: (i) => numbers[i]!,
    });
    firstIndex += count;
    [hasTemperature, hasClock, count] = [false, false, 0];
  }
  return {
    push(chunk) {
      requireColumns(chunk);
      let from = 0;
      while (from < chunk.rows) {
        const left = chunk.rows - from;
        if (count || left < BLOCK_ROWS) {
          const rows = Math.min(left, BLOCK_ROWS - count);
          hold(chunk, from, rows);
          from += rows;
          continue;
        }
        const start = from;
        const part = (one: Float64Array) => one.subarray(start, start + BLOCK_ROWS);
        use({
          firstIndex,
          rows: BLOCK_ROWS,
          seconds: part(chunk.seconds),
          volts: part(chunk.volts),
          amperes: part(chunk.amperes),
          temperatureCelsius: chunk.temperatureCelsius && part(chunk.temperatureCelsius),
          clockSeconds: chunk.clockSeconds && part(chunk.clockSeconds),
          number: (i) => rowNumber(chunk, start + i),
        });
        firstIndex += BLOCK_ROWS;
        from += BLOCK_ROWS;
      }
    },
    finish: flush,
  };
}

function requireColumns(chunk: LogChunk): void {
  const { rows } = chunk;
  if (!(Number.isInteger(rows) && rows >= 0)) wrongArgument("chunk.rows", rows, "a whole number, 0 or more");
  const columns = [
    "seconds",
    "volts",
    "amperes",
    "temperatureCelsius",
    "clockSeconds",
    "rowNumbers",
  ] as const;
  for (const name of columns) {
    const column = chunk[name];
    // A reader may hand over longer buffers than it filled; never shorter ones.
    if (column && column.length < rows)
      wrongArgument(`chunk.${name}`, `${column.length} values`, `${rows}, one per row`);
  }
}
