import type { LogChunk } from "../chunk.js";
import { rowNumber } from "../chunk.js";
import { pickRows } from "../read/pick-rows.js";
import { reorderRows } from "../read/reorder-rows.js";

/** Rows in order of time, as far as the log allows. */
export interface RowOrder {
  push(chunk: LogChunk): readonly LogChunk[];
  finish(): readonly LogChunk[];
  moved(): number;
  /** The first row that came later than allowed; it and all behind it are held back. */
  stoppedAtRow(): number | undefined;
}

/** Puts rows that come a little late in their place, and stops at the first that comes too late. */
export function createRowOrder(withinSeconds: number): RowOrder {
  const reorder = withinSeconds > 0 ? reorderRows(withinSeconds) : undefined;
  let latest = Number.NEGATIVE_INFINITY;
  let stopped: number | undefined;
  return {
    push(chunk) {
      if (stopped !== undefined) return [];
      let inTime = chunk;
      const { seconds, rows } = chunk;
      for (let i = 0; i < rows; i++) {
        const time = seconds[i]!;
        if (time >= latest) latest = time;
        else if (time < latest - withinSeconds) {
          stopped = rowNumber(chunk, i);
          inTime = pickRows(
            chunk,
            Uint32Array.from({ length: i }, (_, k) => k),
          );
          break;
        }
      }
      return reorder ? reorder.push(inTime) : [inTime];
    },
    finish: () => reorder?.finish() ?? [],
    moved: () => reorder?.moved() ?? 0,
    stoppedAtRow: () => stopped,
  };
}
