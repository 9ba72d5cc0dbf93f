import type { Derivation } from "../sources/index.js";
import { answer } from "./answer.js";
import { lookAlike } from "./confusables.js";
import { type DecodeWindow, decodeContext } from "./context.js";
import { type Candidate, type DateCodeEvidence, hear, judge } from "./evidence.js";
import type { Confusable, DateCodeNote, DateCodeRefusal, DateCodeResult } from "./reading.js";
import { refuseCode } from "./refusals.js";
import type { DecodeContext } from "./scheme.js";
import { iec60062, YEAR_G } from "./schemes/iec-60062.js";
import { type Reader, readersOf, type SchemeChoice } from "./template.js";
import { extract } from "./text.js";

/** Longest text that is looked at [characters]; longer than any marking with a date in it. */
export const MAX_TEXT_LENGTH = 64;

/** How to read a code. */
export interface DecodeOptions extends DecodeWindow {
  /** Schemes to try, alone or in templates; default all. */
  readonly schemes?: readonly SchemeChoice[];
  readonly evidence?: DateCodeEvidence;
}

/**
 * Reads a manufacturing date code and returns everything it can mean.
 *
 * Scope: codes of ASCII characters whose place on the label the caller knows. No scheme is common to all makers, so the
 * answer is a list; narrow it with `schemes` when the maker's scheme is known. Every decade inside the accepted age is
 * reported, and a period that begins after the inspection is not. Characters that look alike are reported with what they
 * would mean, never exchanged. Day 00 and month codes stay whole months. Weeks are read under both rules where they differ
 * and `weekRule` does not choose; the reading then names its rule.
 *
 * @param text the code as read, at most MAX_TEXT_LENGTH characters
 * @param options inspection date, accepted age [years, default 12], tolerance [days], week rule, schemes, evidence
 * @param derivation receives one step per reading
 * @returns readings (dates as `YYYY-MM-DD`, ages in days), or a refusal: `empty`, `too-long`, `not-ascii`, `no-reading`,
 *   `outside-window`, `template-mismatch`, `iec-60062-year-g`, `contradicted-by-evidence`
 * @throws RangeError when an option is outside its range
 *
 * Source: each reading names that of its scheme; the window and the ranking are our choice (`date-code-choices`).
 * @example
 * ```ts
 * import { decodeDateCode, type DecodeOptions } from "crankworthy/date-codes";
 * import { isRefusal } from "crankworthy/numeric";
 * const options: DecodeOptions = { inspectedOn: "2025-06-15", schemes: ["letter-month-no-i", "iec-60062"] };
 * const periods = (text: string) => {
 *   const result = decodeDateCode(text, options);
 *   return isRefusal(result) ? result.code : result.readings.map(({ scheme, from }) => `${scheme} ${from}`);
 * };
 * periods("j5"); // => ["iec-60062 2017-05-01", "letter-month-no-i 2015-09-01"]
 * periods("GO"); // => "iec-60062-year-g"
 * const weeks = decodeDateCode("2210", { inspectedOn: "2025-06-15", schemes: ["yyww"] });
 * isRefusal(weeks) ? [] : weeks.readings.map(({ from, weekRule }) => `${from} ${weekRule}`); // => ["2022-03-07 iso", "2022-02-28 jan1"]
 * ```
 */
export function decodeDateCode(
  text: string,
  options: DecodeOptions,
  derivation?: Derivation,
): DateCodeResult | DateCodeRefusal {
  const context = decodeContext(options);
  const readers = readersOf(options.schemes);
  const code = normalised(text);
  if (code === undefined) return refuseCode(text.length > MAX_TEXT_LENGTH ? "too-long" : "not-ascii");
  if (code === "") return refuseCode("empty");

  const secondCode = options.evidence?.secondCode;
  const secondText = secondCode && normalised(secondCode.text);
  const second = secondText
    ? read(secondText, readersOf(secondCode.scheme && [secondCode.scheme]), context)
    : secondCode && [];
  const evidence = hear(options.evidence, second);
  const confusables: Confusable[] = [];
  for (let position = 0; position < code.length; position++) {
    const couldBe = lookAlike(code[position]!);
    if (couldBe === undefined) continue;
    const other = code.slice(0, position) + couldBe + code.slice(position + 1);
    const alternatives = read(other, readers, context, position);
    if (alternatives.length === 0) continue;
    const { readings } = judge(alternatives, context, evidence);
    if (readings.length > 0)
      confusables.push({ position, read: code[position]!, couldBe, alternativeReadings: readings });
  }

  const candidates = read(code, readers, context);
  if (candidates.length === 0) return refuseCode(whyNot(code, readers, context), confusables);
  const notes: DateCodeNote[] = [];
  if (second?.length === 0) notes.push("second-code-not-read");
  if (meetsYearG(code, readers)) notes.push("iec-60062-year-g-not-read");
  return answer(code, candidates, context, evidence, confusables, notes, derivation);
}

/** Trimmed and in upper case; undefined unless short and of printable ASCII characters, whose case no language changes. */
function normalised(text: string): string | undefined {
  // The length comes first: nothing ever walks over a long text.
  if (text.length > MAX_TEXT_LENGTH) return undefined;
  const trimmed = text.trim();
  return /[^ -~]/.test(trimmed) ? undefined : trimmed.toUpperCase();
}

/**
 * @param changed index of a character taken for another: where a template ignores it, the plant's own, that changes
 *   nothing, so such readers are left out
 */
function read(
  text: string,
  readers: readonly Reader[],
  context: DecodeContext,
  changed = -1,
): readonly Candidate[] {
  const found: Candidate[] = [];
  for (const { scheme, template } of readers) {
    if (template?.[changed] === "?") continue;
    const code = extract(text, template);
    if (code === undefined) continue;
    for (const period of scheme.decode(code, context)) found.push({ scheme, template, ...period });
  }
  return found;
}

/** Is there a reader of IEC 60062 that met the doubtful year letter? */
function meetsYearG(text: string, readers: readonly Reader[]): boolean {
  return (
    text.includes("G") &&
    readers.some(({ scheme, template }) => scheme === iec60062 && YEAR_G.test(extract(text, template) ?? ""))
  );
}

function whyNot(
  text: string,
  readers: readonly Reader[],
  context: DecodeContext,
): "iec-60062-year-g" | "template-mismatch" | "outside-window" | "no-reading" {
  if (meetsYearG(text, readers)) return "iec-60062-year-g";
  if (readers.every(({ template }) => extract(text, template) === undefined)) return "template-mismatch";
  // One century around the inspection: a text that is no date there, like week 53 of a short year, is no date at all.
  const century = {
    ...context,
    earliestDay: -Infinity,
    latestDay: Infinity,
    earliestYear: context.latestYear - 48,
    latestYear: context.latestYear + 49,
  };
  return read(text, readers, century).length > 0 ? "outside-window" : "no-reading";
}
