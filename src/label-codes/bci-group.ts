import type { Refusal } from "../numeric/index.js";
import type { Provenance } from "../sources/index.js";
import { bciGroups, caseLengths } from "./case-code.data.js";
import {
  type CaseSize,
  compact,
  type LabelReading,
  type LabelRefusalCode,
  labelReading,
  malformed,
  unlisted,
} from "./label-reading.js";

/** What a BCI group number says. */
export interface BciGroupReading extends LabelReading {
  readonly caseMillimetres: CaseSize & Provenance;
  /** Another size printed for the same group; for 47, 48 and 49 the bare case. */
  readonly otherCaseMillimetres?: CaseSize;
  readonly groupNumber: number;
  /** R = posts reversed against the base group, F = mostly so. */
  readonly suffix?: string;
}

/** Sizes of the groups that are named only as equivalents of a European case. */
function europeanCase(group: string): readonly number[] | undefined {
  for (const [length, , tall, low] of Object.values(caseLengths)) {
    if (tall?.includes(group)) return [length, 175, 190];
    if (low?.includes(group)) return [length, 175, 175];
  }
  return undefined;
}

function sizeAt(row: readonly number[], at: number): CaseSize {
  return { length: row[at]!, width: row[at + 1]!, height: row[at + 2]! };
}

/**
 * Reads a BCI group number, the North American case size.
 *
 * Scope: the commoner automotive groups; a group missing here may well exist.
 *
 * @param text such as `24F`, `48`, `94R`
 * @returns length, width, height in mm, ±3 mm; or a refusal `malformed-code`, `unlisted-code`
 * Source: BCI group dimension table (from memory); contradicting sizes stand in `otherCaseMillimetres`.
 * @example
 * ```ts
 * import { isRefusal } from "crankworthy/numeric";
 * import { decodeBciGroup } from "crankworthy/label-codes";
 * const group = decodeBciGroup("48");
 * !isRefusal(group) && [group.caseMillimetres.length, group.otherCaseMillimetres?.length]; // => [306, 278]
 * ```
 */
export function decodeBciGroup(text: string): BciGroupReading | Refusal<LabelRefusalCode> {
  const match = /^(\d{2,3})([A-Z]?)$/.exec(compact(text));
  if (!match) return malformed("24F");
  const [group, number, suffix] = match as unknown as [string, string, string];
  const row = bciGroups[group] ?? europeanCase(group);
  if (!row) return unlisted(`group ${group}`);
  return labelReading<BciGroupReading>("bci", group, "bci-groups", "from-memory", {
    caseMillimetres: { ...sizeAt(row, 0), source: "bci-groups", standing: "from-memory" },
    otherCaseMillimetres: row.length > 3 ? sizeAt(row, 3) : undefined,
    groupNumber: Number(number),
    suffix: suffix || undefined,
  });
}

/** Writes a BCI group, such as `24F`. */
export function formatBciGroup(parts: Pick<BciGroupReading, "groupNumber" | "suffix">): string {
  return parts.groupNumber + (parts.suffix ?? "");
}
