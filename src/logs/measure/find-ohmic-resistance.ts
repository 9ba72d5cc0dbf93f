import {
  type Estimate,
  rectangularUncertainty,
  requireFinite,
  requirePositive,
  wrongArgument,
} from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";
import { currentLater, medianStep } from "./align-current.js";
import { type FitRefusal, lineThrough, type OhmicLine } from "./ohmic-line.js";
import { currentRowsLater, fitColumn, type OhmicFit } from "./ohmic-resistance.js";
import { threeRows } from "./three-rows.js";

/** More would look for chance, and take minutes. */
const MOST_LAGS = 10_000;

/** The line at the best lag, between the lags tried where the log tells so. */
export interface OhmicSearch extends OhmicFit {
  /**
   * The lag itself [s]. Its uncertainty holds scatter and one row over the number of changes of the load; a load switched in step
   * with the rows tells the lag to a row only, and nothing in the log shows that.
   */
  readonly foundLagSeconds: Estimate;
  /** The line at the best of the lags tried, as `fitOhmicResistance` gives it: nothing of the lag in its uncertainty. */
  readonly bestTried: OhmicFit;
  /** R² of every lag that gave a line. */
  readonly tried: readonly {
    readonly lagRows: number;
    readonly lagSeconds: number;
    readonly rSquared: number;
  }[];
  /** The best lag is the first or last one tried: a wider search may find a better one. */
  readonly atEdge: boolean;
}

/** Lags to try: first and last in rows, or in seconds with the step between them. */
export type LagRange =
  | { readonly firstLag: number; readonly lastLag: number }
  | {
      readonly firstLagSeconds: number;
      readonly lastLagSeconds: number;
      /** Default: the usual time between rows. */
      readonly stepSeconds?: number;
    };

/**
 * Fits V = E + R·I for every lag in a range, keeps the one with the greatest R², and looks for the lag between it and its neighbours.
 *
 * Scope: as `fitOhmicResistance`. Where the load jumps, a lag that is wrong by part of a row makes the resistance
 * too small by that part of row over the time between jumps: 5 % for half a row and a jump every ten. So the voltage is
 * fitted with the current of three rows around the best lag; the centre of their shares is the lag, and the line is taken there with
 * the current interpolated. The uncertainty holds: scatter in blocks of rows with the lag left open, and how far the
 * sum of the three shares is from that line (a current smeared over rows; rectangular, one side). Not in it: what `fitOhmicResistance`
 * names, but for the lag.
 *
 * @param series rows in order of time, at equal steps for a range in rows
 * @param range lags to try; default 0 to 10 rows
 * @returns the line at the lag found, the one at the best lag tried, R² of all; equal R² prefer the earlier lag
 *
 * Refuses as `fitOhmicResistance` when no lag gives a line.
 *
 * Equation: V = E + R·(I₀ + f·(I₊ − I₋)/2) + q·(I₊ − 2I₀ + I₋), I₋, I₀, I₊ the current a row before, at and after the best lag; lag = best + f rows.
 * @example
 * ```ts
 * import { findOhmicResistance } from "crankworthy/logs";
 * const load = (i) => ((i * 7919) % 101 < 50 ? 0 : -100);
 * const seconds = Float64Array.from({ length: 200 }, (_, i) => i * 0.02);
 * const series = { seconds, volts: seconds.map((_, i) => 12.6 + 0.005 * load(i)), amperes: seconds.map((_, i) => load(i - 3)) };
 * findOhmicResistance(series).bestTried.lagRows; // => 3
 * findOhmicResistance(series, { firstLagSeconds: 0, lastLagSeconds: 0.2 }).foundLagSeconds.value; // => 0.06
 * ```
 */
