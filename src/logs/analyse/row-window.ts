import type { LogChunk } from "../chunk.js";
import { rowNumber } from "../chunk.js";
import type { LogSeries } from "../series.js";

/** A stretch of kept rows. */
export interface KeptRows {
  readonly series: LogSeries;
  /** The number of each kept row in the file. */
  readonly rowNumbers: Float64Array;
  /** Rows between kept rows were let go to stay inside the memory bound, or left out because fewer are enough. */
  readonly thinned: boolean;
}

/** The last rows of a log, for looking back at a segment once it has ended. */
export interface RowWindow {
  /** Keeps the chunk itself: nothing is copied, and it must not be changed. */
  push(chunk: LogChunk): void;
  /** The kept rows of these times, both included; every so many of them where there are more than `most`. */
  between(fromSeconds: number, toSeconds: number, most?: number): KeptRows;
  /** Up to `count` kept rows before this time, and as many from it on. */
  around(seconds: number, count: number): KeptRows;
  /** Rows before this time are not asked for again. */
  forgetBefore(seconds: number): void;
}

/**
 * Keeps at most `mostRows` complete rows, and the newest chunk. When they are full and all still needed, every second one is let
 * go: a rest of a month then keeps its shape, and what is read from it says that it was thinned.
 */
export function createRowWindow(mostRows: number): RowWindow {
  let pieces: LogChunk[] = [];
  let rows = 0;
  let needed = Number.NEGATIVE_INFINITY;
  // The last time whose row has lost neighbours.
  let thinnedUpTo = Number.NEGATIVE_INFINITY;

  const makeRoom = (): void => {
    while (pieces.length > 1 && lastTime(pieces[0]!) < needed) rows -= pieces.shift()!.rows;
    if (rows <= mostRows || pieces.length === 0) return;
    const kept = every(pieces, 0, rows, 2);
    thinnedUpTo = lastTime(pieces.at(-1)!);
    pieces = [kept];
    rows = kept.rows;
    if (rows > mostRows) makeRoom();
  };

  // Index of the first kept row at this time or later, or of the first after it, counted over all pieces.
  const find = (time: number, after: boolean): number => {
    let before = 0;
    for (const piece of pieces) {
      const last = lastTime(piece);
      if (after ? last <= time : last < time) {
        before += piece.rows;
        continue;
      }
      let [low, high] = [0, piece.rows];
      while (low < high) {
        const middle = (low + high) >> 1;
        if (after ? piece.seconds[middle]! <= time : piece.seconds[middle]! < time) low = middle + 1;
        else high = middle;
      }
      return before + low;
    }
    return before;
  };

  const slice = (from: number, to: number, fromSeconds: number, most: number): KeptRows => {
    const stride = Math.max(1, Math.ceil((to - from - 1) / (most - 1)));
    const { seconds, volts, amperes, temperatureCelsius, rowNumbers } = every(pieces, from, to, stride);
    const plain = { seconds, volts, amperes };
    return {
      series: temperatureCelsius ? { ...plain, temperatureCelsius } : plain,
      rowNumbers: rowNumbers ?? new Float64Array(0),
      // Of a short stretch no row may be left at all.
      thinned: stride > 1 || fromSeconds < thinnedUpTo,
    };
  };

  return {
    push(chunk) {
      if (chunk.rows === 0) return;
      pieces.push(chunk);
      rows += chunk.rows;
      if (rows > mostRows) makeRoom();
    },
    between: (fromSeconds, toSeconds, most = Number.POSITIVE_INFINITY) =>
      slice(find(fromSeconds, false), find(toSeconds, true), fromSeconds, most),
    around(time, count) {
      const at = find(time, false);
      const from = Math.max(0, at - count);
      const first = every(pieces, from, Math.min(rows, from + 1), 1).seconds[0] ?? time;
      return slice(from, Math.min(rows, at + count), first, Number.POSITIVE_INFINITY);
    },
    forgetBefore(time) {
      needed = Math.max(needed, time);
    },
  };
}

const lastTime = ({ rows, seconds }: LogChunk): number => seconds[rows - 1]!;

/** Every so many rows of the pieces from one index to before another, the last always among them, as one chunk of its own. */
function every(pieces: readonly LogChunk[], from: number, to: number, stride: number): LogChunk {
  const rows = to > from ? Math.ceil((to - from - 1) / stride) + 1 : 0;
  const made = {
    firstRow: 1,
    rows,
    seconds: new Float64Array(rows),
    volts: new Float64Array(rows),
    amperes: new Float64Array(rows),
    rowNumbers: new Float64Array(rows),
  };
  const celsius = pieces.some((piece) => piece.temperatureCelsius)
    ? new Float64Array(rows).fill(Number.NaN)
    : undefined;
  let before = 0;
  let at = 0;
  for (const piece of pieces) {
    // The rows asked for that lie in this piece; the very last one need not lie on the grid.
    const first = from + at * stride - before;
    const inGrid = Math.min(rows - 1 - at, Math.ceil((piece.rows - first) / stride));
    if (inGrid > 0) {
      copy(piece.seconds, made.seconds, at, first, stride, inGrid);
      copy(piece.volts, made.volts, at, first, stride, inGrid);
      copy(piece.amperes, made.amperes, at, first, stride, inGrid);
      if (celsius && piece.temperatureCelsius)
        copy(piece.temperatureCelsius, celsius, at, first, stride, inGrid);
      if (piece.rowNumbers) copy(piece.rowNumbers, made.rowNumbers, at, first, stride, inGrid);
      else for (let i = 0; i < inGrid; i++) made.rowNumbers[at + i] = piece.firstRow + first + i * stride;
      at += inGrid;
    }
    const last = to - 1 - before;
    if (at === rows - 1 && last < piece.rows) {
      copy(piece.seconds, made.seconds, at, last, 1, 1);
      copy(piece.volts, made.volts, at, last, 1, 1);
      copy(piece.amperes, made.amperes, at, last, 1, 1);
      if (celsius && piece.temperatureCelsius) copy(piece.temperatureCelsius, celsius, at, last, 1, 1);
      made.rowNumbers[at] = rowNumber(piece, last);
      break;
    }
    before += piece.rows;
  }
  const known = celsius?.some((value) => !Number.isNaN(value));
  return known && celsius ? { ...made, temperatureCelsius: celsius } : made;
}

function copy(
  from: Float64Array,
  to: Float64Array,
  at: number,
  first: number,
  stride: number,
  count: number,
): void {
  if (stride === 1) to.set(from.subarray(first, first + count), at);
  else for (let i = 0; i < count; i++) to[at + i] = from[first + i * stride]!;
}
