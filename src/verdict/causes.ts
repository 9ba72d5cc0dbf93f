import type { Mutable } from "../numeric/index.js";
import type { CauseCode, CauseSupport, Known, Sign } from "./causes/cause.js";
import { causeRules } from "./causes/index.js";
import { type Finding, type FindingCode, finding } from "./finding.js";

/** One possible cause and what the findings say about it. */
export interface Cause {
  readonly code: CauseCode;
  readonly support: CauseSupport;
  /** The findings that speak for or against it. */
  readonly because: readonly FindingCode[];
}

/** Causes, and what weighing them brought to light. */
export interface Causes {
  readonly causes: readonly Cause[];
  readonly findings: readonly Finding[];
}

/**
 * Weighs what may be behind an engine that does not start: the battery, its connection, the charging circuit, a drain, or
 * a battery that is only discharged. Several may be supported together.
 *
 * Scope: findings alone are weighed, each for what it says beyond doubt; nothing is said on how common a cause is. A
 * cause with findings on both sides stays `open`, and the finding `causes-conflict` says what would settle it.
 *
 * @param findings those of an evaluation
 * @returns every cause with its support, and the findings `causes-conflict`, `cause-unclear`, `starter-or-engine`
 * @example
 * ```ts
 * import { finding, weighCauses } from "crankworthy/verdict";
 * const { causes } = weighCauses([finding("ability-above", "note"), finding("voltage-drop-high", "warning")]);
 * causes.map((one) => one.support); // => ["contradicted", "supported", "open", "open", "open"]
 * ```
 */
export function weighCauses(findings: readonly Finding[]): Causes {
  const codes = new Set<FindingCode>();
  for (const { code } of findings) codes.add(code);
  const known: Known = (code) => codes.has(code);
  const causes: Cause[] = [];
  const made: Finding[] = [];
  for (const { code, supports, contradicts, settleBy } of causeRules) {
    const pro = present(supports, known);
    const contra = present(contradicts, known);
    const cause: Mutable<Cause> = { code, support: "open", because: [...pro, ...contra] };
    if (pro.length > 0 && contra.length > 0)
      made.push(finding("causes-conflict", "warning", { cause: code, settleBy }));
    else if (pro.length > 0) cause.support = "supported";
    else if (contra.length > 0) cause.support = "contradicted";
    causes.push(cause);
  }
  const isContradicted = (code: CauseCode): boolean =>
    causes.some((one) => one.code === code && one.support === "contradicted");
  const none = causes.every((one) => one.support !== "supported");
  if (startsBadly(known) && isContradicted("battery") && isContradicted("connection"))
    made.push(finding("starter-or-engine", "warning"));
  else if (none) made.push(finding("cause-unclear", "warning", { open: openCodes(causes) }));
  return { causes, findings: made };
}

const startsBadly = (known: Known): boolean =>
  known("cranking-voltage-low") ||
  known("cranking-current-high") ||
  known("slow-with-high-current") ||
  known("slow-with-low-current") ||
  known("slow-at-full-voltage");

function present(signs: readonly Sign[], known: Known): FindingCode[] {
  const found: FindingCode[] = [];
  for (const { code, when } of signs) if (known(code) && (!when || when(known))) found.push(code);
  return found;
}

function openCodes(causes: readonly Cause[]): string {
  const open: CauseCode[] = [];
  for (const { code, support } of causes) if (support === "open") open.push(code);
  return open.join(", ");
}
