import { type ClockTime, clockTime, readClockTime } from "./clock-time.js";
import { convert, type LogColumns, type LogQuantity, scaleOf, type UnitScale } from "./columns.js";
import { decimal } from "./decimal.js";

/** @internal Reads the cells of one column; says in `bad` that the last one was neither number nor missing mark. */
export interface CellReader {
  readonly quantity: LogQuantity;
  readonly expected: string;
  /** Code of the decimal sign. */
  readonly point: number;
  readonly scale: UnitScale;
  /** For a date and time. */
  readonly clock: ClockTime | undefined;
  readonly marks: ReadonlySet<string>;
  readonly markNumbers: readonly number[];
  bad: boolean;
}

/** @internal */
export function cellReader(
  columns: LogColumns,
  quantity: LogQuantity,
  format: { readonly decimalChar?: string; readonly null?: readonly string[] },
): CellReader | undefined {
  const one = columns[quantity];
  if (!one) return undefined;
  const scale = scaleOf(columns, quantity);
  const marks = [...(format.null ?? []), ...(one.null ?? [])].map((mark) => trimmed(mark));
  const point = (format.decimalChar ?? ".").charCodeAt(0);
  const numbers = marks.map((mark) => decimal(mark, point)).filter((value) => !Number.isNaN(value));
  return {
    quantity,
    expected: scale ? `a number [${one.unit}] or a missing mark` : CLOCK_EXPECTED[one.unit]!,
    point,
    scale: scale ?? { times: 1, over: 1, plus: 0 },
    clock: scale ? undefined : clockTime(one.unit === "iso-8601"),
    marks: new Set(["", ...marks]),
    markNumbers: numbers,
    bad: false,
  };
}

const CLOCK_EXPECTED: Readonly<Record<string, string>> = {
  "iso-8601": "a date and time with an offset or Z, as 2017-01-02T03:04:05.678+01:00",
  "local-clock": "a date and time without a zone, as 2017-01-02 03:04:05.678",
};

/** @internal The number in a cell in SI units and °C; NaN where it is a missing mark, and where `bad` is set. */
export function readNumber(reader: CellReader, text: string): number {
  const plain = trimmed(text);
  if (reader.marks.has(plain)) return Number.NaN;
  return convertNumber(reader, decimal(plain, reader.point));
}

/** @internal The same for a number that is none as text, in JSON: `1e999` is Infinity there, and bad. */
export function convertNumber(reader: CellReader, value: number): number {
  if (reader.markNumbers.includes(value)) return Number.NaN;
  const converted = convert(value, reader.scale);
  if (Number.isFinite(converted)) return converted;
  reader.bad = true;
  return Number.NaN;
}

/** @internal Reads a date and time into `reader.clock`; false where it is a missing mark, and where `bad` is set. */
export function readClock(reader: CellReader, clock: ClockTime, text: string): boolean {
  const plain = trimmed(text);
  if (reader.marks.has(plain)) return false;
  const bytes = new TextEncoder().encode(plain);
  if (readClockTime(bytes, 0, bytes.length, clock)) return true;
  reader.bad = true;
  return false;
}

/** Blanks around a cell, and the first half of a line end, but no line feed: that one would hide a short row. */
function trimmed(text: string): string {
  let from = 0;
  let to = text.length;
  while (from < to && isBlank(text.charCodeAt(from))) from++;
  while (to > from && isBlank(text.charCodeAt(to - 1))) to--;
  return text.slice(from, to);
}

const isBlank = (code: number): boolean => code === 32 || code === 9 || code === 13;
