/** One thing wrong with a record. */
export interface InputIssue {
  readonly code:
    | "missing"
    | "wrong-type"
    | "not-finite"
    | "out-of-range"
    | "wrong-unit"
    | "unknown-key"
    | "not-a-date"
    | "not-a-choice"
    | "too-long"
    | "wrong-format"
    | "contradiction"
    | "missing-convention"
    | "not-json";
  /** Path to the value, keys and indexes joined as in `measurements.cellGravities[2]`; empty for the record itself. */
  readonly path: string;
  /** What came, shortened. */
  readonly received: string;
  readonly expected: string;
  /** One English sentence with all of it. */
  readonly message: string;
}

/** Thrown by `evaluate`; carries every issue of the record. Test for it with {@link isInputError}. */
export class InputError extends Error {
  override readonly name = "InputError";
  readonly code = "CRANKWORTHY_INPUT";
  readonly issues: readonly InputIssue[];

  constructor(issues: readonly InputIssue[]) {
    super(issues.map((issue) => issue.message).join("\n"));
    this.issues = issues;
  }
}

/** True for an {@link InputError}, also one from another copy of this package. */
export function isInputError(error: unknown): error is InputError {
  return error instanceof Error && error.name === "InputError" && "issues" in error;
}

/** Makes an issue with its sentence. */
export function issue(
  code: InputIssue["code"],
  path: string,
  received: string,
  expected: string,
  hint = "",
): InputIssue {
  const where = path === "" ? "record" : path;
  const message = `${where}: expected ${expected}, received ${received}${hint === "" ? "" : `; ${hint}`}`;
  return { code, path, received, expected, message };
}

/** A short, safe picture of any value, for messages. */
export function picture(value: unknown): string {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  switch (typeof value) {
    case "string":
      return value.length > 40
        ? `${JSON.stringify(value.slice(0, 40))}… (${value.length} characters)`
        : JSON.stringify(value);
    case "number":
      return Object.is(value, -0) ? "-0" : String(value);
    case "boolean":
      return String(value);
    case "bigint":
      return "a bigint";
    case "object":
      return Array.isArray(value) ? `an array of ${value.length}` : "an object";
    default:
      return `a ${typeof value}`;
  }
}
