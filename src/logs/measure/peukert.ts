import {
  type Estimate,
  fitLine,
  type Interval,
  type Refusal,
  refuse,
  requireFinite,
  requirePositiveEstimate,
} from "../../numeric/index.js";

/** A discharge at constant current to the same end voltage. */
export interface PeukertRun {
  /** Mean current out of the battery, either as a number or with its uncertainty [A] (> 0). */
  readonly amperes: Estimate | number;
  /** Time to the end voltage [h] (> 0). */
  readonly hours: Estimate | number;
  /** Place in the order of the runs, or the day it ran: what ageing, warming or a drifting charge would follow. */
  readonly order: number;
}

/** Why an exponent says nothing of the rate. */
export type PeukertDoubt =
  | "rate-and-order-confounded"
  | "fewer-than-three-rates"
  | "interval-reaches-below-one";

/** Exponent of Peukert's law fitted to runs. */
export interface PeukertFit {
  /** Never moved to 1: what the runs give. */
  readonly exponent: Estimate;
  /** 95 %, Student's t with runs − 2 degrees of freedom. */
  readonly interval: Interval;
  /** True when the exponent can be read as an effect of the rate. */
  readonly identifiable: boolean;
  readonly doubts: readonly PeukertDoubt[];
  readonly runs: number;
  readonly distinctRates: number;
  /** Of ln I and order, −1..1; 0 where all have the same order. */
  readonly correlation: number;
  /** Of their ranks (Spearman), −1..1. */
  readonly rankCorrelation: number;
  /** Scatter of ln t about the line. */
  readonly residual: number;
}

/** Currents this much apart count as two rates. Our choice: a load holds its current within 2 %. */
const RATE_STEP = 1.05;
/**
 * From this correlation on, either kind, rate and order are not told apart. Our choice: at 0.9 the variance of an effect
 * beside the other is 1/(1 − 0.81) = 5 times what it would be alone, a usual limit of the variance inflation factor.
 */
const CONFOUNDED = 0.9;

/**
 * Peukert's exponent from several discharges of one battery, with a statement whether it means anything.
 *
 * Scope: constant current, same end voltage and temperature, fully charged before each run. Least squares of ln t against ln I.
 * The uncertainty holds the scatter of the runs and the uncertainties given with them; not what changed from run to run in
 * step with the rate: that is what `identifiable` is for. An exponent below 1 is reported as it is.
 *
 * @param runs at least 3
 * @returns exponent with uncertainty and interval, and the doubts; none: `identifiable`
 * @throws RangeError for currents or times not above 0, and an order that is no finite number
 *
 * Refuses `too-few-runs` (fewer than 3), `same-current` (all within 5 %).
 *
 * Equation: ln t = c − k·ln I; u² = u_fit² + Σ (wᵢ·u(ln tᵢ))² + (k·wᵢ·u(ln Iᵢ))², wᵢ = (ln Iᵢ − mean)/Σ(ln I − mean)². Source: Peukert's law in
 * the form of `ratings`; limits our choice.
 * @example
 * ```ts
 * import { fitPeukert } from "crankworthy/logs";
 * const runs = [[5, 20, 2], [10, 8.7055, 3], [20, 3.7893, 1], [7, 13.356, 4]].map(([amperes, hours, order]) => ({ amperes, hours, order }));
 * const fit = fitPeukert(runs);
 * fit.exponent.value; // => 1.200
 * fit.identifiable; // => true
 * ```
 */
