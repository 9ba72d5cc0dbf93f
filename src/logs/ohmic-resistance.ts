import { type Estimate, type Refusal, refuse, wrongArgument } from "../numeric/index.js";
import { type LogSeries, refuseDisorder } from "./series.js";

/** A straight line through voltage against current. */
export interface OhmicFit {
  /** Voltage without current [V]. */
  readonly electromotiveVolts: Estimate;
  /** Resistance between the points where voltage was read, leads included [Ω]. */
  readonly resistanceOhms: Estimate;
  /** Share of the voltage's variance that the line explains (0..1). */
  readonly rSquared: number;
  /** Current taken this many rows after its voltage. */
  readonly lagRows: number;
  readonly pairs: number;
  /** Pairs left out because rows are missing between their two ends. */
  readonly pairsLeftOut: number;
}

type FitRefusal = Refusal<"out-of-order" | "too-few-pairs" | "no-change-of-current" | "not-ohmic">;

/**
 * Fits V = E + R·I (positive current charges) with the current taken a given number of rows after the voltage.
 *
 * Scope: rows at equal steps under a changing load, over a time short enough for the charge to stay the same. Loggers often
 * report current later than voltage; the wrong lag gives too small a resistance. Uncertainties are those of least squares,
 * widened for residuals that follow each other (√((1 + r)/(1 − r)), r the correlation of neighbours).
 *
 * @param series rows in order of time
 * @param lagRows rows by which the current lags, any whole number; negative where it leads
 * @returns E [V], R [Ω], R²
 *
 * Refuses `out-of-order`, `too-few-pairs` (under 10), `no-change-of-current`, `not-ohmic` for R ≤ 0.
 * @example
 * ```ts
 * import { fitOhmicResistance } from "crankworthy/logs";
 * const amperes = Float64Array.from({ length: 40 }, (_, i) => (i % 8 < 4 ? 0 : -100));
 * const series = { seconds: amperes.map((_, i) => i), volts: amperes.map((I) => 12.6 + 0.005 * I), amperes };
 * fitOhmicResistance(series, 0).resistanceOhms.value; // => 0.005
 * ```
 */
export function fitOhmicResistance(series: LogSeries, lagRows: number): OhmicFit | FitRefusal {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  if (!Number.isInteger(lagRows)) wrongArgument("lagRows", lagRows, "a whole number");
  return fitLine(series, lagRows, medianStep(series.seconds));
}

function fitLine(series: LogSeries, lag: number, step: number): OhmicFit | FitRefusal {
  const { seconds, volts, amperes } = series;
  const first = Math.max(0, -lag);
  const last = Math.min(seconds.length, seconds.length - lag);
  const paired = (k: number) => Math.abs(seconds[k + lag]! - seconds[k]! - lag * step) <= step / 2;
  let [pairs, meanVolts, meanAmperes] = [0, 0, 0];
  for (let k = first; k < last; k++) {
    if (!paired(k)) continue;
    pairs++;
    meanVolts += volts[k]!;
    meanAmperes += amperes[k + lag]!;
  }
  if (pairs < 10) return refuse("too-few-pairs", "Fewer than 10 pairs of rows remain.", "A longer log.");
  meanVolts /= pairs;
  meanAmperes /= pairs;
  let [sumII, sumIV, sumVV] = [0, 0, 0];
  for (let k = first; k < last; k++) {
    if (!paired(k)) continue;
    const current = amperes[k + lag]! - meanAmperes;
    const voltage = volts[k]! - meanVolts;
    sumII += current * current;
    sumIV += current * voltage;
    sumVV += voltage * voltage;
  }
  if (!(sumII > 1e-18 * pairs * (1 + meanAmperes * meanAmperes)))
    return refuse("no-change-of-current", "The current never changes.", "A log with a changing load.");
  const slope = sumIV / sumII;
  if (!(slope > 0))
    return refuse("not-ohmic", "Voltage does not rise with current.", "The sign of the current, or the lag.");
  let [squares, neighbours, before] = [0, 0, 0];
  for (let k = first; k < last; k++) {
    if (!paired(k)) continue;
    const residual = volts[k]! - meanVolts - slope * (amperes[k + lag]! - meanAmperes);
    squares += residual * residual;
    neighbours += residual * before;
    before = residual;
  }
  const r = squares > 0 ? Math.min(0.999, Math.max(0, neighbours / squares)) : 0;
  const variance = ((squares / (pairs - 2)) * (1 + r)) / (1 - r);
  const offset = meanVolts - slope * meanAmperes;
  return {
    electromotiveVolts: {
      value: offset,
      standardUncertainty: Math.sqrt(variance * (1 / pairs + meanAmperes ** 2 / sumII)),
    },
    resistanceOhms: { value: slope, standardUncertainty: Math.sqrt(variance / sumII) },
    rSquared: sumVV > 0 ? 1 - squares / sumVV : 1,
    lagRows: lag,
    pairs,
    pairsLeftOut: last - first - pairs,
  };
}

function medianStep(seconds: Float64Array): number {
  const steps = seconds.slice(1).map((time, i) => time - seconds[i]!);
  steps.sort();
  return steps[steps.length >> 1] ?? 0;
}

/** More would look for chance, and take minutes. */
const MOST_LAGS = 10_000;

/** The best fit among several lags. */
export interface OhmicSearch extends OhmicFit {
  /** R² of every lag that gave a line. */
  readonly tried: readonly { readonly lagRows: number; readonly rSquared: number }[];
  /** The best lag is the first or last one tried: a wider search may find a better one. */
  readonly atEdge: boolean;
}

/**
 * Fits V = E + R·I for every lag in a range and keeps the one with the greatest R².
 *
 * @param series rows in order of time, at equal steps
 * @param range first and last lag, in rows; default 0 to 10
 * @returns the best fit, with R² of all; equal R² prefer the earlier lag
 *
 * Refuses as {@link fitOhmicResistance} when no lag gives a line.
 * @example
 * ```ts
 * import { findOhmicResistance } from "crankworthy/logs";
 * const load = (i) => ((i * 7919) % 101 < 50 ? 0 : -100);
 * const seconds = Float64Array.from({ length: 200 }, (_, i) => i * 0.02);
 * const series = { seconds, volts: seconds.map((_, i) => 12.6 + 0.005 * load(i)), amperes: seconds.map((_, i) => load(i - 3)) };
 * findOhmicResistance(series).lagRows; // => 3
 * ```
 */
export function findOhmicResistance(
  series: LogSeries,
  range: { readonly firstLag: number; readonly lastLag: number } = { firstLag: 0, lastLag: 10 },
): OhmicSearch | FitRefusal {
  const { firstLag, lastLag } = range;
  if (!(Number.isInteger(lastLag) && firstLag <= lastLag && lastLag - firstLag <= MOST_LAGS))
    wrongArgument("range", `${firstLag}..${lastLag}`, `whole numbers, rising, at most ${MOST_LAGS} apart`);
  let best = fitOhmicResistance(series, firstLag);
  if ("refused" in best && best.code === "out-of-order") return best;
  const step = medianStep(series.seconds);
  const tried: { lagRows: number; rSquared: number }[] = [];
  for (let lag = firstLag; lag <= lastLag; lag++) {
    const one = lag === firstLag ? best : fitLine(series, lag, step);
    if ("refused" in one) continue;
    tried.push({ lagRows: lag, rSquared: one.rSquared });
    if ("refused" in best || one.rSquared > best.rSquared) best = one;
  }
  if ("refused" in best) return best;
  return { ...best, tried, atEdge: best.lagRows === firstLag || best.lagRows === lastLag };
}
