import type { LogChunk } from "../chunk.js";
import { pickRows } from "./pick-rows.js";

/**
 * Leaves out the rows of a chunk that lack time, voltage or current.
 *
 * Scope: change-driven logs have rows with a temperature alone. The row numbers of the file are kept. A log without a
 * current column has no complete row.
 *
 * @param chunk rows as read
 * @returns the very same chunk when every row is complete, else a new one, perhaps without rows
 * @example
 * ```ts
 * import { completeRows } from "crankworthy/logs";
 * const chunk = {
 *   firstRow: 1,
 *   rows: 3,
 *   seconds: Float64Array.of(0, 60, 120),
 *   volts: Float64Array.of(12.6, NaN, 12.4),
 *   amperes: Float64Array.of(0, NaN, -3),
 * };
 * [...completeRows(chunk).rowNumbers]; // => [1, 3]
 * ```
 */
export function completeRows(chunk: LogChunk): LogChunk {
  const { rows, seconds, volts, amperes } = chunk;
  // A sum is NaN when one of its parts is: one look a row.
  let complete = 0;
  for (let i = 0; i < rows; i++) if (!Number.isNaN(seconds[i]! + volts[i]! + amperes[i]!)) complete++;
  if (complete === rows) return chunk;
  const kept = new Uint32Array(complete);
  for (let i = 0, k = 0; i < rows; i++)
    if (!Number.isNaN(seconds[i]! + volts[i]! + amperes[i]!)) kept[k++] = i;
  return pickRows(chunk, kept);
}
