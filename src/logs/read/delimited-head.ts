import type { TextPiece } from "../../streams/index.js";
import { createBadCells } from "./bad-cells.js";
import { createDelimitedRows, type RowReader } from "./delimited-rows.js";
import { type DelimitedPlan, MOST_COLUMNS, WELL_QUOTED } from "./format.js";
import { type FoundColumns, readHeader } from "./header.js";
import { shortened } from "./log-input-error.js";
import { lineAt } from "./piece.js";
import { cutLine, isBlankLine, otherDelimiter, splitLine } from "./split-line.js";

/** @internal The head of a delimited text: give it lines until it is complete. */
export interface HeadReader {
  /** Takes the lines it needs from a piece; returns where the data begins, or undefined when the piece is used up. */
  feed(piece: TextPiece): number | undefined;
  /** For a text that ends within its head. */
  end(): never;
  /** Makes the reader of what follows. */
  rows(chunkRows: number): RowReader;
}

/** @internal */
export function createHeadReader(plan: DelimitedPlan): HeadReader {
  const { delimiter, quoteChar, commentPrefix, headerRowCount } = plan;
  const bad = createBadCells(plan.badCells);
  const line = splitLine();
  let toSkip = plan.skipRows;
  let toRead = headerRowCount;
  let cells: readonly string[] = [];
  let headerLine = "";
  let found: FoundColumns | undefined;
  let lastPiece: TextPiece | undefined;

  const settle = (piece: TextPiece, at: number): void => {
    const result = readHeader(cells, plan);
    if ("header" in result) found = result;
    else {
      const other =
        cells.length < 2 ? otherDelimiter(headerLine, delimiter, (count) => count > 1) : undefined;
      if (other && result.wrong.code === "missing-column")
        bad.fail(
          {
            code: "wrong-delimiter",
            received: `${shortened(headerLine)}, which ${JSON.stringify(other)} divides`,
            expected: `a header divided by ${JSON.stringify(delimiter)}`,
          },
          piece,
          at,
        );
      bad.fail(result.wrong, piece, at);
    }
  };

  return {
    feed: (piece) => {
      lastPiece = piece;
      const { text } = piece;
      let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
      for (; toSkip > 0 && at < text.length; toSkip--) {
        const feed = text.indexOf("\n", at);
        at = feed < 0 ? text.length : feed + 1;
      }
      while (toRead > 0 && at < text.length) {
        const start = at;
        if (isBlankLine(text, at) || (commentPrefix !== "" && text.startsWith(commentPrefix, at))) {
          const feed = text.indexOf("\n", at);
          at = feed < 0 ? text.length : feed + 1;
          continue;
        }
        cutLine(line, text, at, delimiter, quoteChar, MOST_COLUMNS);
        at = line.next;
        if (line.malformed)
          bad.fail(
            { code: "malformed-quotes", received: shortened(lineAt(text, start)), expected: WELL_QUOTED },
            piece,
            start,
          );
        if (line.count > MOST_COLUMNS)
          bad.fail(
            {
              code: "too-many-columns",
              received: `${line.count} columns`,
              expected: `at most ${MOST_COLUMNS}`,
            },
            piece,
            start,
          );
        toRead--;
        if (toRead > 0) continue;
        cells = line.cells;
        headerLine = lineAt(text, start, Number.POSITIVE_INFINITY);
        settle(piece, start);
      }
      if (toSkip > 0 || toRead > 0) return undefined;
      if (!found) settle(piece, at);
      return at;
    },
    end: () => {
      const empty = lastPiece === undefined;
      const piece = lastPiece ?? EMPTY_PIECE;
      const wanted = plan.skipRows + headerRowCount;
      return bad.fail(
        {
          code: empty ? "empty-input" : "no-header",
          received: empty ? "nothing" : "the end of the text",
          expected: empty ? "a table" : `${wanted} lines of head`,
        },
        piece,
        piece.text.length,
      );
    },
    rows: (chunkRows) => createDelimitedRows(plan, found!, headerLine, bad, chunkRows),
  };
}

const EMPTY_PIECE: TextPiece = { text: "", byteOffset: 0, firstLine: 1, encoding: "utf-8" };
