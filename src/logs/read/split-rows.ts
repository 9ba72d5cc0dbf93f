import { initParser } from "udsv";
import type { CellDelimiter } from "./format.js";
import type { RowSink } from "./row-sink.js";

/** @internal Reads whole lines without quotes; false where anything is not as it should be, and all is to be read again. */
export type PlainRows = (text: string) => boolean;

/**
 * @internal Rows of any decimal numbers and marks. udsv does the splitting; it is told of the columns up to the last one
 * that is read, and takes the rest of a line as one cell, in which delimiters are only counted.
 *
 * udsv does not check how many cells a line has: a short line runs on into the next one, and at the end of the text it
 * starts over at the beginning, for ever. So the last line is checked beforehand, and a row that has run on is noticed by
 * a line feed or a delimiter in one of its cells.
 */
export function createSplitRows(
  delimiter: Exclude<CellDelimiter, "spaces">,
  positions: readonly number[],
  cellsPerRow: number,
  sink: RowSink,
): PlainRows {
  const last = Math.max(...positions);
  const columns = Math.min(cellsPerRow, last + 2);
  const delimitersInRest = cellsPerRow - columns;
  const hasRest = columns > last + 1;
  // A line feed can hide in a cell that is not looked at.
  const countsLines = new Set(positions).size < last + 1;
  const parser = initParser({
    col: delimiter,
    row: "\n",
    encl: "",
    esc: "",
    trim: false,
    cols: Array.from({ length: columns }, (_, i) => ({ name: String(i), type: "s", repl: NO_REPLACEMENT })),
  });
  const onRow = (cells: string[]): boolean => {
    if (!sink.push(cells, positions)) return false;
    return !hasRest || count(cells[last + 1]!, delimiter) === delimitersInRest;
  };
  return (text) => {
    const ended = text.endsWith("\n") ? text : `${text}\n`;
    const lastLine = ended.slice(ended.lastIndexOf("\n", ended.length - 2) + 1);
    if (ended.charCodeAt(0) === BYTE_ORDER_MARK) return false;
    if (count(lastLine, delimiter) !== cellsPerRow - 1) return false;
    const before = sink.rows();
    let good = true;
    parser.stringArrs(ended, (cells: string[]) => {
      good = onRow(cells);
      return good;
    });
    return good && (!countsLines || sink.rows() - before === count(ended, "\n"));
  };
}

const BYTE_ORDER_MARK = 0xfeff;
const NO_REPLACEMENT = { empty: undefined, null: undefined, NaN: undefined };

function count(text: string, mark: string): number {
  let found = 0;
  for (let at = text.indexOf(mark); at >= 0; at = text.indexOf(mark, at + 1)) found++;
  return found;
}
