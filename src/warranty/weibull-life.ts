import { logGamma, regularizedLowerGamma, requireFinite } from "../numeric/index.js";

/**
 * How long batteries of one kind live: Weibull distribution. A shape above 1 wears out, 1 fails by chance, below 1 fails
 * early.
 */
export interface WeibullLife {
  /** 0.1..50. */
  readonly shape: number;
  /** Age by which 63.2 % have failed, months, above 0. */
  readonly scaleMonths: number;
}

/** Shapes for which anything is computed; battery lives lie well inside. Our choice. */
export const LEAST_SHAPE = 0.1;
export const LARGEST_SHAPE = 50;

const MOST_SCALE_MONTHS = 1e6;

export function requireLife({ shape, scaleMonths }: WeibullLife): void {
  requireFinite("shape", shape, LEAST_SHAPE, LARGEST_SHAPE);
  requireFinite("scaleMonths", scaleMonths, 1e-6, MOST_SCALE_MONTHS);
}

export const failureShare = ({ shape, scaleMonths }: WeibullLife, months: number): number =>
  -Math.expm1(-((months / scaleMonths) ** shape));

export function partialMean({ shape, scaleMonths }: WeibullLife, months: number): number {
  const a = 1 + 1 / shape;
  return scaleMonths * Math.exp(logGamma(a)) * regularizedLowerGamma(a, (months / scaleMonths) ** shape);
}

/**
 * Share of batteries that have failed by an age.
 *
 * Equation: F(t) = 1 − exp(−(t/η)^b), b shape, η scale.
 *
 * @param life see {@link WeibullLife}
 * @param months age, ≥ 0
 * @returns share, 0..1
 * @throws RangeError when an argument is outside its range
 * @example
 * ```ts
 * import { failureShareBy } from "crankworthy/warranty";
 * failureShareBy({ shape: 2, scaleMonths: 60 }, 24); // => 0.14785621
 * ```
 */
export function failureShareBy(life: WeibullLife, months: number): number {
  requireLife(life);
  requireFinite("months", months, 0);
  return failureShare(life, months);
}

/**
 * Life that the batteries failed by an age contribute to the mean life of all: the integral of t f(t) from 0 to that age.
 *
 * Equation: μ(t) = η γ(1 + 1/b, (t/η)^b), γ the lower incomplete gamma function. Divided by F(t) it is the mean life of
 * those that failed; for a very large age it is the mean life of all.
 *
 * @param life see {@link WeibullLife}
 * @param months age, ≥ 0
 * @returns months
 * @throws RangeError when an argument is outside its range
 * @example
 * ```ts
 * import { partialMeanLifeMonths } from "crankworthy/warranty";
 * partialMeanLifeMonths({ shape: 2, scaleMonths: 60 }, 60); // => 22.73668150
 * ```
 */
export function partialMeanLifeMonths(life: WeibullLife, months: number): number {
  requireLife(life);
  requireFinite("months", months, 0);
  return partialMean(life, months);
}
