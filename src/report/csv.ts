import type { Evaluation } from "../evaluate/index.js";
import { requireKey, wrongArgument } from "../numeric/index.js";
import { type Cell, csvColumns } from "./csv-columns.data.js";
import { clean } from "./text.js";

/** How to write rows for a spreadsheet. */
export interface CsvOptions {
  /** Between cells, default `comma`; a spreadsheet whose decimal mark is a comma often expects a semicolon. */
  readonly delimiter?: "comma" | "semicolon" | "tab";
  /** Ends each row: `crlf` (default, RFC 4180) or `lf`. */
  readonly lineEnd?: "crlf" | "lf";
}

const DELIMITERS = { comma: ",", semicolon: ";", tab: "\t" } as const;
const LINE_ENDS = { crlf: "\r\n", lf: "\n" } as const;

/**
 * Where a cell begins, for a spreadsheet that splits at any delimiter, and there what it takes for a formula, also behind blanks
 * and quotes and in full width; or our own mark.
 */
const STARTS_FORMULA = /(^|[;,\t])(?='|[\s"'`]*[=+\-@\t\r\n|%＝＋－＠−])/g;
/** The mark at such a place. */
const MARKED = /(^|[;,\t])'/g;

/**
 * The first row: names of the columns, with the unit in the name where there is one (`Volts`, `Amperes`, `Celsius`, …).
 *
 * What has no unit in its name is a share or probability 0..1, a code of the glossary, a text, a count or a day `YYYY-MM-DD`;
 * an amount is in the currency of its row. Columns keep their order; later versions add at the end.
 *
 * @param options delimiter and line end, the same as for the rows
 * @example
 * ```ts
 * import { csvHeader } from "crankworthy/report";
 * csvHeader().split(",").slice(0, 4); // => ["schemaVersion", "id", "inspectedOn", "condition"]
 * ```
 */
export function csvHeader(options: CsvOptions = {}): string {
  return row(
    csvColumns.map(([name]) => name),
    options,
  );
}

/**
 * One evaluation as one row of CSV (RFC 4180).
 *
 * Numbers are unrounded, with a dot, whatever the country; an empty cell is not known. A list is codes with blanks between
 * them. Ability is the first of the evaluation, the date of manufacture that of the best supported reading. Texts stand in
 * quotes, cleaned of control and format characters like everywhere in a report.
 *
 * A text that a spreadsheet would run as a formula (it begins with `= + - @ | %`, a sign of their kind, or blanks and quotes
 * before one) and a text that begins with an apostrophe get one apostrophe in front. So does such a beginning behind a comma,
 * semicolon or tab inside a text, as a spreadsheet may split there whatever the delimiter of the file. Whoever reads the row
 * back takes the apostrophes away again with {@link csvText}. A negative number is a number and stays one.
 *
 * @param evaluation from `evaluate`
 * @param options delimiter, line end
 * @returns cells and line end
 * @throws RangeError for an unknown delimiter or line end, and for a number that is none
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { csvRow } from "crankworthy/report";
 * const row = csvRow(evaluate({
 *   id: "=1+1",
 *   identity: { chemistry: "gel", rating: { standard: "sae-j537", amperes: 600 } },
 *   measurements: { restVolts: 12.8 },
 * }));
 * row.split(",").slice(0, 2); // => ["1", "\"'=1+1\""]
 * ```
 */
export function csvRow(evaluation: Evaluation, options: CsvOptions = {}): string {
  return row(
    csvColumns.map(([name, cell]) => written(name, cell(evaluation))),
    options,
  );
}

/**
 * The text that a cell of {@link csvRow} stands for, once a CSV reader has taken its quotes away.
 *
 * @param cell as read
 * @returns the text without the apostrophes that kept a spreadsheet from running it: one at the start, one behind each
 * comma, semicolon or tab that has one
 * @example
 * ```ts
 * import { csvText } from "crankworthy/report";
 * csvText("'=1+1"); // => "=1+1"
 * csvText("a;'=1+1"); // => "a;=1+1"
 * ```
 */
export function csvText(cell: string): string {
  return cell.replace(MARKED, "$1");
}

function row(cells: readonly string[], { delimiter = "comma", lineEnd = "crlf" }: CsvOptions): string {
  requireKey("delimiter", delimiter, DELIMITERS);
  requireKey("lineEnd", lineEnd, LINE_ENDS);
  return cells.join(DELIMITERS[delimiter]) + LINE_ENDS[lineEnd];
}

function written(name: string, cell: Cell): string {
  if (cell === undefined) return "";
  if (typeof cell === "number") {
    if (!Number.isFinite(cell)) wrongArgument(name, cell, "a finite number");
    return String(cell === 0 ? 0 : cell);
  }
  // An amount is a decimal number already; anything else is a text.
  if (typeof cell === "object")
    return /^-?\d+(?:\.\d+)?$/.test(cell.amount) ? cell.amount : quoted(cell.amount);
  return cell === "" ? "" : quoted(cell);
}

function quoted(text: string): string {
  return `"${clean(text).replace(STARTS_FORMULA, "$1'").replaceAll('"', '""')}"`;
}
