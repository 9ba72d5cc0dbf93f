import { type EvaluateOptions, type Evaluation, type InputIssue, tryEvaluate } from "../evaluate/index.js";
import type { TextLine } from "../streams/index.js";

/** The evaluation of one line, or everything that is wrong with it. */
export type LineResult =
  | { readonly line: number; readonly ok: true; readonly evaluation: Evaluation }
  | { readonly line: number; readonly ok: false; readonly issues: readonly InputIssue[] };

const BYTE_ORDER_MARK = 0xfeff;

/** Longest line that is read; a longer one is an issue. A record with every field is below 5 kB. */
export const MOST_LINE_CHARACTERS = 1_000_000;

/**
 * Evaluates JSON Lines, one record a line, in order. Empty lines are passed over; a bad line yields its issues and the
 * rest goes on.
 *
 * @param lines lines without their line ends, from any source; for a file or stream `lines(input)` of `crankworthy/streams`,
 *   which throws where it cannot read on, and at a line beyond its own limit
 * @param options as for `evaluate`
 * @example
 * ```ts
 * import { evaluateJsonLines } from "crankworthy/fleet";
 * const results = [];
 * for await (const result of evaluateJsonLines(["{}", "", "not json"])) results.push([result.line, result.ok]);
 * results; // => [[1, false], [3, false]]
 * ```
 */
export async function* evaluateJsonLines(
  lines: AsyncIterable<string | TextLine> | Iterable<string | TextLine>,
  options: EvaluateOptions = {},
): AsyncGenerator<LineResult, void, undefined> {
  let line = 0;
  for await (const next of lines) {
    line = typeof next === "string" ? line + 1 : next.line;
    const text = typeof next === "string" ? next : next.text;
    // A byte order mark belongs to the file, not to its first record.
    const record = line === 1 && text.charCodeAt(0) === BYTE_ORDER_MARK ? text.slice(1) : text;
    if (record.trim() === "") continue;
    const parsed = parseLine(record);
    if (!parsed.ok) {
      yield { line, ok: false, issues: [parsed.issue] };
      continue;
    }
    const result = tryEvaluate(parsed.value, options);
    yield result.ok
      ? { line, ok: true, evaluation: result.evaluation }
      : { line, ok: false, issues: result.issues };
  }
}

function parseLine(
  text: string,
): { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly issue: InputIssue } {
  if (text.length > MOST_LINE_CHARACTERS)
    return {
      ok: false,
      issue: notJson(`a line of ${text.length} characters`, `at most ${MOST_LINE_CHARACTERS} characters`),
    };
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    return { ok: false, issue: notJson(printable(detail.slice(0, 120)), "one JSON object a line") };
  }
}

// The parser quotes the line in its message, control characters and all.
function printable(text: string): string {
  return text.replace(/\p{Cc}/gu, "?");
}

function notJson(received: string, expected: string): InputIssue {
  return {
    code: "not-json",
    path: "",
    received,
    expected,
    message: `line: expected ${expected}, received ${received}`,
  };
}