export function fitPeukert(
  runs: readonly PeukertRun[],
): PeukertFit | Refusal<"too-few-runs" | "same-current"> {
  const points = runs.map((run, i) => {
    const current = logOf(`runs[${i}].amperes`, run.amperes);
    const time = logOf(`runs[${i}].hours`, run.hours);
    requireFinite(`runs[${i}].order`, run.order, -1e12, 1e12);
    return { current, time, order: run.order };
  });
  if (points.length < 3)
    return refuse("too-few-runs", "Fewer than three runs leave no scatter to judge by.", "More runs.");
  const currents = points.map(({ current }) => current.value);
  const distinctRates = countRates(currents);
  if (distinctRates < 2)
    return refuse("same-current", "All runs had the same current within 5 %.", "Runs at other currents.");
  const line = fitLine(
    currents,
    points.map(({ time }) => time.value),
  );
  const k = -line.slope.value;
  const mean = currents.reduce((a, b) => a + b, 0) / currents.length;
  const squares = currents.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  let given = 0;
  for (const { current, time } of points) {
    const weight = (current.value - mean) / squares;
    given += weight ** 2 * (time.standardUncertainty ** 2 + (k * current.standardUncertainty) ** 2);
  }
  const ofFit = line.slope.standardUncertainty;
  const half = Math.hypot(studentT(line.degreesOfFreedom) * ofFit, 1.96 * Math.sqrt(given));
  const interval = { lower: k - half, upper: k + half };
  const orders = points.map(({ order }) => order);
  const correlation = correlate(currents, orders);
  const rankCorrelation = correlate(ranks(currents), ranks(orders));
  const doubts: PeukertDoubt[] = [];
  if (Math.max(Math.abs(correlation), Math.abs(rankCorrelation)) >= CONFOUNDED)
    doubts.push("rate-and-order-confounded");
  if (distinctRates < 3) doubts.push("fewer-than-three-rates");
  if (interval.lower < 1) doubts.push("interval-reaches-below-one");
  return {
    exponent: { value: k, standardUncertainty: Math.hypot(ofFit, Math.sqrt(given)) },
    interval,
    identifiable: doubts.length === 0,
    doubts,
    runs: points.length,
    distinctRates,
    correlation,
    rankCorrelation,
    residual: line.residual,
  };
}

/** ln of a quantity; relative uncertainty to first order. */
function logOf(name: string, quantity: Estimate | number): Estimate {
  const given = typeof quantity === "number" ? { value: quantity, standardUncertainty: 0 } : quantity;
  requirePositiveEstimate(name, given);
  return { value: Math.log(given.value), standardUncertainty: given.standardUncertainty / given.value };
}

function countRates(logs: readonly number[]): number {
  let count = 0;
  let rate = Number.NEGATIVE_INFINITY;
  for (const one of [...logs].sort((a, b) => a - b)) {
    if (one <= rate + Math.log(RATE_STEP)) continue;
    rate = one;
    count++;
  }
  return count;
}

function correlate(xs: readonly number[], ys: readonly number[]): number {
  const meanX = xs.reduce((a, b) => a + b, 0) / xs.length;
  const meanY = ys.reduce((a, b) => a + b, 0) / ys.length;
  let [xx, xy, yy] = [0, 0, 0];
  for (const [i, x] of xs.entries()) {
    xx += (x - meanX) ** 2;
    xy += (x - meanX) * (ys[i]! - meanY);
    yy += (ys[i]! - meanY) ** 2;
  }
  return xx > 0 && yy > 0 ? Math.max(-1, Math.min(1, xy / (Math.sqrt(xx) * Math.sqrt(yy)))) : 0;
}

/** Equal values share the mean of their ranks. */
function ranks(values: readonly number[]): number[] {
  return values.map((one) => {
    const below = values.filter((other) => other < one).length;
    return below + (values.filter((other) => other === one).length + 1) / 2;
  });
}

// 97.5 % quantiles of Student's t, 1 to 10 degrees of freedom; beyond, Cornish and Fisher's expansion about the normal one
// (Abramowitz & Stegun 26.7.5, from memory) is good to 1e-4.
const STUDENT = [12.7062, 4.3027, 3.1824, 2.7764, 2.5706, 2.4469, 2.3646, 2.306, 2.2622, 2.2281] as const;

/** @internal */
export function studentT(degreesOfFreedom: number): number {
  const listed = STUDENT[degreesOfFreedom - 1];
  if (listed !== undefined) return listed;
  const z = 1.959963984540054;
  const inverse = 1 / degreesOfFreedom;
  const first = (z ** 3 + z) / 4;
  const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const third = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  return z + inverse * (first + inverse * (second + inverse * third));
}
