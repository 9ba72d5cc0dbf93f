import type { LogChannel, LogDefect, LogDefectCode, LogDefectSeverity } from "./quality.js";
import type { Found } from "./whole-log.js";

/** @internal A stretch whose numbers are already known. */
export interface Stretch {
  readonly severity: LogDefectSeverity;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly count: number;
  /** What measures the defect: the total keeps the greatest. */
  readonly greatest: number;
  readonly values: Readonly<Record<string, number>>;
}

/** @internal Gathers rows of one defect into stretches and keeps the first of them. */
export interface Ranges {
  /** A row; one right behind the last row given joins its stretch. `value` measures the defect, the greatest is kept. */
  row(index: number, number: number, value: number): void;
  stretch(one: Stretch): void;
  /** Stretches that were counted and not kept. */
  leftOut(ranges: number, rows: number, greatest: number, severity: LogDefectSeverity): void;
  finish(): Found;
}

const RANK = { note: 0, warning: 1, error: 2 } as const;

/** @internal The worse of two. */
export function worse(a: LogDefectSeverity, b: LogDefectSeverity): LogDefectSeverity {
  return RANK[a] >= RANK[b] ? a : b;
}

/** @internal */
export function createRanges(
  code: LogDefectCode,
  severity: LogDefectSeverity,
  valueName: string,
  kept: number,
  channel?: LogChannel,
): Ranges {
  const about = channel ? { channel } : {};
  const defects: LogDefect[] = [];
  let [rows, ranges, greatest] = [0, 0, 0];
  let worst: LogDefectSeverity = "note";
  // The open stretch of single rows.
  let [firstRow, lastRow, lastIndex, count, value] = [0, 0, Number.NEGATIVE_INFINITY, 0, 0];

  function stretch(one: Stretch): void {
    rows += one.count;
    ranges++;
    greatest = Math.max(greatest, one.greatest);
    worst = worse(worst, one.severity);
    if (defects.length < kept)
      defects.push({
        code,
        severity: one.severity,
        firstRow: one.firstRow,
        lastRow: one.lastRow,
        count: one.count,
        values: one.values,
        ...about,
      });
  }
  function close(): void {
    if (count)
      stretch({ severity, firstRow, lastRow, count, greatest: value, values: { [valueName]: value } });
    count = 0;
  }
  return {
    row(index, number, one) {
      if (index !== lastIndex + 1) {
        close();
        firstRow = number;
        value = one;
      }
      if (one > value) value = one;
      count++;
      lastIndex = index;
      lastRow = number;
    },
    stretch,
    leftOut(more, moreRows, most, how) {
      rows += moreRows;
      ranges += more;
      greatest = Math.max(greatest, most);
      worst = worse(worst, how);
    },
    finish() {
      close();
      lastIndex = Number.NEGATIVE_INFINITY;
      if (ranges === 0) return { defects, total: undefined };
      const rangesLeftOut = ranges - defects.length;
      return { defects, total: { code, severity: worst, rows, ranges, rangesLeftOut, greatest, ...about } };
    },
  };
}
