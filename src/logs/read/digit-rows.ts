import { type ClockTime, readClockTime } from "./clock-time.js";
import { POWERS_OF_TEN } from "./decimal.js";
import type { CellDelimiter } from "./format.js";
import type { RowSink } from "./row-sink.js";
import type { PlainRows } from "./split-rows.js";

const LINE_FEED = 10;
const RETURN = 13;
const MINUS = 45;
const NINE_DIGITS = 9;

/**
 * @internal Rows in which every cell that is read is a missing mark, a plain decimal number or a date and time: what loggers
 * write. Numbers come straight from the bytes, without a text for each cell; anything else makes it give up, and nothing is read.
 *
 * A number is correctly rounded: its digits make an integer below 2⁵³, divided once by a power of ten a double holds exactly
 * (W. D. Clinger, "How to read floating point numbers accurately", PLDI 1990; standing: from memory).
 */
export function createDigitRows(
  delimiter: Exclude<CellDelimiter, "spaces">,
  positions: readonly number[],
  cellsPerRow: number,
  sink: RowSink,
): PlainRows {
  const { readers } = sink;
  const separator = delimiter.charCodeAt(0);
  const point = readers[0]!.point;
  // A column that is read twice, or decimal commas that stand in quotes: not here.
  if (new Set(positions).size < positions.length || separator === point) return () => false;
  const slots = new Int32Array(cellsPerRow).fill(-1);
  const clocks: readonly (ClockTime | undefined)[] = readers.map((reader) => reader.clock);
  const withMarkNumbers = readers.some((one) => one.markNumbers.length > 0);
  const dated = Uint8Array.from(clocks, (clock) => (clock ? 1 : 0));
  positions.forEach((position, i) => {
    slots[position] = i;
  });
  const encoder = new TextEncoder();
  let bytes = new Uint8Array(0);
  let planes = new Float64Array(0);
  let stride = 0;

  const marks = readers.map((reader) => [...reader.marks].map((mark) => encoder.encode(mark)));
  const isMark = (bytes: Uint8Array, from: number, to: number, slot: number): boolean => {
    for (const mark of marks[slot]!) {
      let same = mark.length === to - from;
      for (let i = 0; same && i < mark.length; i++) same = mark[i] === bytes[from + i];
      if (same) return true;
    }
    return false;
  };

  /** Rows read, or −1. */
  const scan = (bytes: Uint8Array, end: number, planes: Float64Array, stride: number): number => {
    let at = 0;
    let row = 0;
    while (at < end) {
      for (let cell = 0; cell < cellsPerRow; cell++) {
        const slot = slots[cell]!;
        let code = bytes[at]!;
        if (slot < 0) while (code !== separator && code !== LINE_FEED) code = bytes[++at]!;
        else if (dated[slot] === 1) {
          const from = at;
          while (code !== separator && code !== LINE_FEED && code !== RETURN) code = bytes[++at]!;
          const clock = clocks[slot]!;
          const there = at > from && readClockTime(bytes, from, at, clock);
          if (!there && at > from && !isMark(bytes, from, at, slot)) return -1;
          planes[slot * stride + row] = there ? clock.whole : Number.NaN;
          planes[(readers.length + slot) * stride + row] = there ? clock.fraction : Number.NaN;
        } else {
          const start = at;
          const negative = code === MINUS;
          if (negative) code = bytes[++at]!;
          const from = at;
          let pointAt = -1;
          let value = 0;
          // Nine digits fit 32-bit integers, which are faster.
          for (const stop = at + NINE_DIGITS; at < stop; code = bytes[++at]!) {
            if ((code - 48) >>> 0 <= 9) value = (Math.imul(value, 10) + code - 48) | 0;
            else if (code === point && pointAt < 0) pointAt = at;
            else break;
          }
          if (at === from + NINE_DIGITS)
            for (; ; code = bytes[++at]!) {
              if ((code - 48) >>> 0 <= 9) value = value * 10 + (code - 48);
              else if (code === point && pointAt < 0) pointAt = at;
              else break;
            }
          const places = pointAt < 0 ? 0 : at - 1 - pointAt;
          const digits = at - from - (pointAt < 0 ? 0 : 1);
          if (digits === 0 || (code !== separator && code !== LINE_FEED && code !== RETURN)) {
            while (code !== separator && code !== LINE_FEED && code !== RETURN) code = bytes[++at]!;
            if (at > start && !isMark(bytes, start, at, slot)) return -1;
            value = Number.NaN;
          } else {
            if (places > 22 || !(value < 2 ** 53)) return -1;
            if (places > 0) value /= POWERS_OF_TEN[places]!;
            if (withMarkNumbers && readers[slot]!.markNumbers.includes(negative ? -value : value))
              value = Number.NaN;
          }
          // 0 − 0 is 0: no −0 from "-0.000".
          planes[slot * stride + row] = negative ? 0 - value : value;
        }
        if (cell < cellsPerRow - 1) {
          if (code !== separator) return -1;
        } else {
          if (code === RETURN) code = bytes[++at]!;
          if (code !== LINE_FEED) return -1;
        }
        at++;
      }
      row++;
    }
    return row;
  };

  return (text) => {
    const most = 3 * text.length + 2;
    if (bytes.length < most) bytes = new Uint8Array(most);
    let end = encoder.encodeInto(text, bytes).written;
    // The last line end is what every loop above stops at.
    if (bytes[end - 1] !== LINE_FEED) bytes[end++] = LINE_FEED;
    // A row is at least its delimiters and line end.
    const rows = Math.ceil(end / cellsPerRow);
    if (stride < rows) {
      stride = rows;
      planes = new Float64Array(2 * readers.length * stride);
    }
    const read = scan(bytes, end, planes, stride);
    if (read < 0) return false;
    sink.append(planes, stride, read);
    return true;
  };
}
