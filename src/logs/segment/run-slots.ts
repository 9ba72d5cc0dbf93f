/**
 * @internal Sums over consecutive rows, in one typed array: writing to it allocates nothing, and two neighbours can be
 * merged without seeing their rows again.
 */
export type Run = Float64Array;

export const ROWS = 0;
export const FIRST_ROW = 1;
export const LAST_ROW = 2;
export const FROM = 3;
export const TO = 4;
export const FIRST_VOLTS = 5;
export const FIRST_AMPERES = 6;
export const LAST_VOLTS = 7;
export const LAST_AMPERES = 8;
/** Ampere-seconds in and out, and the variance of their sum. */
export const CHARGE_IN = 9;
export const CHARGE_OUT = 10;
export const VARIANCE = 11;
export const VOLT_SECONDS = 12;
export const SUM_VOLTS = 13;
export const SUM_AMPERES = 14;
export const SUM_SQUARES = 15;
export const LEAST_VOLTS = 16;
export const LEAST_VOLTS_ROW = 17;
export const MOST_VOLTS = 18;
export const LEAST_AMPERES = 19;
export const MOST_AMPERES = 20;
export const SUM_CELSIUS = 21;
export const CELSIUS_ROWS = 22;
export const LONGEST_GAP = 23;
/** Time and voltage of the last row but one and but two: rows at the end that turn out to be edge rows. */
export const SECOND_LAST_SECONDS = 24;
export const SECOND_LAST_VOLTS = 25;
export const THIRD_LAST_SECONDS = 26;
export const THIRD_LAST_VOLTS = 27;
/** The row before the run, NaN where its border is none of current. */
export const BEFORE_SECONDS = 28;
export const BEFORE_VOLTS = 29;
export const START_EDGES = 30;
/** 1 while every row so far is an edge row. */
export const EDGE_OPEN = 31;
export const INNER_FROM = 32;
/** −Σ w²·(change before)·(change after), see `chargeMoved`: noise of the rows. */
export const NOISE = 33;
/** First and last interval of the run and the change of current in it. */
export const FIRST_STEP = 34;
export const FIRST_CHANGE = 35;
export const LAST_STEP = 36;
export const LAST_CHANGE = 37;
export const SIZE = 38;

/** The row that follows a run, where there is one. */
export interface Border {
  readonly seconds: number;
  readonly volts: number;
  readonly amperes: number;
  /** Whether the current changes here, so that rows beside it may hold means. */
  readonly edge: boolean;
}
