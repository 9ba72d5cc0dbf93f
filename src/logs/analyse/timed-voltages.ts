import type { LogChunk } from "../chunk.js";
import { pickRows } from "../read/pick-rows.js";

/** The rows that have time and voltage: all that a log without current can offer. */
export function timedVoltages(chunk: LogChunk): LogChunk {
  const { rows, seconds, volts } = chunk;
  const kept = new Uint32Array(rows);
  let count = 0;
  for (let i = 0; i < rows; i++) if (seconds[i]! + volts[i]! - volts[i]! === seconds[i]!) kept[count++] = i;
  return count === rows ? chunk : pickRows(chunk, kept.subarray(0, count));
}
