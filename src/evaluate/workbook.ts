import type { Refusal } from "../numeric/index.js";
import type { Derivation } from "../sources/index.js";
import { type Finding, type FindingCode, finding, type Severity } from "../verdict/index.js";
import type { NamedRefusal } from "./evaluation.js";

/** What the sections of one evaluation leave behind besides their results. Lives for one call. */
export interface Workbook {
  readonly findings: Finding[];
  readonly refusals: NamedRefusal[];
  /** Present when the caller asked for an explanation. */
  readonly derivation: Derivation | undefined;
}

/** Leaves a finding. */
export function note(
  book: Workbook,
  code: FindingCode,
  severity: Severity,
  evidence: Readonly<Record<string, number | string>> = {},
): void {
  book.findings.push(finding(code, severity, evidence));
}

/** Leaves a refusal with the path of the field it answers. */
export function refused(book: Workbook, about: string, refusal: Refusal): void {
  const { code, reason, wouldHelp } = refusal;
  book.refusals.push({ refused: true, code, reason, wouldHelp, about });
}
