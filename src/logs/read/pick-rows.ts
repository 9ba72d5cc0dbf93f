import { type LogChunk, rowNumber } from "../chunk.js";

/** @internal A chunk of the rows at `indices` of another one, in that order, with their row numbers in the file. */
export function pickRows(chunk: LogChunk, indices: Uint32Array): LogChunk {
  const { seconds, volts, amperes, temperatureCelsius, clockSeconds } = chunk;
  const rows = indices.length;
  const pick = (column: Float64Array): Float64Array => {
    const picked = new Float64Array(rows);
    for (let k = 0; k < rows; k++) picked[k] = column[indices[k]!]!;
    return picked;
  };
  const rowNumbers = new Float64Array(rows);
  for (let k = 0; k < rows; k++) rowNumbers[k] = rowNumber(chunk, indices[k]!);
  return {
    firstRow: rowNumbers[0] ?? chunk.firstRow,
    rows,
    seconds: pick(seconds),
    volts: pick(volts),
    amperes: pick(amperes),
    ...(temperatureCelsius ? { temperatureCelsius: pick(temperatureCelsius) } : {}),
    ...(clockSeconds ? { clockSeconds: pick(clockSeconds) } : {}),
    rowNumbers,
  };
}

/** @internal Two chunks of the same columns as one. */
export function joinChunks(first: LogChunk, second: LogChunk): LogChunk {
  const rows = first.rows + second.rows;
  const join = (a: Float64Array, b: Float64Array): Float64Array => {
    const joined = new Float64Array(rows);
    joined.set(a.subarray(0, first.rows));
    joined.set(b.subarray(0, second.rows), first.rows);
    return joined;
  };
  // A column that only one of them has is not sampled in the other.
  const optional = (a: Float64Array | undefined, b: Float64Array | undefined): Float64Array | undefined =>
    a || b ? join(a ?? nothing(first.rows), b ?? nothing(second.rows)) : undefined;
  const temperatureCelsius = optional(first.temperatureCelsius, second.temperatureCelsius);
  const clockSeconds = optional(first.clockSeconds, second.clockSeconds);
  return {
    firstRow: first.firstRow,
    rows,
    seconds: join(first.seconds, second.seconds),
    volts: join(first.volts, second.volts),
    amperes: join(first.amperes, second.amperes),
    ...(temperatureCelsius ? { temperatureCelsius } : {}),
    ...(clockSeconds ? { clockSeconds } : {}),
    rowNumbers: join(numbers(first), numbers(second)),
  };
}

const nothing = (rows: number): Float64Array => new Float64Array(rows).fill(Number.NaN);
const numbers = (chunk: LogChunk): Float64Array =>
  chunk.rowNumbers ?? Float64Array.from({ length: chunk.rows }, (_, i) => chunk.firstRow + i);
