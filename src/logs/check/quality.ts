import type { Refusal } from "../../numeric/index.js";
import type { LagEstimate, LagRefusalCode } from "./lag-estimate.js";

/** What a log may be wanted for. */
export type LogQuestion =
  | "crank"
  | "ripple"
  | "load-step"
  | "charge"
  | "capacity"
  | "rest"
  | "parasitic-draw"
  | "self-discharge";

/** What the second clock says about the elapsed time. */
export type TimeScaleStatement =
  | "consistent"
  | "nanoseconds"
  | "microseconds"
  | "milliseconds"
  | "minutes"
  | "hours"
  | "unexplained"
  | "no-statement";

/** Elapsed time against a second clock. */
export interface LogTimeScale {
  /** The unit that the elapsed times really have, where one fits. */
  readonly statement: TimeScaleStatement;
  /** Median of Δelapsed/Δclock; missing without a statement. */
  readonly ratio?: number;
  /** Pairs of rows compared. */
  readonly pairs: number;
  /** Rows beside each other; or, where those are nearer than half a second, rows at least that far apart. */
  readonly compared: "neighbouring-rows" | "rows-apart";
}

/** What can be wrong with a log, in the order in which it is reported. */
export const DEFECT_CODES = [
  "time-out-of-order",
  "clock-set-back",
  "duplicate-row",
  "same-time-other-values",
  "gap",
  "time-scale",
  "sentinel-number",
  "out-of-range",
  "not-sampled-together",
  "stuck-channel",
  "clipping",
  "idle-current",
  "voltage-in-millivolts",
  "current-in-milliamperes",
  "temperature-in-fahrenheit",
  "temperature-in-kelvin",
  "current-sign",
  "reversed-polarity",
  "system-voltage",
  "current-lag",
  "sampling-too-slow",
] as const;

/** Name of a defect. */
export type LogDefectCode = (typeof DEFECT_CODES)[number];

/** `error`: numbers from these rows are wrong; `warning`: they may be; `note`: good to know. */
export type LogDefectSeverity = "error" | "warning" | "note";

/** Column of a {@link LogChunk} that a defect is about. */
export type LogChannel = "seconds" | "volts" | "amperes" | "temperatureCelsius";

/** One stretch of rows with one defect. Nothing was repaired. */
export interface LogDefect {
  readonly code: LogDefectCode;
  readonly severity: LogDefectSeverity;
  /** Numbers of the first and last row of the stretch. */
  readonly firstRow: number;
  readonly lastRow: number;
  /** Rows in it that have the defect. */
  readonly count: number;
  /** The numbers that decided, units in their names. */
  readonly values: Readonly<Record<string, number>>;
  readonly channel?: LogChannel;
  /** The question that this log cannot answer, for `sampling-too-slow`. */
  readonly question?: LogQuestion;
}

/** Sum over all stretches of one defect, also over those that are not listed. */
export interface LogDefectTotal {
  readonly code: LogDefectCode;
  /** The worst of its stretches. */
  readonly severity: LogDefectSeverity;
  readonly rows: number;
  readonly ranges: number;
  /** Stretches counted but not listed among the defects. */
  readonly rangesLeftOut: number;
  /** Greatest of the values that measure this defect (seconds back, seconds of the gap, …), over all stretches. */
  readonly greatest: number;
  readonly channel?: LogChannel;
}

/** How often rows with a voltage or a current come. */
export interface LogSampling {
  /** Mean of those in the eighth of an octave that holds the median: exact for a regular log, in bounded memory. */
  readonly medianSeconds: number;
  readonly leastSeconds: number;
  readonly mostSeconds: number;
  /** `change-driven` where more than one interval in a hundred differs from the median by more than half. */
  readonly kind: "regular" | "change-driven";
  /** Longest interval that comes at least three times in a row: the slowest rate of the logger. Missing without one. */
  readonly slowestRateSeconds?: number;
}

/** What a log holds and what is wrong with it. */
export interface LogQuality {
  readonly rows: number;
  /** Rows with time, voltage and current. */
  readonly completeRows: number;
  /** Rows without a value, per column; a column that the log lacks misses in all rows. */
  readonly missing: {
    readonly seconds: number;
    readonly volts: number;
    readonly amperes: number;
    readonly temperatureCelsius: number;
    readonly clockSeconds: number;
  };
  /** Least and greatest time [s]. Missing without a row that has a time. */
  readonly span?: { readonly fromSeconds: number; readonly toSeconds: number };
  /** Missing with fewer than two rows in order. */
  readonly sampling?: LogSampling;
  /** In the order of the codes, then of the rows; at most `rangesPerDefect` of each code and channel. */
  readonly defects: readonly LogDefect[];
  readonly totals: readonly LogDefectTotal[];
  /** Time by which current comes after voltage, or why it is not known. Missing without current. */
  readonly lag?: LagEstimate | Refusal<LagRefusalCode>;
  /** Elapsed time against the second clock. Missing without one. */
  readonly timeScale?: LogTimeScale;
}
