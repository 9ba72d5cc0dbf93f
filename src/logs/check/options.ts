import { requireFinite, requireKey, requirePositive, wrongArgument } from "../../numeric/index.js";
import type { LagSecondsRange } from "./lag-estimate.js";
import type { LogQuestion } from "./quality.js";
import { QUESTION_SECONDS } from "./question.js";

/** Settings of a check; every limit is our choice, with its reason. */
export interface LogCheckOptions {
  /** What the log is wanted for; sampling is judged against it. Default: nothing in particular. */
  readonly questions?: readonly LogQuestion[];
  /** Stretches listed per defect and channel, the rest is counted (1..10 000). Default 50: what a person still reads. */
  readonly rangesPerDefect?: number;
  /**
   * Current that counts as a load or a charge [A] (> 0). Default 0.1: above the idle consumption of a parked vehicle, below
   * any bench discharge.
   */
  readonly loadedAmperes?: number;
  /** An interval this many times the logger's own is a gap (≥ 1.1). Default 1.5: one missing row of a regular log shows. */
  readonly gapFactor?: number;
  /**
   * Time that goes back by more than this many intervals is a clock set back, by less rows out of order (≥ 1). Default 10:
   * a logger's queue of events mixes up a few rows, sorting by time mends them.
   */
  readonly setBackIntervals?: number;
  /** Equal readings in a row, while the other channel goes up and down, that make a channel stuck (≥ 20). Default 30. */
  readonly stuckRows?: number;
  /**
   * Least mean idle current to report [A] (≥ 0). Default 0.005: 0.12 Ah a day, what a battery loses by itself.
   * Whether it is a zero error of the meter or a consumer the log cannot tell.
   */
  readonly idleAmperes?: number;
  /** Delays of the current to try. Default: from −0.1 s (at least 4 rows) to 0.5 s (at least 12 rows). */
  readonly lag?: LagSecondsRange;
}

/** @internal Options with their defaults. */
export type CheckSettings = Required<Omit<LogCheckOptions, "lag">> & Pick<LogCheckOptions, "lag">;

/** @internal */
export function checkSettings(options: LogCheckOptions = {}): CheckSettings {
  const settings = {
    questions: options.questions ?? [],
    rangesPerDefect: options.rangesPerDefect ?? 50,
    loadedAmperes: options.loadedAmperes ?? 0.1,
    gapFactor: options.gapFactor ?? 1.5,
    setBackIntervals: options.setBackIntervals ?? 10,
    stuckRows: options.stuckRows ?? 30,
    idleAmperes: options.idleAmperes ?? 0.005,
    ...(options.lag && { lag: options.lag }),
  };
  for (const question of settings.questions) requireKey("questions", question, QUESTION_SECONDS);
  requireFinite("rangesPerDefect", settings.rangesPerDefect, 1, 10_000);
  if (!Number.isInteger(settings.rangesPerDefect))
    wrongArgument("rangesPerDefect", settings.rangesPerDefect, "a whole number");
  requirePositive("loadedAmperes", settings.loadedAmperes);
  requireFinite("gapFactor", settings.gapFactor, 1.1, 1e6);
  requireFinite("setBackIntervals", settings.setBackIntervals, 1, 1e9);
  requireFinite("stuckRows", settings.stuckRows, 20, 1e9);
  requireFinite("idleAmperes", settings.idleAmperes, 0, 1e6);
  return settings;
}
