import type { Estimate } from "./estimate.js";
import { leastSquaresStep, triangularInverse, triangulate } from "./least-squares-qr.js";
import { type Refusal, refuse } from "./refusal.js";
import { requireFinite } from "./require-finite.js";
import { wrongArgument } from "./wrong-argument.js";

/** What is fitted: y(x; parameters). x may be a number or anything else a point is made of. */
export type LeastSquaresModel<X> = (x: X, parameters: readonly number[]) => number;

/** The points. */
export interface LeastSquaresData<X> {
  readonly xs: ArrayLike<X>;
  readonly ys: ArrayLike<number>;
  /** Standard uncertainty of each y (> 0), independent. Weights the points, and sets the scale of the covariance. */
  readonly standardUncertainties?: ArrayLike<number>;
}

/** Settings of {@link fitLeastSquares}. */
export interface LeastSquaresOptions<X> {
  /** Writes ∂y/∂parameter of one point into `row`. Default: central differences. */
  readonly gradient?: (x: X, parameters: readonly number[], row: Float64Array) => void;
  /** Most steps tried. Default 200 (our choice: the NIST problems take up to about 100 from their far start). */
  readonly mostIterations?: number;
  /** Smallest relative change that still counts. Default 1e-12 (our choice: six digits are asked for, twelve cost a step more). */
  readonly tolerance?: number;
}

/** A curve fitted by least squares. */
export interface FittedCurve {
  /** In the order of the start. */
  readonly parameters: readonly Estimate[];
  readonly covariance: readonly (readonly number[])[];
  /** Σ (y − model)², each divided by u² where uncertainties were given. */
  readonly residualSumOfSquares: number;
  /** √(residual sum of squares / degrees of freedom); about 1 where given uncertainties are right. */
  readonly residualStandardDeviation: number;
  readonly degreesOfFreedom: number;
  readonly iterations: number;
  /** What no longer changed: the sum of squares could not fall further, or the parameters moved no more. */
  readonly stopped: "no-reduction" | "no-step";
}

/** Central differences lose the cube root of what a double holds, so this share of a parameter is the best step. */
const DIFFERENCE = 6e-6;
/** A parameter below this, at the start and now, tells nothing of its size. */
const SMALLEST = 1e-12;
/** Squares this small against those of the data are what doubles leave of zero. */
const ROUNDING = 1e-31;
/** Share of the sum of squares that its own rounding hides. */
const UNSEEN = 1e-12;
/** Columns of unit length that leave less than this beside the others are a combination of them. */
const SINGULAR = 1e-12;

/**
 * Nonlinear least squares by the method of Levenberg and Marquardt.
 *
 * Scope: few parameters (up to some ten), smooth models, a start in the right valley. Each step solves the damped linear
 * problem by Householder reflections, never by normal equations; parameters are scaled by the length of their columns.
 * Without uncertainties of the points the covariance is scaled by the scatter of the residuals, with them it is not.
 *
 * @param model y of a point and the parameters; a step to where it is no finite number is taken back
 * @param start one number for each parameter
 * @param data points; as many y as x
 * @param options gradient, iterations, tolerance
 * @returns parameters with standard uncertainty and covariance, sum of squares, degrees of freedom
 * @throws RangeError for start, data or options that are no finite numbers, unequal lengths, uncertainties not above 0
 *
 * Refuses `too-few-points` (not more points than parameters), `singular` (the data do not tell the parameters apart),
 * `not-converged` (steps used up, or the model gives no finite number at the start).
 *
 * Equation: minimise Σ ((yᵢ − f(xᵢ; b))/uᵢ)²; step (JᵀJ + λD²)δ = Jᵀr; covariance s²(JᵀJ)⁻¹. Source: Marquardt, SIAM J. Appl.
 * Math. 11 (1963) 431; Moré, The Levenberg-Marquardt algorithm: implementation and theory (1978); both from memory. Checked
 * with NIST StRD nonlinear regression.
 * @example
 * ```ts
 * import { fitLeastSquares } from "crankworthy/numeric";
 * const xs = [0, 1, 2, 3, 4];
 * const ys = xs.map((x) => 12.6 - 0.4 * Math.exp(-x / 2));
 * const fit = fitLeastSquares((x, [end, drop, tau]) => end - drop * Math.exp(-x / tau), [12, 1, 1], { xs, ys });
 * fit.parameters[0].value; // => 12.6000
 * fit.degreesOfFreedom; // => 2
 * ```
 */
