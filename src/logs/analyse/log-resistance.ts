import { type Estimate, isRefusal, type Refusal, refuse } from "../../numeric/index.js";
import type { LogChunk } from "../chunk.js";
import { alignCurrent } from "../measure/align-current.js";
import { type CombinedResistance, combineLoadSteps } from "../measure/combine-load-steps.js";
import { type LoadStep, measureLoadSteps } from "../measure/load-steps.js";
import { fitOhmicResistance, type OhmicFit } from "../measure/ohmic-resistance.js";
import type { LogSegment } from "../segments.js";
import type { LogSeries } from "../series.js";
import type { RowWindow } from "./row-window.js";

/** Resistance of the battery with everything between it and the logger, taken in three ways. */
export interface LogResistance {
  /** From steps whose rows lie close enough together in time to be called ohmic. */
  readonly ohmic: CombinedResistance | Refusal<"no-step" | "current-lags">;
  /** From steps further apart: slow changes of voltage are in it. */
  readonly total: CombinedResistance | Refusal<"no-step" | "current-lags">;
  /** Line of voltage against current over the whole log, where it is short enough. */
  readonly line: OhmicFit | Refusal;
  /** Time by which the current was taken to come late [s]: for the steps, what the caller said, or 0. */
  readonly stepLagSeconds: number;
  readonly lineLagSeconds: number;
  /** Steps beyond the first ten thousand, not counted in. */
  readonly stepsLeftOut: number;
}

/** Rows looked at on either side of a border; a segment of fewer rows than `WHOLE_ROWS` is searched as a whole. */
const BORDER_ROWS = 64;
const WHOLE_ROWS = 20_000;
const MOST_STEPS = 10_000;
/** A log up to this long counts as one charge for the line [s]. Our choice. */
const LINE_SECONDS = 3600;

export interface StepResistance {
  push(chunk: LogChunk): void;
  border(before: LogSegment, segment: LogSegment): void;
  /** @param lag what the check found over the whole log */
  finish(lag: Estimate | undefined): LogResistance;
}

const lags = (seconds: number) =>
  refuse(
    "current-lags",
    `The current is reported ${seconds.toPrecision(3)} s after the voltage, so the steps pair the wrong rows.`,
    "The same log again, with currentLagSeconds.",
  );

/** Collects the steps of the load while a log goes by. */
export function createStepResistance(
  leastStepAmperes: number,
  rows: RowWindow,
  lagSeconds: number | undefined,
): StepResistance {
  const stepLagSeconds = lagSeconds ?? 0;
  const steps: LoadStep[] = [];
  let stepsLeftOut = 0;
  let searchedUpTo = Number.NEGATIVE_INFINITY;
  let [pushed, first, last] = [0, Number.NaN, Number.NaN];

  const search = (series: LogSeries): void => {
    const aligned = stepLagSeconds === 0 ? { series } : alignCurrent(series, stepLagSeconds);
    if (isRefusal(aligned)) return;
    const found = measureLoadSteps(aligned.series, { leastStepAmperes, acceptPolarisation: true });
    if (isRefusal(found)) return;
    // Searched stretches overlap.
    for (const step of found.steps) {
      if (step.atSeconds <= searchedUpTo) continue;
      searchedUpTo = step.atSeconds;
      if (steps.length < MOST_STEPS) steps.push(step);
      else stepsLeftOut++;
    }
  };

  return {
    push(chunk) {
      if (pushed === 0) first = chunk.seconds[0]!;
      pushed += chunk.rows;
      last = chunk.seconds[chunk.rows - 1]!;
    },
    border(before, segment) {
      const around = rows.around(segment.fromSeconds, BORDER_ROWS);
      const { seconds } = around.series;
      const small = segment.totals.rows <= WHOLE_ROWS;
      const { leastAmperes, mostAmperes } = segment.totals;
      const [lowest, highest] = [before.totals.leastAmperes, before.totals.mostAmperes];
      const range = Math.max(mostAmperes, highest) - Math.min(leastAmperes, lowest);
      if (!(range >= leastStepAmperes)) return;
      search(
        small ? rows.between(seconds[0] ?? segment.fromSeconds, segment.toSeconds).series : around.series,
      );
    },
    finish(lag) {
      const lineLagSeconds = lagSeconds ?? lag?.value ?? 0;
      // Steps are measured while the log goes by, before its lag is known.
      const late =
        lagSeconds === undefined && lag && Math.abs(lag.value) > 2 * lag.standardUncertainty
          ? lag
          : undefined;
      const of = (includes: LoadStep["includes"]) =>
        late ? lags(late.value) : combineLoadSteps(steps.filter((step) => step.includes === includes));
      return {
        ohmic: of("ohmic"),
        total: of("polarisation"),
        line: line(lineLagSeconds, lagSeconds === undefined ? (lag?.standardUncertainty ?? 0) : 0),
        stepLagSeconds,
        lineLagSeconds,
        stepsLeftOut,
      };
    },
  };

  function line(lag: number, standardUncertainty: number): LogResistance["line"] {
    const kept = rows.between(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
    if (last - first > LINE_SECONDS || kept.series.seconds.length < pushed)
      return refuse(
        "log-too-long",
        "Over so long a log the charge changes, and with it the voltage without current.",
        "fitOhmicResistance on a stretch with a changing load.",
      );
    return fitOhmicResistance(kept.series, lag === 0 ? 0 : { seconds: lag, standardUncertainty });
  }
}