export function findOhmicResistance(
  series: LogSeries,
  range: LagRange = { firstLag: 0, lastLag: 10 },
): OhmicSearch | FitRefusal {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  const step = medianStep(series.seconds);
  const inRows = "firstLag" in range;
  const lags = lagsIn(range, step);
  /** Rows or seconds in one unit of a lag. */
  const rowsEach = inRows ? 1 : step > 0 ? 1 / step : 0;
  const secondsEach = inRows ? step : 1;
  const column = (lag: number) =>
    inRows ? currentRowsLater(series, lag, step) : currentLater(series, lag, step);
  const lineAt = (amperes: Float64Array, lag: number) =>
    fitColumn(series, amperes, lag * rowsEach, lag * secondsEach);

  const lines = lags.map((lag) => lineThrough(series.volts, column(lag)));
  let at = 0;
  for (let i = 1; i < lines.length; i++) {
    const [best, one] = [lines[at]!, lines[i]!];
    if (!("refused" in one) && ("refused" in best || one.rSquared > best.rSquared)) at = i;
  }
  const lag = lags[at]!;
  const bestTried = lineAt(column(lag), lag);
  if ("refused" in bestTried) return bestTried;
  const tried = lines.flatMap((one, i) =>
    "refused" in one
      ? []
      : [
          {
            lagRows: lags[i]! * rowsEach,
            lagSeconds: lags[i]! * secondsEach,
            rSquared: one.rSquared,
          },
        ],
  );
  const atEdge = at === 0 || at === lines.length - 1;
  const found = { bestTried, tried, atEdge };
  const row = inRows ? 1 : step;
  const shares =
    row > 0 ? threeRows(series.volts, column(lag - row), column(lag), column(lag + row)) : undefined;
  const beyond = shares ? lag + shares.centre * row : lag;
  const between = Math.min(lags.at(-1)!, Math.max(lags[0]!, beyond));
  const refined =
    shares && between !== lag ? lineAt(shares.mixedAt((between - lag) / row), between) : bestTried;
  if (!shares || "refused" in refined) {
    const others = parabolaShift(lines[at - 1], lines[at], lines[at + 1]);
    const gap = (lags[1] ?? lag + row) - lags[0]!;
    return {
      ...bestTried,
      resistanceOhms: widened(bestTried.resistanceOhms, others),
      foundLagSeconds: {
        value: bestTried.lagSeconds,
        standardUncertainty: rectangularUncertainty(gap * secondsEach),
      },
      ...found,
    };
  }
  const { value, standardUncertainty } = refined.resistanceOhms;
  const scatter = Math.max(standardUncertainty, shares.standardUncertaintyOhms);
  const lagDoubt = Math.hypot(shares.standardUncertaintyCentre * row, beyond - between);
  return {
    ...refined,
    resistanceOhms: widened({ value, standardUncertainty: scatter }, (shares.ohms - value) / Math.sqrt(3)),
    foundLagSeconds: { value: refined.lagSeconds, standardUncertainty: lagDoubt * secondsEach },
    ...found,
  };
}

const widened = ({ value, standardUncertainty }: Estimate, by: number): Estimate => ({
  value,
  standardUncertainty: Math.hypot(standardUncertainty, by),
});

function lagsIn(range: LagRange, step: number): number[] {
  if ("firstLag" in range) {
    const { firstLag, lastLag } = range;
    if (!(Number.isInteger(firstLag) && Number.isInteger(lastLag) && firstLag <= lastLag))
      wrongArgument("range", `${firstLag}..${lastLag}`, "whole numbers, rising");
    requireFinite("range, lags", lastLag - firstLag, 0, MOST_LAGS);
    return Array.from({ length: lastLag - firstLag + 1 }, (_, i) => firstLag + i);
  }
  const { firstLagSeconds, lastLagSeconds, stepSeconds } = range;
  requireFinite("firstLagSeconds", firstLagSeconds);
  requireFinite("lastLagSeconds", lastLagSeconds, firstLagSeconds);
  if (stepSeconds !== undefined) requirePositive("stepSeconds", stepSeconds);
  const between = stepSeconds ?? step;
  const steps = between > 0 ? (lastLagSeconds - firstLagSeconds) / between : 0;
  requireFinite("range, lags", steps, 0, MOST_LAGS);
  return Array.from({ length: Math.floor(steps + 1e-6) + 1 }, (_, i) => firstLagSeconds + i * between);
}

/** Change of R from the best lag to the top of the parabola through its R² and its neighbours'. */
function parabolaShift(
  before: OhmicLine | FitRefusal | undefined,
  best: OhmicLine | FitRefusal | undefined,
  after: OhmicLine | FitRefusal | undefined,
): number {
  if (!before || !best || !after || "refused" in before || "refused" in best || "refused" in after) return 0;
  const top = (a: number, b: number, c: number) => ({ slope: (c - a) / 2, bend: (a + c) / 2 - b });
  const square = top(before.rSquared, best.rSquared, after.rSquared);
  if (!(square.bend < 0)) return 0;
  const offset = -square.slope / (2 * square.bend);
  const ohms = top(before.ohms, best.ohms, after.ohms);
  return Math.abs(ohms.slope * offset + ohms.bend * offset * offset);
}
