import type { LogChunk } from "../chunk.js";
import { rowNumber } from "../chunk.js";
import type { LogSeries } from "../series.js";

/** A stretch of kept rows. */
export interface KeptRows {
  readonly series: LogSeries;
  /** The number of each kept row in the file. */
  readonly rowNumbers: Float64Array;
  /** Rows between kept rows were let go to stay inside the memory bound. */
  readonly thinned: boolean;
}

/** The last rows of a log, for looking back at a segment once it has ended. */
export interface RowWindow {
  push(chunk: LogChunk): void;
  /** The kept rows of these times, both included; every so many of them where there are more than `most`. */
  between(fromSeconds: number, toSeconds: number, most?: number): KeptRows;
  /** Up to `count` kept rows before this time, and as many from it on. */
  around(seconds: number, count: number): KeptRows;
  /** Rows before this time are not asked for again. */
  forgetBefore(seconds: number): void;
}

const COLUMNS = 5;

/**
 * Keeps at most `mostRows` complete rows. When they are full and all still needed, every second one is let go: a rest of
 * a month then keeps its shape, and what is read from it says that it was thinned.
 */
export function createRowWindow(mostRows: number): RowWindow {
  const kept = Array.from({ length: COLUMNS }, () => new Float64Array(mostRows));
  const [seconds, volts, amperes, celsius, numbers] = kept as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  let start = 0;
  let end = 0;
  let needed = Number.NEGATIVE_INFINITY;
  // The last time whose row has lost neighbours.
  let thinnedUpTo = Number.NEGATIVE_INFINITY;

  const makeRoom = (): void => {
    while (start < end && seconds[start]! < needed) start++;
    if (start > 0) {
      for (const column of kept) column.copyWithin(0, start, end);
      end -= start;
      start = 0;
    }
    if (end <= mostRows / 2) return;
    thinnedUpTo = seconds[end - 1]!;
    // The first and the last row stay.
    let to = 0;
    for (let from = 0; from < end; from += 2) {
      for (const column of kept) column[to] = column[from]!;
      to++;
    }
    if (end % 2 === 0) {
      for (const column of kept) column[to] = column[end - 1]!;
      to++;
    }
    end = to;
  };

  // First kept row at this time or later, or the first after it.
  const find = (time: number, after: boolean): number => {
    let low = start;
    let high = end;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (after ? seconds[middle]! <= time : seconds[middle]! < time) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  const slice = (from: number, to: number, most = Number.POSITIVE_INFINITY): KeptRows => {
    const stride = Math.max(1, Math.ceil((to - from - 1) / (most - 1)));
    // The last row is always one of them.
    const cut = (column: Float64Array): Float64Array =>
      stride === 1
        ? column.slice(from, to)
        : Float64Array.from(
            { length: Math.ceil((to - from - 1) / stride) + 1 },
            (_, i) => column[Math.min(to - 1, from + i * stride)]!,
          );
    const temperatureCelsius = cut(celsius);
    const plain = { seconds: cut(seconds), volts: cut(volts), amperes: cut(amperes) };
    return {
      series: temperatureCelsius.some((value) => !Number.isNaN(value))
        ? { ...plain, temperatureCelsius }
        : plain,
      rowNumbers: cut(numbers),
      thinned: stride > 1 || (from < to && seconds[from]! < thinnedUpTo),
    };
  };

  return {
    push(chunk) {
      let from = 0;
      while (from < chunk.rows) {
        if (end === mostRows) makeRoom();
        const to = Math.min(chunk.rows, from + mostRows - end);
        seconds.set(chunk.seconds.subarray(from, to), end);
        volts.set(chunk.volts.subarray(from, to), end);
        amperes.set(chunk.amperes.subarray(from, to), end);
        if (chunk.temperatureCelsius) celsius.set(chunk.temperatureCelsius.subarray(from, to), end);
        else celsius.fill(Number.NaN, end, end + to - from);
        if (chunk.rowNumbers) numbers.set(chunk.rowNumbers.subarray(from, to), end);
        else for (let i = from; i < to; i++) numbers[end + i - from] = rowNumber(chunk, i);
        end += to - from;
        from = to;
      }
    },
    between(fromSeconds, toSeconds, most) {
      const found = slice(find(fromSeconds, false), find(toSeconds, true), most);
      // Of a short stretch no row may be left at all.
      return fromSeconds < thinnedUpTo ? { ...found, thinned: true } : found;
    },
    around(time, count) {
      const at = find(time, false);
      return slice(Math.max(start, at - count), Math.min(end, at + count));
    },
    forgetBefore(time) {
      needed = Math.max(needed, time);
    },
  };
}