export function fitLeastSquares<X>(
  model: LeastSquaresModel<X>,
  start: readonly number[],
  data: LeastSquaresData<X>,
  options?: LeastSquaresOptions<X>,
): FittedCurve | Refusal<"too-few-points" | "singular" | "not-converged"> {
  const { xs, ys, standardUncertainties: us } = data;
  const m = ys.length;
  const n = start.length;
  const mostIterations = options?.mostIterations ?? 200;
  const tolerance = options?.tolerance ?? 1e-12;
  requireFinite("mostIterations", mostIterations, 1);
  requireFinite("tolerance", tolerance, 1e-15, 0.1);
  if (n === 0 || xs.length !== m || (us && us.length !== m))
    wrongArgument("data", `${xs.length}, ${m}, ${us?.length ?? m} values`, "equal lengths, and parameters");
  for (let j = 0; j < n; j++) requireFinite(`start[${j}]`, start[j]!);
  for (let i = 0; i < m; i++) {
    requireFinite(`ys[${i}]`, ys[i]!);
    if (us) requireFinite(`standardUncertainties[${i}]`, us[i]!, Number.MIN_VALUE);
  }
  if (m <= n) return refuse("too-few-points", "Not more points than parameters.", "More points.");

  const weight = (i: number) => (us ? 1 / us[i]! : 1);
  const residuals = (parameters: readonly number[], into: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < m; i++) {
      into[i] = (ys[i]! - model(xs[i]!, parameters)) * weight(i);
      sum += into[i]! * into[i]!;
    }
    return sum;
  };
  const row = new Float64Array(n);
  /** Columns of J one after the other. */
  const jacobian = (parameters: number[], into: Float64Array): void => {
    if (options?.gradient) {
      for (let i = 0; i < m; i++) {
        options.gradient(xs[i]!, parameters, row);
        for (let j = 0; j < n; j++) into[j * m + i] = row[j]! * weight(i);
      }
      return;
    }
    for (let j = 0; j < n; j++) {
      const at = parameters[j]!;
      const size = Math.max(Math.abs(at), Math.abs(start[j]!));
      const step = DIFFERENCE * (size > SMALLEST ? size : 1);
      const above = at + step;
      const below = at - step;
      for (let i = 0; i < m; i++) {
        parameters[j] = above;
        const upper = model(xs[i]!, parameters);
        parameters[j] = below;
        into[j * m + i] = ((upper - model(xs[i]!, parameters)) / (above - below)) * weight(i);
      }
      parameters[j] = at;
    }
  };

  let parameters = [...start];
  let residual: Float64Array = new Float64Array(m);
  let trialResidual: Float64Array = new Float64Array(m);
  let squares = residuals(parameters, residual);
  let floor = 0;
  for (let i = 0; i < m; i++) floor += ROUNDING * (ys[i]! * weight(i)) ** 2;
  const columns = new Float64Array(n * m);
  const scale = new Float64Array(n);
  let damping = 1e-3;
  let growth = 2;
  let iterations = 0;
  let stopped: FittedCurve["stopped"] | undefined;
  const lost = () =>
    refuse(
      "not-converged",
      "The fit did not settle.",
      "Another start, fewer parameters, or points over a longer range.",
    );
  const unclear = () =>
    refuse("singular", "The points do not tell the parameters apart.", "Fewer parameters, or other points.");
  if (!Number.isFinite(squares)) return lost();
  while (!stopped) {
    jacobian(parameters, columns);
    if (!columns.every(Number.isFinite)) return lost();
    const qr = triangulate(columns, residual, m, n);
    for (let j = 0; j < n; j++) scale[j] = Math.max(scale[j]!, qr.lengths[j]!);
    if (!scale.every((one) => one > 0)) return unclear();
    for (;;) {
      if (++iterations > mostIterations) return lost();
      const { step, predicted } = leastSquaresStep(qr, scale, damping, n);
      const trial = parameters.map((value, j) => value + step[j]!);
      const trialSquares = residuals(trial, trialResidual);
      const reduction = squares - trialSquares;
      const length = Math.hypot(...parameters.map((value, j) => value * scale[j]!));
      const moved = Math.hypot(...step.map((value, j) => value * scale[j]!));
      if (trialSquares <= squares) {
        parameters = trial;
        [residual, trialResidual] = [trialResidual, residual];
        const before = squares;
        squares = trialSquares;
        // Nielsen's rule: damping follows how well the linear model foretold the fall.
        damping *= Math.max(1 / 3, 1 - (2 * (reduction / predicted || 0) - 1) ** 3);
        growth = 2;
        if (squares <= floor || Math.max(predicted, reduction) <= tolerance * tolerance * before)
          stopped = "no-reduction";
        else if (moved <= tolerance * length) stopped = "no-step";
        break;
      }
      damping = Math.max(damping, 1e-16) * growth;
      growth *= 2;
      if (squares <= floor || moved <= 1e-15 * length || predicted <= 1e-15 * squares) {
        stopped = "no-reduction";
        break;
      }
    }
  }
  jacobian(parameters, columns);
  const qr = triangulate(columns, residual, m, n);
  for (let j = 0; j < n; j++) if (!(Math.abs(qr.r[j * n + j]!) > SINGULAR * qr.lengths[j]!)) return unclear();
  // The last digits of a parameter no longer show in the sum of squares: one step without damping, judged by nothing.
  const { step, predicted } = leastSquaresStep(qr, scale, 0, n);
  const trial = parameters.map((value, j) => value + step[j]!);
  const trialSquares = predicted <= UNSEEN * squares ? residuals(trial, trialResidual) : Number.NaN;
  if (trialSquares <= squares * (1 + UNSEEN)) {
    parameters = trial;
    squares = Math.min(squares, trialSquares);
  }
  const degreesOfFreedom = m - n;
  const variance = us ? 1 : squares / degreesOfFreedom;
  const inverse = triangularInverse(qr.r, n);
  const covariance = parameters.map((_, i) =>
    parameters.map((__, j) => {
      let sum = 0;
      for (let k = Math.max(i, j); k < n; k++) sum += inverse[i * n + k]! * inverse[j * n + k]!;
      return sum * variance;
    }),
  );
  return {
    parameters: parameters.map((value, j) => ({ value, standardUncertainty: Math.sqrt(covariance[j]![j]!) })),
    covariance,
    residualSumOfSquares: squares,
    residualStandardDeviation: Math.sqrt(squares / degreesOfFreedom),
    degreesOfFreedom,
    iterations,
    stopped,
  };
}
