import { requireFinite, wrongArgument } from "../../numeric/index.js";
import { type LogChunk, rowNumber } from "../chunk.js";
import { LogInputError, problem } from "./log-input-error.js";
import { joinChunks, pickRows } from "./pick-rows.js";

/** Puts late rows in their place, chunk by chunk. */
export interface RowReorder {
  /**
   * Takes the next chunk and returns what is in its final order by now: none or one chunk.
   *
   * @throws LogInputError `too-late` for a row more than the window behind the latest time before it; RangeError for a
   * row without a time
   */
  push(chunk: LogChunk): LogChunk[];
  /** Returns the rows still held. */
  finish(): LogChunk[];
  /** Rows so far that came after a row with a later time. */
  moved(): number;
}

/**
 * Brings rows that a logger wrote a little late into order of time.
 *
 * Scope: holds the rows of one window and one chunk, whatever the length of the log. Rows of the same time keep their
 * order. Row numbers are those of the file. Rows without a time have no place: leave them out before (`completeRows`). A
 * clock that was set back by more than the window is an error: no row is put where it may not belong.
 *
 * @param withinSeconds how late a row may be [s] (≥ 0)
 * @returns an accumulator: `push` chunks, then `finish`
 * @example
 * ```ts
 * import { reorderRows } from "crankworthy/logs";
 * const reorder = reorderRows(1);
 * const seconds = Float64Array.of(0, 10, 9.5, 20);
 * const early = reorder.push({ firstRow: 1, rows: 4, seconds, volts: seconds, amperes: seconds });
 * const rows = [...early, ...reorder.finish()].flatMap((chunk) => [...chunk.seconds]);
 * rows; // => [0, 9.5, 10, 20]
 * reorder.moved(); // => 1
 * ```
 */
export function reorderRows(withinSeconds: number): RowReorder {
  requireFinite("withinSeconds", withinSeconds, 0);
  let held: LogChunk | undefined;
  let latest = Number.NEGATIVE_INFINITY;
  let moved = 0;

  return {
    push: (chunk) => {
      const before = moved;
      for (let i = 0; i < chunk.rows; i++) {
        const time = chunk.seconds[i]!;
        if (time >= latest) latest = time;
        else if (time < latest) {
          if (time < latest - withinSeconds) throw tooLate(chunk, i, latest, withinSeconds);
          moved++;
        } else wrongArgument(`chunk, row ${rowNumber(chunk, i)}`, time, "a time");
      }
      let all = held ? joinChunks(held, chunk) : chunk;
      if (moved > before) all = sorted(all);
      // What is later than this may still be overtaken.
      const settled = countUpTo(all.seconds, all.rows, latest - withinSeconds);
      held = settled < all.rows ? part(all, settled, all.rows) : undefined;
      return settled === 0 ? [] : [part(all, 0, settled)];
    },
    finish: () => {
      const rest = held;
      held = undefined;
      return rest ? [rest] : [];
    },
    moved: () => moved,
  };
}

function tooLate(chunk: LogChunk, index: number, latest: number, withinSeconds: number): LogInputError {
  return new LogInputError(
    problem({
      code: "too-late",
      row: rowNumber(chunk, index),
      received: `a row ${latest - chunk.seconds[index]!} s before an earlier one`,
      expected: `rows at most ${withinSeconds} s late`,
    }),
  );
}

/** Leading rows up to a time, of rows in order. */
function countUpTo(seconds: Float64Array, rows: number, time: number): number {
  let count = rows;
  while (count > 0 && seconds[count - 1]! > time) count--;
  return count;
}

function sorted(chunk: LogChunk): LogChunk {
  const { seconds } = chunk;
  const indices = Uint32Array.from({ length: chunk.rows }, (_, i) => i);
  return pickRows(
    chunk,
    indices.sort((a, b) => seconds[a]! - seconds[b]! || a - b),
  );
}

function part(chunk: LogChunk, from: number, to: number): LogChunk {
  if (from === 0 && to === chunk.rows) return chunk;
  const { temperatureCelsius, clockSeconds, rowNumbers } = chunk;
  return {
    firstRow: rowNumber(chunk, from),
    rows: to - from,
    seconds: chunk.seconds.subarray(from, to),
    volts: chunk.volts.subarray(from, to),
    amperes: chunk.amperes.subarray(from, to),
    ...(temperatureCelsius ? { temperatureCelsius: temperatureCelsius.subarray(from, to) } : {}),
    ...(clockSeconds ? { clockSeconds: clockSeconds.subarray(from, to) } : {}),
    ...(rowNumbers ? { rowNumbers: rowNumbers.subarray(from, to) } : {}),
  };
}
