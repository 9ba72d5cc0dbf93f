import type { TextPiece } from "../../streams/index.js";
import type { BadCells } from "./bad-cells.js";
import type { CellReader } from "./cell-reader.js";
import { createDigitRows } from "./digit-rows.js";
import { type DelimitedPlan, MOST_COLUMNS, WELL_QUOTED } from "./format.js";
import type { FoundColumns, HeaderReading } from "./header.js";
import { type LogInputCode, shortened } from "./log-input-error.js";
import { lineAt } from "./piece.js";
import { createRowSink, type RowSink } from "./row-sink.js";
import { cutLine, isBlankLine, otherDelimiter, splitLine } from "./split-line.js";
import { createSplitRows, type PlainRows } from "./split-rows.js";

/** @internal Takes pieces of a text and fills a sink. */
export interface RowReader {
  readonly header: HeaderReading;
  readonly sink: RowSink;
  readonly bad: BadCells;
  feed(piece: TextPiece, from: number): void;
  /** After the last piece. */
  end(): void;
}

/**
 * @internal Three ways to read, each for what the one before gives up on, a piece at a time: rows of plain digits straight
 * from the bytes, rows of any numbers and marks split by udsv, and a line after the other with every check there is.
 */
export function createDelimitedRows(
  plan: DelimitedPlan,
  { header, columns, positions: byQuantity }: FoundColumns,
  headerLine: string,
  bad: BadCells,
  chunkRows: number,
): RowReader {
  const { delimiter, quoteChar, commentPrefix } = plan;
  const sink = createRowSink(columns, plan, chunkRows, header.timeFrom === "unix-time");
  const positions = sink.readers.map(({ quantity }) => byQuantity.get(quantity)!);
  const last = Math.max(...positions);
  const marks = [...sink.readers.flatMap((reader) => [...reader.marks])];
  const mayBePlain = delimiter !== "spaces" && !marks.some((mark) => mark.includes(delimiter));
  // Named columns: the header says how many cells a row has. Positions alone: the first row does.
  const named =
    plan.columns === "bdf" || Object.values(plan.columns).some((one) => typeof one?.column === "string");
  let cellsPerRow = named ? header.names.length : 0;
  let digits: PlainRows | undefined;
  let split: PlainRows | undefined;
  const line = splitLine();

  const nextLine = (text: string, at: number): number => {
    const feed = text.indexOf("\n", at);
    return feed < 0 ? text.length : feed + 1;
  };
  const isLeftOut = (text: string, at: number): boolean =>
    isBlankLine(text, at) || (commentPrefix !== "" && text.startsWith(commentPrefix, at));
  const row = (): number => sink.rowsBefore() + sink.rows() + 1;

  const settleCells = (piece: TextPiece, at: number): void => {
    cutLine(line, piece.text, at, delimiter, quoteChar, MOST_COLUMNS);
    if (line.malformed) failQuotes(piece, at);
    if (line.count > MOST_COLUMNS)
      bad.fail(
        {
          code: "too-many-columns",
          row: row(),
          received: `${line.count} columns`,
          expected: `at most ${MOST_COLUMNS}`,
        },
        piece,
        at,
      );
    if (line.count <= last) {
      const text = lineAt(piece.text, at);
      const other = otherDelimiter(text, delimiter, (count) => count > last);
      bad.fail(
        {
          code: other ? "wrong-delimiter" : "missing-column",
          row: row(),
          column: last,
          received: `${line.count} cells in ${shortened(text)}`,
          expected: `a cell at position ${last}${other ? `; ${JSON.stringify(other)} would divide the line so` : ""}`,
        },
        piece,
        at,
      );
    }
    cellsPerRow = line.count;
  };

  const failQuotes = (piece: TextPiece, at: number): never =>
    bad.fail(
      {
        code: "malformed-quotes",
        row: row(),
        received: shortened(lineAt(piece.text, at)),
        expected: WELL_QUOTED,
      },
      piece,
      at,
    );

  const wrongCount = (piece: TextPiece, at: number): void => {
    const text = lineAt(piece.text, at);
    const other = otherDelimiter(text, delimiter, (count) => count === cellsPerRow);
    const code: LogInputCode = other
      ? "mixed-delimiters"
      : line.count < cellsPerRow
        ? "too-few-cells"
        : "too-many-cells";
    bad.meet(
      "row",
      {
        code,
        row: row(),
        received: `${line.count} cells in ${shortened(text)}`,
        expected: `${cellsPerRow} cells divided by ${JSON.stringify(delimiter)}${other ? `, not by ${JSON.stringify(other)}` : ""}`,
      },
      piece,
      at,
    );
    sink.push(NOTHING, NOWHERE);
  };

  const meetBad = (reader: CellReader, text: string, piece: TextPiece, at: number): void => {
    const position = byQuantity.get(reader.quantity)!;
    bad.meet(
      "cell",
      {
        code: "bad-cell",
        // The row is already in the sink.
        row: row() - 1,
        column: header.names[position] ?? position,
        received: shortened(text),
        expected: reader.expected,
      },
      piece,
      at,
    );
  };

  /** Reads to the end of the piece; or only until the zero of time is known, and returns where that is. */
  const careful = (piece: TextPiece, from: number, untilZero = false): number => {
    const { text } = piece;
    for (let at = from; at < text.length; at = line.next) {
      if (untilZero && !sink.wantsZero()) return at;
      if (isLeftOut(text, at)) {
        line.next = nextLine(text, at);
        continue;
      }
      cutLine(line, text, at, delimiter, quoteChar, MOST_COLUMNS);
      if (headerLine !== "" && isHeader(text, at, headerLine))
        bad.fail(
          {
            code: "repeated-header",
            row: row(),
            received: `the header ${shortened(headerLine)} again`,
            expected: "rows: files put together are read one by one",
          },
          piece,
          at,
        );
      if (line.malformed) failQuotes(piece, at);
      if (line.count !== cellsPerRow) {
        wrongCount(piece, at);
        continue;
      }
      if (sink.push(line.cells, positions)) continue;
      sink.readers.forEach((reader, i) => {
        if (!reader.bad) return;
        reader.bad = false;
        meetBad(reader, line.cells[positions[i]!]!, piece, at);
      });
    }
    return text.length;
  };

  return {
    header,
    sink,
    bad,
    end: () => {},
    feed: (piece, from) => {
      const { text } = piece;
      let at = from;
      while (at < text.length && isLeftOut(text, at)) at = nextLine(text, at);
      if (at >= text.length) return;
      if (cellsPerRow === 0) settleCells(piece, at);
      if (sink.wantsZero()) at = careful(piece, at, true);
      if (at >= text.length) return;
      const isPlain =
        mayBePlain &&
        !(quoteChar !== null && text.includes(quoteChar)) &&
        !(commentPrefix !== "" && text.includes(commentPrefix, at));
      if (isPlain) {
        const rest = at > 0 ? text.slice(at) : text;
        digits ??= createDigitRows(delimiter, positions, cellsPerRow, sink);
        if (digits(rest)) return;
        split ??= createSplitRows(delimiter, positions, cellsPerRow, sink);
        const before = sink.rows();
        if (split(rest)) return;
        for (const reader of sink.readers) reader.bad = false;
        sink.rewind(before);
      }
      careful(piece, at);
    },
  };
}

const NOTHING: readonly string[] = [""];
const NOWHERE: readonly number[] = [0, 0, 0, 0, 0];

function isHeader(text: string, at: number, headerLine: string): boolean {
  const from = text.charCodeAt(at) === 0xfeff ? at + 1 : at;
  if (!text.startsWith(headerLine, from)) return false;
  const end = from + headerLine.length;
  const code = text.charCodeAt(end);
  return end >= text.length || code === 10 || (code === 13 && text.charCodeAt(end + 1) === 10);
}
