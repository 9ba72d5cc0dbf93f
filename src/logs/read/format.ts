import { requireFinite, requireKey, wrongArgument } from "../../numeric/index.js";
import { type LogColumns, requireColumns } from "./columns.js";

/** What stands between two cells; `spaces` = one blank or tab or more, also before the first cell. */
export type CellDelimiter = "," | ";" | "\t" | "|" | "spaces";

/** What becomes of a cell that is neither a number nor a missing mark, and of a row with too few or too many cells. */
export type BadCellPolicy = "error" | "count";

/**
 * A table of delimited text. Names are those of the dialect and column descriptions of "CSV on the Web" where it has them
 * (W3C, Metadata Vocabulary for Tabular Data, section 5.9, https://www.w3.org/TR/tabular-metadata/; standing: from memory).
 */
export interface DelimitedFormat {
  /** The columns, or `bdf`: found by the headers of the Battery Data Format. */
  readonly columns: LogColumns | "bdf";
  /** Default `,`. */
  readonly delimiter?: CellDelimiter;
  /** Lines left out before the header. Default 0. */
  readonly skipRows?: number;
  /** Lines of header; the last one names the columns. Default 1. */
  readonly headerRowCount?: number;
  /** Lines that begin with it are left out. Default: none. */
  readonly commentPrefix?: string;
  /** Encloses cells; doubled inside them. Default `"`; null for none. */
  readonly quoteChar?: '"' | "'" | null;
  /** Default `.`. */
  readonly decimalChar?: "." | ",";
  /** Texts that stand for no sample, in any column. An empty cell always does. */
  readonly null?: readonly string[];
  /** Default `error`. With `count` a bad cell is read as not sampled, and counted with its place. */
  readonly badCells?: BadCellPolicy;
  readonly jsonLines?: false;
}

/** One JSON object or array a line. */
export interface JsonLinesFormat {
  readonly jsonLines: true;
  /** By key in objects, by position from 0 in arrays. */
  readonly columns: LogColumns;
  /** Decimal sign inside strings. Default `.`. */
  readonly decimalChar?: "." | ",";
  /** Strings or numbers that stand for no sample. An empty string, null and a key that is not there always do. */
  readonly null?: readonly string[];
  /** Default `error`. */
  readonly badCells?: BadCellPolicy;
}

/** How a log is written. `bdf` = a comma-separated file of the Battery Data Format. */
export type LogFormat = "bdf" | DelimitedFormat | JsonLinesFormat;

/** @internal */
export type DelimitedPlan = Required<Omit<DelimitedFormat, "jsonLines">>;

/** @internal The most columns a header or row may have; more is no log of a battery (our choice). */
export const MOST_COLUMNS = 1000;

/** @internal What is expected of quotes. */
export const WELL_QUOTED = "quotes that enclose whole cells";

const KEYS: Readonly<Record<keyof DelimitedFormat, 0>> = {
  columns: 0,
  delimiter: 0,
  skipRows: 0,
  headerRowCount: 0,
  commentPrefix: 0,
  quoteChar: 0,
  decimalChar: 0,
  null: 0,
  badCells: 0,
  jsonLines: 0,
};

/** @internal Fills in the defaults; throws RangeError for what no format can be. */
export function planDelimited(format: DelimitedFormat): DelimitedPlan {
  for (const key of Object.keys(format)) requireKey("format", key, KEYS);
  const plan = {
    columns: format.columns,
    delimiter: format.delimiter ?? ",",
    skipRows: format.skipRows ?? 0,
    headerRowCount: format.headerRowCount ?? 1,
    commentPrefix: format.commentPrefix ?? "",
    quoteChar: format.quoteChar === undefined ? '"' : format.quoteChar,
    decimalChar: format.decimalChar ?? ".",
    null: format.null ?? [],
    badCells: format.badCells ?? "error",
  } as const;
  requireKey("format.delimiter", plan.delimiter, { ",": 0, ";": 0, "\t": 0, "|": 0, spaces: 0 });
  for (const name of ["skipRows", "headerRowCount"] as const) {
    requireFinite(`format.${name}`, plan[name], 0, 1000);
    if (!Number.isInteger(plan[name])) wrongArgument(`format.${name}`, plan[name], "a whole number");
  }
  if (plan.quoteChar !== null) requireKey("format.quoteChar", plan.quoteChar, { '"': 0, "'": 0 });
  requireShared(plan);
  if (plan.columns === "bdf") {
    if (plan.headerRowCount === 0) wrongArgument("format.headerRowCount", 0, "1 or more to find BDF columns");
    return plan;
  }
  requireColumns(plan.columns, true);
  if (plan.headerRowCount === 0)
    for (const [quantity, one] of Object.entries(plan.columns))
      if (typeof one?.column === "string")
        wrongArgument(`columns.${quantity}.column`, one.column, "a position, where there is no header");
  return plan;
}

/** @internal */
export function requireJsonLines(format: JsonLinesFormat): void {
  for (const key of Object.keys(format)) requireKey("format", key, KEYS);
  requireShared(format);
  requireColumns(format.columns, true);
}

function requireShared(format: {
  readonly decimalChar?: string;
  readonly badCells?: string;
  readonly null?: readonly string[];
}): void {
  requireKey("format.decimalChar", format.decimalChar ?? ".", { ".": 0, ",": 0 });
  requireKey("format.badCells", format.badCells ?? "error", { error: 0, count: 0 });
  if (!Array.isArray(format.null ?? [])) wrongArgument("format.null", format.null, "an array of texts");
}
