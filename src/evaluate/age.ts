import {
  type DateCodeEvidence,
  type DecodeOptions,
  dateSchemes,
  decodeDateCode,
} from "../date-codes/index.js";
import { isRefusal, type Mutable, type PlainDate } from "../numeric/index.js";
import type { AgeSection } from "./evaluation.js";
import { type InputIssue, issue, picture } from "./issue.js";
import type { BatteryRecord } from "./record.js";
import { note, refused, type Workbook } from "./workbook.js";

/** How old is it, as far as the date code and the evidence beside it say. */
export function age(
  record: BatteryRecord,
  inspectedOn: PlainDate | undefined,
  book: Workbook,
): AgeSection | undefined {
  const { dateCode, activatedOn } = record.identity;
  if (!dateCode) return undefined;
  if (inspectedOn === undefined) {
    note(book, "missing-inspection-date", "warning");
    return undefined;
  }
  const soldOn = record.warranty?.purchase.soldOn;
  const evidence: Mutable<DateCodeEvidence> = {};
  if (soldOn !== undefined) evidence.soldOn = soldOn;
  if (activatedOn !== undefined) evidence.activatedOn = activatedOn;
  if (dateCode.vehicleYear !== undefined) evidence.vehicleYear = dateCode.vehicleYear;
  const options: Mutable<DecodeOptions> = { inspectedOn, evidence };
  if (dateCode.scheme !== undefined) options.schemes = [dateCode.scheme as keyof typeof dateSchemes];
  const decoded = decodeDateCode(dateCode.text, options, book.derivation);
  if (isRefusal(decoded)) {
    refused(book, "identity.dateCode", decoded);
    note(book, "date-code-refused", "warning", { text: dateCode.text, reason: decoded.code });
    return undefined;
  }
  if (decoded.ambiguous)
    note(book, "date-code-ambiguous", "warning", {
      text: decoded.text,
      readings: decoded.readings.length,
      settledBy: decoded.settledBy.join(", "),
    });
  for (const { read, couldBe } of decoded.confusables)
    note(book, "date-code-confusable", "note", { text: decoded.text, read, couldBe });
  let lower = Number.POSITIVE_INFINITY;
  let upper = Number.NEGATIVE_INFINITY;
  for (const { ageDays } of decoded.readings) {
    lower = Math.min(lower, ageDays.lower);
    upper = Math.max(upper, ageDays.upper);
  }
  return { dateCode: decoded, ageDays: { lower, upper } };
}

/** A scheme name that does not exist is a mistake of the record, not of the code. */
export function schemeIssues(record: BatteryRecord): InputIssue[] {
  const scheme = record.identity.dateCode?.scheme;
  if (scheme === undefined || Object.hasOwn(dateSchemes, scheme)) return [];
  const known = Object.keys(dateSchemes).join(", ");
  return [issue("not-a-choice", "identity.dateCode.scheme", picture(scheme), `one of ${known}`)];
}
