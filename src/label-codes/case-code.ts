import { isRefusal, type Refusal } from "../numeric/index.js";
import type { Provenance } from "../sources/index.js";
import { caseLengths, lowCases } from "./case-code.data.js";
import {
  type CaseSize,
  compact,
  type LabelReading,
  type LabelRefusalCode,
  labelReading,
  malformed,
  unlisted,
} from "./label-reading.js";

/** What a case code of EN 50342-2 says. */
export interface CaseCodeReading extends LabelReading {
  readonly caseMillimetres: CaseSize & Provenance;
  /** Series as printed; N = ledges on all four sides. */
  readonly series: "L" | "LN" | "LB" | "LBN";
  readonly sizeDigit: string;
  /** BCI groups that use this case. */
  readonly bciGroups: readonly string[];
}

/**
 * Reads a European case code: L0-L6, LN0-LN6, LB1-LB5.
 *
 * Scope: EN 50342-2 passenger-car cases; no H or T trade code, for tables disagree about their lengths.
 *
 * @param text such as `L3`, `LN2`, `LB5`
 * @returns length, width, height in mm and the BCI groups of that case; or a refusal `malformed-code`, `unlisted-code`
 * Source: EN 50342-2 (from memory; lengths 175, 207 and 242 read on sellers' pages).
 * @example
 * ```ts
 * import { isRefusal } from "crankworthy/numeric";
 * import { decodeCaseCode } from "crankworthy/label-codes";
 * const size = decodeCaseCode("LN3");
 * !isRefusal(size) && [size.caseMillimetres.length, size.bciGroups]; // => [278, ["48"]]
 * ```
 */
export function decodeCaseCode(text: string): CaseCodeReading | Refusal<LabelRefusalCode> {
  const match = /^(LB?N?)(\d)$/.exec(compact(text));
  if (!match) return malformed("L3, LN3 or LB3");
  const [code, series, sizeDigit] = match as unknown as [string, CaseCodeReading["series"], string];
  const row = caseLengths[sizeDigit];
  const low = series.includes("B");
  if (!row || (low && !lowCases.includes(sizeDigit))) return unlisted(code);
  const [length] = row;
  const standing = low ? "from-memory" : row[1];
  return labelReading<CaseCodeReading>("en-50342-2", code, "en-50342-2", "from-memory", {
    caseMillimetres: { length, width: 175, height: low ? 175 : 190, source: "en-50342-2", standing },
    series,
    sizeDigit,
    bciGroups: row[low ? 3 : 2] ?? [],
  });
}

/** Writes a case code, such as `LN3`; a refusal when it is not one this library knows. */
export function formatCaseCode(
  parts: Pick<CaseCodeReading, "series" | "sizeDigit">,
): string | Refusal<LabelRefusalCode> {
  const read = decodeCaseCode(parts.series + parts.sizeDigit);
  return isRefusal(read) ? read : read.text;
}
