import type { Estimate } from "./estimate.js";

/** A straight line fitted by least squares, with the covariance of its two parameters. */
export interface FittedLine {
  readonly intercept: Estimate;
  readonly slope: Estimate;
  /** Correlation of intercept and slope, −1..1. */
  readonly correlation: number;
  /** Standard deviation of the residuals. */
  readonly residual: number;
  readonly degreesOfFreedom: number;
  /** The line at x, with the uncertainty of both parameters and their correlation. */
  readonly at: (x: number) => Estimate;
}

/**
 * Ordinary least squares of y = intercept + slope·x, all points weighted alike (JCGM 100 H.3, from memory).
 *
 * @param xs at least three values, not all equal
 * @param ys same length
 * @throws RangeError for fewer points, unequal lengths or equal xs
 */
export function fitLine(xs: readonly number[], ys: readonly number[]): FittedLine {
  const n = xs.length;
  if (n < 3 || ys.length !== n)
    throw new RangeError(`xs, ys: expected 3 or more pairs, received ${n} and ${ys.length}`);
  const meanX = xs.reduce((a, b) => a + b, 0) / n;
  const meanY = ys.reduce((a, b) => a + b, 0) / n;
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < n; i++) {
    sxx += (xs[i]! - meanX) ** 2;
    sxy += (xs[i]! - meanX) * (ys[i]! - meanY);
  }
  if (!(sxx > 0)) throw new RangeError("xs: expected at least two different values, received equal ones");
  const slope = sxy / sxx;
  const intercept = meanY - slope * meanX;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += (ys[i]! - intercept - slope * xs[i]!) ** 2;
  const degreesOfFreedom = n - 2;
  const residual = Math.sqrt(squares / degreesOfFreedom);
  const slopeUncertainty = residual / Math.sqrt(sxx);
  const interceptUncertainty = residual * Math.sqrt(1 / n + meanX ** 2 / sxx);
  return {
    intercept: { value: intercept, standardUncertainty: interceptUncertainty },
    slope: { value: slope, standardUncertainty: slopeUncertainty },
    correlation: -meanX / Math.sqrt(sxx / n + meanX ** 2),
    residual,
    degreesOfFreedom,
    at: (x) => ({
      value: intercept + slope * x,
      standardUncertainty: residual * Math.sqrt(1 / n + (x - meanX) ** 2 / sxx),
    }),
  };
}
