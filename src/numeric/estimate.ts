/**
 * A quantity with its standard uncertainty, in the words of JCGM 100 (GUM). Both numbers are in the same unit,
 * the unit that the name of the field or function states.
 */
export interface Estimate {
  readonly value: number;
  /** Standard uncertainty (k = 1), ≥ 0, in the unit of `value`. */
  readonly standardUncertainty: number;
}

/** A closed interval, both ends in the unit of the quantity it belongs to. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

/** Half-width of a 95 % interval in standard uncertainties, normal model: the 97.5 % quantile. */
export const COVERAGE_FACTOR_95 = 1.959963984540054;

/**
 * Pairs a value with its standard uncertainty.
 *
 * @param value any finite number
 * @param standardUncertainty ≥ 0, same unit as `value`
 * @example
 * ```ts
 * import { estimate } from "crankworthy/numeric";
 * estimate(12.6, 0.01); // => { value: 12.6, standardUncertainty: 0.01 }
 * ```
 */
export function estimate(value: number, standardUncertainty: number): Estimate {
  return { value, standardUncertainty };
}

/**
 * The interval that covers the quantity with about 95 % probability under a normal model.
 *
 * @param quantity value and standard uncertainty, any unit
 * @returns the interval in the same unit, not clipped to any physical range
 * @example
 * ```ts
 * import { interval95 } from "crankworthy/numeric";
 * interval95({ value: 100, standardUncertainty: 10 }).lower; // => 80.4
 * ```
 */
export function interval95(quantity: Estimate): Interval {
  const halfWidth = COVERAGE_FACTOR_95 * quantity.standardUncertainty;
  return { lower: quantity.value - halfWidth, upper: quantity.value + halfWidth };
}

/** Square root of the sum of squares: how independent standard uncertainties add (JCGM 100 §5.1.2). */
export function rootSumSquare(...components: readonly number[]): number {
  let sum = 0;
  for (const component of components) sum += component * component;
  return Math.sqrt(sum);
}

/** Standard uncertainty of a quantity known only to lie in a range of this full width (JCGM 100 §4.3.7). */
export function rectangularUncertainty(fullWidth: number): number {
  return fullWidth / Math.sqrt(12);
}

/**
 * Quotient of two independent estimates, first order (JCGM 100 §5.1.2).
 *
 * @param numerator any unit
 * @param denominator value must not be 0
 */
export function divide(numerator: Estimate, denominator: Estimate): Estimate {
  const value = numerator.value / denominator.value;
  const fromNumerator = numerator.standardUncertainty / denominator.value;
  const fromDenominator = (value * denominator.standardUncertainty) / denominator.value;
  return { value, standardUncertainty: Math.hypot(fromNumerator, fromDenominator) };
}

/** Product of two independent estimates, first order (JCGM 100 §5.1.2). */
export function multiply(a: Estimate, b: Estimate): Estimate {
  return {
    value: a.value * b.value,
    standardUncertainty: Math.hypot(a.standardUncertainty * b.value, b.standardUncertainty * a.value),
  };
}

/**
 * Mean of independent estimates of one quantity, each weighted by 1/u², and how well they agree.
 *
 * @param estimates at least one, each with standardUncertainty > 0
 * @returns the mean, and `birgeRatio` = √(χ²/(n−1)): near 1 when the estimates agree within their uncertainties,
 *   well above 1 when they do not; 0 for a single estimate
 */
export function weightedMean(estimates: readonly Estimate[]): Estimate & { readonly birgeRatio: number } {
  let weights = 0;
  let sum = 0;
  for (const one of estimates) {
    const weight = 1 / (one.standardUncertainty * one.standardUncertainty);
    weights += weight;
    sum += weight * one.value;
  }
  const value = sum / weights;
  let chiSquared = 0;
  for (const one of estimates) chiSquared += ((one.value - value) / one.standardUncertainty) ** 2;
  const birgeRatio = estimates.length > 1 ? Math.sqrt(chiSquared / (estimates.length - 1)) : 0;
  return { value, standardUncertainty: 1 / Math.sqrt(weights), birgeRatio };
}
