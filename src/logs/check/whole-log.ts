import type { LogChannel, LogDefect, LogDefectCode, LogDefectSeverity, LogDefectTotal } from "./quality.js";

/** @internal First and last row of a log, and how many. */
export interface WholeLog {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly count: number;
}

/** @internal What {@link createRanges} and {@link wholeLog} give. */
export interface Found {
  readonly defects: readonly LogDefect[];
  readonly total: LogDefectTotal | undefined;
}

/** @internal A defect of all rows. The first value is the one that measures it. */
export function wholeLog(
  code: LogDefectCode,
  severity: LogDefectSeverity,
  log: WholeLog,
  values: Readonly<Record<string, number>>,
  channel?: LogChannel,
): Found {
  const about = channel ? { channel } : {};
  const greatest = Math.abs(Object.values(values)[0] ?? 0);
  return {
    defects: [{ code, severity, ...log, values, ...about }],
    total: { code, severity, rows: log.count, ranges: 1, rangesLeftOut: 0, greatest, ...about },
  };
}
