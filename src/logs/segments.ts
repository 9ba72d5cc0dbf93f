/** What the battery does between two times. */
export type SegmentKind =
  | "rest"
  | "discharge"
  | "charge-constant-current"
  | "charge-constant-voltage"
  | "crank"
  | "load-step"
  | "engine-running"
  | "unclassified";

/**
 * Sums and extremes over a segment's rows; they need no second look at the file. The interval up to the next segment's first row
 * counts in charge, its variance and the longest gap, so that the charges of all segments add up to that of the log.
 */
export interface SegmentTotals {
  readonly rows: number;
  readonly chargeInAmpereHours: number;
  readonly chargeOutAmpereHours: number;
  /** Σ ((I₂ − I₁)·Δt)²/12 [A²s²]: what the current may have done between rows; in a gap (max(|I₁|, |I₂|)·Δt)²/3. */
  readonly chargeVarianceAmpereSecondsSquared: number;
  /** −Σ w²·(I₂ − I₁)(I₃ − I₂) [A²s²], of either sign: tells noise of the rows from changes of the load (see `chargeMoved`). */
  readonly chargeNoiseAmpereSecondsSquared: number;
  readonly meanVolts: number;
  readonly leastVolts: number;
  readonly leastVoltsRow: number;
  readonly mostVolts: number;
  readonly firstVolts: number;
  readonly lastVolts: number;
  readonly meanAmperes: number;
  readonly leastAmperes: number;
  readonly mostAmperes: number;
  /** NaN without temperature. */
  readonly meanTemperatureCelsius: number;
  readonly longestGapSeconds: number;
}

/** Why a segment was taken for what it is called, with the numbers that decided. */
export type SegmentReasonCode =
  | "current-near-zero"
  | "voltage-holds"
  | "discharge-current"
  | "short-load"
  | "current-pulse"
  | "pulse-too-long"
  | "pulse-too-short"
  | "voltage-dip"
  | "charging-after-crank"
  | "current-holds"
  | "current-falls-at-held-voltage"
  | "charge-unsteady"
  | "charge-too-short"
  | "no-current-no-pattern";

/** A code and its numbers. */
export interface SegmentReason {
  readonly code: SegmentReasonCode;
  readonly values: Readonly<Record<string, number>>;
}

/** A stretch of a log in which one thing goes on. */
export interface LogSegment {
  readonly kind: SegmentKind;
  /** Row numbers in the file, first and last row included. */
  readonly firstRow: number;
  readonly lastRow: number;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly reason: SegmentReason;
  readonly totals: SegmentTotals;
  readonly edges: SegmentEdges;
}

/** Rows next to a change of current may hold the mean of both sides; these times leave them out. */
export interface SegmentEdges {
  readonly edgeRowsAtStart: number;
  readonly edgeRowsAtEnd: number;
  readonly innerFromSeconds: number;
  readonly innerToSeconds: number;
}
