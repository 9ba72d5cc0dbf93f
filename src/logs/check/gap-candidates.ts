import { createIntervalClass } from "./intervals.js";
import type { LogDefectSeverity } from "./quality.js";
import type { Ranges, Stretch } from "./ranges.js";

/** @internal A long interval with what changed across it. */
export interface LongInterval {
  readonly seconds: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly index: number;
  /** NaN where not sampled on both sides. */
  readonly voltsChange: number;
  readonly amperesBefore: number;
  readonly amperesAfter: number;
  readonly loaded: boolean;
}

/**
 * @internal Long intervals, by length: which of them are gaps is known only at the end, when the slowest rate of the logger
 * is. Of each length the first ones are kept, the others counted.
 */
export function createGapCandidates(kept: number) {
  const intervalClass = createIntervalClass();
  const classes = new Map<number, { readonly first: LongInterval[]; count: number; most: number }>();
  return {
    add(one: LongInterval): void {
      const key = intervalClass(one.seconds) * 2 + Number(one.loaded);
      let entry = classes.get(key);
      if (!entry) {
        entry = { first: [], count: 0, most: 0 };
        classes.set(key, entry);
      }
      entry.count++;
      entry.most = Math.max(entry.most, one.seconds);
      if (entry.first.length < kept) entry.first.push(one);
    },
    /** Writes what is longer than the limit of its state. */
    finish(
      ranges: Ranges,
      limitSeconds: (loaded: boolean) => number,
      usualSeconds: (loaded: boolean) => number,
      loadedAmperes: number,
    ): void {
      const long: LongInterval[] = [];
      for (const { first, count, most } of classes.values()) {
        const loaded = first[0]!.loaded;
        const gaps = first.filter((one) => one.seconds > limitSeconds(loaded));
        long.push(...gaps);
        // Beyond those kept, a class counts whole when all of its kept ones are gaps.
        if (gaps.length === first.length && count > first.length)
          ranges.leftOut(
            count - first.length,
            2 * (count - first.length),
            most,
            severity(first[0]!, loadedAmperes),
          );
      }
      long.sort((a, b) => a.index - b.index);
      for (const one of long) ranges.stretch(asStretch(one, usualSeconds(one.loaded), loadedAmperes));
    },
  };
}

/** Something went on meanwhile that the log does not hold: current on either side, or a voltage that moved by 0.1 V. */
function severity(one: LongInterval, loadedAmperes: number): LogDefectSeverity {
  const loaded = Math.abs(one.amperesBefore) >= loadedAmperes || Math.abs(one.amperesAfter) >= loadedAmperes;
  return loaded || Math.abs(one.voltsChange) >= 0.1 ? "warning" : "note";
}

function asStretch(one: LongInterval, usualSeconds: number, loadedAmperes: number): Stretch {
  const { seconds, firstRow, lastRow, voltsChange, amperesBefore, amperesAfter } = one;
  const all = {
    seconds,
    usualSeconds,
    rowsMissing: Math.max(1, Math.round(seconds / usualSeconds) - 1),
    voltsChange,
    amperesBefore,
    amperesAfter,
  };
  return {
    severity: severity(one, loadedAmperes),
    firstRow,
    lastRow,
    count: 2,
    greatest: seconds,
    values: Object.fromEntries(Object.entries(all).filter(([, value]) => !Number.isNaN(value))),
  };
}
