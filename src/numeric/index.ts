/**
 * Numbers with uncertainty, and the few numerical methods the other rooms share. No battery words in here.
 *
 * @module
 */
export {
  COVERAGE_FACTOR_95,
  divide,
  type Estimate,
  estimate,
  type Interval,
  interval95,
  multiply,
  rectangularUncertainty,
  rootSumSquare,
  weightedMean,
} from "./estimate.js";
export { type FittedLine, fitLine } from "./fit-line.js";
export { logGamma, regularizedLowerGamma } from "./gamma.js";
export {
  type FittedCurve,
  fitLeastSquares,
  type LeastSquaresData,
  type LeastSquaresModel,
  type LeastSquaresOptions,
} from "./least-squares.js";
export type { Mutable } from "./mutable.js";
export { erfc, normalCdf, normalPdf, normalQuantile } from "./normal.js";
export { type Interpolant, interpolateLinear, pchip } from "./pchip.js";
export {
  type CalendarDay,
  calendarOf,
  dayNumber,
  dayNumberOf,
  daysInMonth,
  type PlainDate,
  plainDate,
  plainDateOf,
  requireDay,
} from "./plain-date.js";
export { probabilityPositive } from "./probability-positive.js";
export {
  effectiveDegreesOfFreedom,
  monteCarlo,
  type PropagatedEstimate,
  propagate,
  type SimulatedEstimate,
} from "./propagate.js";
export { isRefusal, type Refusal, refuse } from "./refusal.js";
export { requireEstimate, requirePositive, requirePositiveEstimate } from "./require-estimate.js";
export { requireFinite } from "./require-finite.js";
export { requireKey } from "./require-key.js";
export { UtcDate, utcContext } from "./utc-date.js";
export { wrongArgument } from "./wrong-argument.js";
