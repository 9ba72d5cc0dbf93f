import type { BatteryRecord, RecordConditions } from "../../evaluate/index.js";
import { type Mutable, type Refusal, refuse as refusal } from "../../numeric/index.js";
import type { LogDefectCode } from "../check/quality.js";
import type { LogAnalysis } from "./analyse-log.js";
import type { FieldOrigin, LogMeasurement } from "./measurement.js";

/** A record in the making. */
export interface Draft {
  readonly measurements: Mutable<BatteryRecord["measurements"]>;
  readonly conditions: Mutable<RecordConditions>;
  readonly vehicle: Mutable<NonNullable<BatteryRecord["vehicle"]>>;
  readonly origin: Record<string, FieldOrigin>;
  readonly refused: (FieldOrigin & { readonly path: string; readonly refusal: Refusal })[];
  readonly faults: readonly Fault[];
}

/** Rows whose numbers are wrong. */
interface Fault {
  readonly code: LogDefectCode;
  readonly firstRow: number;
  readonly lastRow: number;
}

/** `evaluate` sees for itself that a battery is no 12 V battery, or reversed, and says what to do. */
const JUDGED_BY_EVALUATE: ReadonlySet<LogDefectCode> = /* @__PURE__ */ new Set<LogDefectCode>([
  "system-voltage",
  "reversed-polarity",
]);

export function faultsOf({ quality }: LogAnalysis): Fault[] {
  const wrong = (one: { readonly code: LogDefectCode; readonly severity: string }) =>
    one.severity === "error" && !JUDGED_BY_EVALUATE.has(one.code);
  return [
    ...quality.defects.filter(wrong),
    // Of stretches that are not listed nobody knows where they are.
    ...quality.totals
      .filter((total) => wrong(total) && total.rangesLeftOut > 0)
      .map(({ code }) => ({ code, firstRow: 1, lastRow: quality.rows })),
  ];
}

/** Refuses the fields of a measurement whose rows are wrong by what the check found. */
export function isFaulty(draft: Draft, measured: LogMeasurement, path: string): boolean {
  const fault = draft.faults.find(
    ({ firstRow, lastRow }) => firstRow <= measured.lastRow && lastRow >= measured.firstRow,
  );
  if (!fault) return false;
  const help = "A log without this defect; see the quality of the analysis.";
  refuse(draft, measured, path, refusal("rows-faulty", `The check found ${fault.code} in these rows.`, help));
  return true;
}

function from({ segment, firstRow, lastRow, quantity }: LogMeasurement): FieldOrigin {
  return { segment, firstRow, lastRow, quantity };
}

export function took({ origin }: Draft, measured: LogMeasurement, ...paths: readonly string[]): void {
  for (const path of paths) origin[path] = from(measured);
}

export function refuse({ refused }: Draft, measured: LogMeasurement, path: string, why: Refusal): void {
  refused.push({ ...from(measured), path, refusal: why });
}

export function leaveOut<Part extends object>(
  part: Part,
  path: string,
  field: keyof Part,
  origin: Record<string, FieldOrigin>,
): void {
  delete part[field];
  delete origin[path];
}
