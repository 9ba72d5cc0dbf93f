import type { SourceId } from "../sources/index.js";
import type { Standing } from "../sources/source.js";

/** RC in min = factor × Ah^exponent + offset, Ah at the 20 h rate; expanded = relative, k = 2, our choice. */
export const relationRows = {
  /** EN 50342-1 / IEC 60095-1, flooded; its constants are Peukert's law with k = 1.183. */
  flooded: [0.7732, 1.1828, 0, "en-50342-1", "from-memory", 0.08],
  /** The same for valve-regulated; three label pairs lie 6-14 % below it. */
  "valve-regulated": [1.1339, 1.1201, 0, "en-50342-1", "from-memory", 0.15],
  "supplier-power-law": [0.83, 1.17, 0, "number-codes", "read"],
  "times-1.63": [1.63, 1, 0, "reserve-article", "read"],
  "half-of-minutes": [2, 1, 0, "reserve-forum", "read"],
  "half-plus-16": [2, 1, -32, "reserve-trade-rule", "common-practice"],
  "minutes-over-1.9": [1.9, 1, 0, "reserve-trade-rule", "common-practice"],
  "0.6-of-minutes": [1 / 0.6, 1, 0, "reserve-training", "read"],
  /** Charge given at 25 A until the reserve capacity is out. Not the 20 h capacity. */
  "charge-at-25-amperes": [2.4, 1, 0, "ratings-choice", "computed"],
} as const satisfies Record<
  string,
  readonly [
    factor: number,
    exponent: number,
    offset: number,
    source: SourceId,
    standing: Standing,
    expanded?: number,
  ]
>;

/** Ah at the 20 h rate for which the relation by construction is given: our choice around the 36-198 Ah looked at. */
export const CAPACITY_RANGE = [20, 240] as const;

/** Lower and upper published exponent, dimensionless. */
export const exponentRows = {
  "flooded-starter": [1.17, 1.183, "en-50342-1", "from-memory"],
  "valve-regulated-starter": [1.12, 1.12, "en-50342-1", "from-memory"],
  /** From three AGM label pairs; 5 % in reserve capacity moves the exponent by 0.03-0.05. */
  "valve-regulated-label-pairs": [1.18, 1.24, "ratings-choice", "computed"],
  /** Any lead-acid battery; unsourced tables print 1.1-1.3 for flooded. Rises with age. */
  agm: [1.05, 1.15, "peukert-dealer", "read"],
  gel: [1.1, 1.25, "peukert-dealer", "read"],
  flooded: [1.2, 1.6, "peukert-dealer", "read"],
  "lead-acid": [1.1, 1.3, "peukert-note", "read"],
} as const satisfies Record<
  string,
  readonly [lower: number, upper: number, source: SourceId, standing: Standing]
>;
