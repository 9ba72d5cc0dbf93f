import type { TextPiece } from "../../streams/index.js";
import { createBadCells } from "./bad-cells.js";
import type { CellReader } from "./cell-reader.js";
import { QUANTITIES } from "./columns.js";
import type { RowReader } from "./delimited-rows.js";
import type { JsonLinesFormat } from "./format.js";
import { missing } from "./header.js";
import { shortened } from "./log-input-error.js";
import { lineAt } from "./piece.js";
import { createRowSink } from "./row-sink.js";
import { isBlankLine } from "./split-line.js";

/** A list or an object is named, not printed: printing one nested thousands deep overflows the stack. */
function pictureOf(value: unknown): string {
  if (typeof value === "object") return Array.isArray(value) ? "an array" : "an object";
  return typeof value === "string" ? shortened(value) : String(value);
}

/** @internal Rows of one JSON object or array a line. */
export function createJsonRows(format: JsonLinesFormat, chunkRows: number): RowReader {
  const { columns } = format;
  const { unit } = columns.time;
  const bad = createBadCells(format.badCells ?? "error");
  const sink = createRowSink(columns, format, chunkRows, false);
  const keys = sink.readers.map(({ quantity }) => columns[quantity]!.column);
  // Keys may be missing in a row, but one that no row has is a mistake.
  const seen = keys.map(() => false);
  const names = new Set<string>();
  const values: (number | string)[] = keys.map(() => "");
  const wrong: unknown[] = [];
  let lastPiece: TextPiece | undefined;
  const row = (): number => sink.rowsBefore() + sink.rows() + 1;

  const parse = (text: string): object | undefined => {
    try {
      const value: unknown = JSON.parse(text);
      return typeof value === "object" && value !== null ? value : undefined;
    } catch {
      return undefined;
    }
  };

  const readLine = (piece: TextPiece, at: number, end: number): void => {
    const record = parse(piece.text.slice(at, end));
    if (!record) {
      const received = shortened(lineAt(piece.text, at));
      bad.meet(
        "row",
        { code: "not-json", row: row(), received, expected: "one JSON object or array" },
        piece,
        at,
      );
      sink.pushValues(keys.map(() => ""));
      return;
    }
    if (names.size < 100 && !Array.isArray(record)) for (const name of Object.keys(record)) names.add(name);
    wrong.length = 0;
    keys.forEach((key, i) => {
      const there = Object.hasOwn(record, key);
      if (there) seen[i] = true;
      const value: unknown = there ? (record as Readonly<Record<number | string, unknown>>)[key] : null;
      if (typeof value === "number" || typeof value === "string") values[i] = value;
      else {
        values[i] = "";
        if (value !== null) wrong[i] = value;
      }
    });
    const good = sink.pushValues(values);
    if (good && wrong.length === 0) return;
    sink.readers.forEach((reader, i) => {
      if (!reader.bad && wrong[i] === undefined) return;
      reader.bad = false;
      meetBad(reader, wrong[i] ?? values[i], piece, at);
    });
  };

  const meetBad = (reader: CellReader, value: unknown, piece: TextPiece, at: number): void =>
    bad.meet(
      "cell",
      {
        code: "bad-cell",
        row: row() - 1,
        column: columns[reader.quantity]!.column,
        received: pictureOf(value),
        expected: reader.expected,
      },
      piece,
      at,
    );

  return {
    sink,
    bad,
    header: {
      names: [],
      columns: QUANTITIES.flatMap((quantity) => {
        const one = columns[quantity];
        if (!one) return [];
        const place = typeof one.column === "string" ? { header: one.column } : { position: one.column };
        return [{ quantity, ...place, unit: one.unit }];
      }),
      terms: [],
      leftOver: [],
      timeFrom: unit === "iso-8601" || unit === "local-clock" ? unit : "elapsed",
    },
    feed: (piece, from) => {
      lastPiece = piece;
      const { text } = piece;
      for (let at = from; at < text.length; ) {
        const feed = text.indexOf("\n", at);
        const end = feed < 0 ? text.length : feed;
        if (!isBlankLine(text, at)) readLine(piece, at, end);
        at = end + 1;
      }
    },
    end: () => {
      const never = seen.indexOf(false);
      if (never < 0 || !lastPiece || sink.rowsBefore() + sink.rows() === 0) return;
      const { received, expected } = missing(String(keys[never]), [...names]);
      const column = keys[never]!;
      bad.fail(
        {
          code: "missing-column",
          column,
          received: received.replace("headers", "keys"),
          expected: `${expected}, in one row at least`.replace("a header", "a key"),
        },
        lastPiece,
        lastPiece.text.length,
      );
    },
  };
}
