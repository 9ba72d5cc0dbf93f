import type { Estimate } from "./estimate.js";

/** A result with the share that each input's uncertainty has in it, signed: sensitivity × standard uncertainty. */
export interface PropagatedEstimate extends Estimate {
  readonly contributions: readonly number[];
}

/**
 * Carries the uncertainty of inputs through any function, to first order and with correlation.
 *
 * u² = ΣΣ cᵢ·cⱼ·rᵢⱼ with cᵢ = ½·[f(xᵢ + uᵢ) − f(xᵢ − uᵢ)] (JCGM 100 §5.1.4 note 2 and §5.2.2, from memory). Good while the
 * function is nearly straight within ±u; where it bends, compare with {@link monteCarlo}.
 *
 * @param f function of the inputs in their order
 * @param inputs values and standard uncertainties
 * @param correlation rᵢⱼ for i, j, in −1..1; independent when left out. Only i < j is asked for.
 * @example
 * ```ts
 * import { propagate } from "crankworthy/numeric";
 * // Ability from 12 V-type numbers: 480 A ± 20 A against 600 A ± 0 A
 * const ratio = propagate(([measured, rated]) => measured / rated, [
 *   { value: 480, standardUncertainty: 20 },
 *   { value: 600, standardUncertainty: 0 },
 * ]);
 * ratio.standardUncertainty; // => 0.0333
 * ```
 */
export function propagate(
  f: (values: number[]) => number,
  inputs: readonly Estimate[],
  correlation?: (i: number, j: number) => number,
): PropagatedEstimate {
  const values = inputs.map((input) => input.value);
  const contributions = inputs.map(({ value, standardUncertainty }, i) => {
    const shifted = [...values];
    shifted[i] = value + standardUncertainty;
    const above = f(shifted);
    shifted[i] = value - standardUncertainty;
    return (above - f(shifted)) / 2;
  });
  let variance = 0;
  for (let i = 0; i < contributions.length; i++) {
    variance += contributions[i]! ** 2;
    if (correlation)
      for (let j = i + 1; j < contributions.length; j++)
        variance += 2 * correlation(i, j) * contributions[i]! * contributions[j]!;
  }
  return { value: f(values), standardUncertainty: Math.sqrt(Math.max(0, variance)), contributions };
}

/**
 * Effective degrees of freedom of a combined uncertainty (Welch-Satterthwaite, JCGM 100 §G.4.1, from memory).
 *
 * @param components each independent contribution to the result with its degrees of freedom (Infinity when known exactly)
 */
export function effectiveDegreesOfFreedom(
  components: readonly { readonly standardUncertainty: number; readonly degreesOfFreedom: number }[],
): number {
  let variance = 0;
  let quartic = 0;
  for (const { standardUncertainty, degreesOfFreedom } of components) {
    variance += standardUncertainty ** 2;
    quartic += standardUncertainty ** 4 / degreesOfFreedom;
  }
  return variance ** 2 / quartic;
}

/** What a Monte Carlo run shows of a quantity. */
export interface SimulatedEstimate extends Estimate {
  /** Shortest-tail-free 95 % interval: the 2.5 % and 97.5 % quantiles of the draws. */
  readonly interval: { readonly lower: number; readonly upper: number };
}

/**
 * Carries distributions through a function by drawing (JCGM 101, from memory): the check of {@link propagate} where a
 * function bends. The same seed gives the same result on every machine.
 *
 * @param f function of the inputs in their order
 * @param inputs values and standard uncertainties, each taken as normal and independent
 * @param draws how many, default 20 000
 * @param seed whole number
 */
export function monteCarlo(
  f: (values: number[]) => number,
  inputs: readonly Estimate[],
  draws = 20_000,
  seed = 1,
): SimulatedEstimate {
  const random = uniform(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const results = new Float64Array(draws);
  let sum = 0;
  for (let n = 0; n < draws; n++) {
    const result = f(inputs.map(({ value, standardUncertainty }) => value + standardUncertainty * normal()));
    results[n] = result;
    sum += result;
  }
  const mean = sum / draws;
  let squares = 0;
  for (const result of results) squares += (result - mean) ** 2;
  results.sort();
  return {
    value: mean,
    standardUncertainty: Math.sqrt(squares / (draws - 1)),
    interval: { lower: results[Math.floor(0.025 * draws)]!, upper: results[Math.ceil(0.975 * draws) - 1]! },
  };
}

// "mulberry32", a public-domain generator of 32-bit words: plenty for a check, not for secrets.
function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
