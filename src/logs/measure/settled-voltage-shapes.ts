import { fitLeastSquares, isRefusal } from "../../numeric/index.js";
import { partOf, type Solved, solveParts, weigh } from "./settled-voltage-grid.js";
import type { Guess, Readings } from "./settled-voltage-readings.js";

/** How the distance from the settled voltage fades. @internal */
export type RelaxationModel = "one-exponential" | "two-exponential" | "broad";

/** What one model says. @internal */
export interface ModelFit {
  readonly model: RelaxationModel;
  readonly chiSquared: number;
  /** Slowest last. Natural logarithm of the time constants [s] and its standard uncertainty; empty when not told apart. */
  readonly logSeconds: readonly { readonly value: number; readonly standardUncertainty: number }[];
  /** Of the settled voltage and the logarithm of the slow time constant. */
  readonly correlation: number;
  readonly guesses: readonly Guess[];
}

const EULER = 0.5772156649015329;

/**
 * Exponential integral E₁(x), x > 0: what is left after time x of exponentials spread evenly over the logarithm of their time
 * constant up to 1. Series below 1, continued fraction above (Abramowitz & Stegun 5.1.11, 5.1.22, from memory). @internal
 */
export function exponentialIntegral(x: number): number {
  if (x > 700) return 0;
  if (x <= 1) {
    let sum = -EULER - Math.log(x);
    let term = 1;
    for (let k = 1; k < 20; k++) {
      term *= -x / k;
      sum -= term / k;
    }
    return sum;
  }
  let fraction = 0;
  for (let k = 60; k >= 1; k--) fraction = k / (1 + k / (x + fraction));
  return Math.exp(-x) / (x + fraction);
}

const fading = (model: RelaxationModel, seconds: number, tau: number): number => {
  if (seconds === Number.POSITIVE_INFINITY) return 0;
  return model === "broad" ? exponentialIntegral(seconds / tau) : Math.exp(-seconds / tau);
};

/** Two time constants nearer to each other than this are one. Our choice. */
export const LEAST_RATIO = 5;
const NODES = 32;

/**
 * Fits a model twice: on a grid of time constants, where voltage and amplitudes follow from a linear problem, and by
 * Levenberg and Marquardt from the best point of the grid. Where the second tells the slow time constant within `sharp`
 * it speaks for the model, otherwise the whole grid does. @internal
 */
export function fitModel(
  model: RelaxationModel,
  readings: Readings,
  wanted: number,
  slow: { readonly lower: number; readonly upper: number },
  sharp: number,
): ModelFit | undefined {
  const { seconds, volts, uncertainties } = readings;
  const n = seconds.length;
  const two = model === "two-exponential";
  const linear = two ? 3 : 2;
  if (n < linear) return undefined;
  const last = seconds[n - 1]!;
  const quickest = Math.min(slow.lower / LEAST_RATIO, Math.max(seconds[0]! / 2, last / 200));
  const logs = (from: number, to: number) =>
    Array.from({ length: NODES }, (_, i) => Math.log(from) + (i / (NODES - 1)) * Math.log(to / from));
  const weighted = weigh(readings);
  const part = (log: number) => {
    const tau = Math.exp(log);
    return partOf((time) => fading(model, time, tau), log, seconds, weighted, wanted);
  };
  const slows = logs(slow.lower, slow.upper).map(part);
  const fasts = two ? logs(quickest, slow.upper / LEAST_RATIO).map(part) : [];
  const apart = Math.log(LEAST_RATIO);
  const nodes = slows.flatMap((one) =>
    two
      ? fasts.filter((fast) => one.logSeconds - fast.logSeconds >= apart).map((fast) => [fast, one])
      : [[one]],
  );
  const solved: Solved[] = [];
  for (const node of nodes) {
    const one = solveParts(weighted, node);
    // Parts of one relaxation all go the same way.
    if (one && !(two && one.amplitudes[1]! * one.amplitudes[2]! < 0)) solved.push(one);
  }
  if (solved.length === 0) return undefined;
  const best = solved.reduce((a, b) => (b.chiSquared < a.chiSquared ? b : a));
  const ofGrid: ModelFit = {
    model,
    chiSquared: best.chiSquared,
    logSeconds: [],
    correlation: 0,
    guesses: solved.map(({ chiSquared, guess }) => ({
      ...guess,
      weight: Math.exp((best.chiSquared - chiSquared) / 2),
    })),
  };
  const fit = fitLeastSquares(
    (time: number, [end, ...rest]) => {
      let sum = end!;
      for (let i = 0; i < rest.length; i += 2) sum -= rest[i + 1]! * fading(model, time, Math.exp(rest[i]!));
      return sum;
    },
    [
      best.amplitudes[0]!,
      ...best.parts.flatMap(({ logSeconds }, i) => [logSeconds, best.amplitudes[i + 1]!]),
    ],
    { xs: seconds, ys: volts, standardUncertainties: uncertainties },
    {
      mostIterations: 60,
      tolerance: 1e-8,
      gradient: (time, at, row) => {
        row[0] = 1;
        for (let i = 1; i < at.length; i += 2) row.set(slopes(model, time, at[i]!, at[i + 1]!), i);
      },
    },
  );
  if (isRefusal(fit)) return ofGrid;
  const slowAt = fit.parameters.length - 2;
  const slowLog = fit.parameters[slowAt]!;
  if (!(slowLog.standardUncertainty <= sharp)) return { ...ofGrid, chiSquared: fit.residualSumOfSquares };
  const amplitudes = fit.parameters.filter((_, i) => i > 0 && i % 2 === 0);
  const logSeconds = fit.parameters.filter((_, i) => i % 2 === 1);
  if (two) {
    const [fast, other] = amplitudes;
    const between = logSeconds[1]!.value - logSeconds[0]!.value;
    if (!(fast!.value * other!.value > 0 && between >= apart)) return ofGrid;
    if (amplitudes.some((one) => Math.abs(one.value) < 2 * one.standardUncertainty)) return ofGrid;
  }
  const gradient = [
    1,
    ...amplitudes.flatMap((_, i) => slopes(model, wanted, logSeconds[i]!.value, amplitudes[i]!.value)),
  ];
  let variance = 0;
  let value = fit.parameters[0]!.value;
  for (let i = 0; i < gradient.length; i++)
    for (let j = 0; j < gradient.length; j++)
      variance += gradient[i]! * gradient[j]! * fit.covariance[i]![j]!;
  for (const [i, one] of amplitudes.entries())
    value -= one.value * fading(model, wanted, Math.exp(logSeconds[i]!.value));
  return {
    model,
    chiSquared: fit.residualSumOfSquares,
    logSeconds,
    correlation:
      fit.covariance[0]![slowAt]! / (fit.parameters[0]!.standardUncertainty * slowLog.standardUncertainty),
    guesses: [{ value, standardUncertainty: Math.sqrt(variance), weight: 1 }],
  };
}

/** ∂V/∂ln τ and ∂V/∂amplitude of one part at a time. */
function slopes(model: RelaxationModel, time: number, log: number, amplitude: number): [number, number] {
  if (time === Number.POSITIVE_INFINITY) return [0, 0];
  const x = time / Math.exp(log);
  // d E₁(x)/d ln τ = exp(−x); d exp(−x)/d ln τ = x·exp(−x).
  return [-amplitude * Math.exp(-x) * (model === "broad" ? 1 : x), -fading(model, time, Math.exp(log))];
}
