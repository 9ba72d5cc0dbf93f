/** Why a log cannot be read as its format says. */
export type LogInputCode =
  | "empty-input"
  | "no-header"
  | "missing-column"
  | "ambiguous-column"
  | "wrong-delimiter"
  | "mixed-delimiters"
  | "too-many-columns"
  | "too-few-cells"
  | "too-many-cells"
  | "repeated-header"
  | "malformed-quotes"
  | "bad-cell"
  | "not-json"
  | "too-late";

/** One thing wrong with a log, and where. */
export interface LogInputProblem {
  readonly code: LogInputCode;
  /** Data row counted from 1; missing above the first one. */
  readonly row?: number;
  /** Line of the file counted from 1. */
  readonly line?: number;
  /** Header of the column, or its position counted from 0. */
  readonly column?: string | number;
  /** Bytes of the file before the line. */
  readonly byteOffset?: number;
  /** What came, shortened. */
  readonly received: string;
  readonly expected: string;
  /** One English sentence with all of it. */
  readonly message: string;
}

/** Thrown while a log is read; carries the fields of a {@link LogInputProblem}. Test for it with {@link isLogInputError}. */
export class LogInputError extends Error implements LogInputProblem {
  override readonly name = "LogInputError";
  readonly code: LogInputCode;
  declare readonly row?: number;
  declare readonly line?: number;
  declare readonly column?: string | number;
  declare readonly byteOffset?: number;
  readonly received: string;
  readonly expected: string;

  constructor(problem: LogInputProblem) {
    super(problem.message);
    this.code = problem.code;
    this.received = problem.received;
    this.expected = problem.expected;
    const { row, line, column, byteOffset } = problem;
    Object.assign(this, { row, line, column, byteOffset });
  }
}

/** True for a {@link LogInputError}, also one from another copy of this package. */
export function isLogInputError(error: unknown): error is LogInputError {
  return error instanceof Error && error.name === "LogInputError" && "expected" in error;
}

/** @internal Adds the sentence. */
export function problem(fields: Omit<LogInputProblem, "message">): LogInputProblem {
  const { row, line, column, byteOffset, received, expected } = fields;
  const where = [
    line === undefined ? "" : `line ${line}`,
    row === undefined ? "" : `row ${row}`,
    byteOffset === undefined ? "" : `byte ${byteOffset}`,
    column === undefined ? "" : `column ${typeof column === "string" ? JSON.stringify(column) : column}`,
  ].filter((part) => part !== "");
  const place = where.length ? `${where.join(", ")}: ` : "";
  return { ...fields, message: `${place}received ${received}, expected ${expected}` };
}

/** @internal A short, safe picture of a text of the file. */
export function shortened(text: string, most = 60): string {
  return text.length > most
    ? `${JSON.stringify(text.slice(0, most))}… (${text.length} characters)`
    : JSON.stringify(text);
}
