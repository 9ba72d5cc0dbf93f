import { type Estimate, type Refusal, refuse } from "../../numeric/index.js";
import type { LoadStep } from "./load-steps.js";

/** One resistance from several steps. */
export interface CombinedResistance {
  /** Weighted mean, leads included [Ω]. */
  readonly resistanceOhms: Estimate;
  /** `polarisation` as soon as one of the steps says so. */
  readonly includes: "ohmic" | "polarisation";
  readonly steps: number;
  /** Scatter of the steps against their own uncertainties, around their mean by these; 1 when they agree, 0 for one step. */
  readonly birgeRatio: number;
  /** False when the steps scatter more than their uncertainties allow (Birge ratio above 1.5, our choice). */
  readonly consistent: boolean;
  /** Smallest and greatest single value [Ω]. */
  readonly leastOhms: number;
  readonly mostOhms: number;
}

/**
 * Combines the resistances of several load steps into one, and says whether they agree.
 *
 * Scope: steps of one battery at one charge and temperature. Each step counts by 1/u². Noise and resolution average out over
 * the steps; drift and gain have one sign in all of them and do not. Where the steps scatter more than they say, each gets the
 * same variance τ² more, so much that they agree (the way of Paule and Mandel, "Consensus values and weighting factors", J. Res. NBS 87
 * (1982) 377; from memory): a step that knows its value to nearly nothing does not carry all the others with it.
 *
 * @param steps of {@link measureLoadSteps}
 * @returns the weighted mean [Ω]
 *
 * Refuses `no-step`.
 *
 * Equation: R = Σ wᵢRᵢ, wᵢ ∝ 1/(uᵢ² + τ²); τ² ≥ 0 the least with Σ (Rᵢ − R)²/(uᵢ² + τ²) ≤ n − 1;
 * u² = Σ wᵢ²(u_noise² + u_resolution² + τ²) + (Σ wᵢu_drift)² + (Σ wᵢu_gain)². A millionth of the greatest value counts as noise.
 * @example
 * ```ts
 * import { combineLoadSteps, measureLoadSteps } from "crankworthy/logs";
 * const seconds = Float64Array.from({ length: 80 }, (_, i) => i / 100);
 * const amperes = seconds.map((t) => (t < 0.2 || t >= 0.5 ? 0 : -100));
 * const { steps } = measureLoadSteps({ seconds, volts: amperes.map((I) => 12.6 + 0.005 * I), amperes }, { leastStepAmperes: 20 });
 * combineLoadSteps(steps).resistanceOhms.value; // => 0.005
 * combineLoadSteps(steps).steps; // => 2
 * ```
 */
export function combineLoadSteps(steps: readonly LoadStep[]): CombinedResistance | Refusal<"no-step"> {
  if (steps.length === 0) return refuse("no-step", "There is no step to combine.", "A log with load steps.");
  const values = Float64Array.from(steps, (step) => step.resistanceOhms.value);
  const [least, most] = [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))];
  // Without noise an uncertainty may be 0: no step shall weigh infinitely much.
  const floor = 1e-6 * most;
  const own = Float64Array.from(steps, (step) => step.resistanceOhms.standardUncertainty ** 2 + floor ** 2);
  const alone = around(values, own, 0);
  const birgeRatio = steps.length > 1 ? Math.sqrt(alone.squares / (steps.length - 1)) : 0;
  const extra = birgeRatio > 1 ? commonVariance(values, own, most - least) : 0;
  const { mean, sum } = extra > 0 ? around(values, own, extra) : alone;
  let [random, drift, gain] = [0, 0, 0];
  steps.forEach((step, i) => {
    const share = 1 / (own[i]! + extra) / sum;
    const { noise, resolution, drift: ownDrift, gain: ownGain } = step.contributionsOhms;
    random += share * share * (noise * noise + resolution * resolution + floor * floor + extra);
    drift += share * ownDrift;
    gain += share * ownGain;
  });
  return {
    resistanceOhms: {
      value: mean,
      standardUncertainty: Math.hypot(Math.sqrt(random), drift, gain),
    },
    includes: steps.some((step) => step.includes === "polarisation") ? "polarisation" : "ohmic",
    steps: steps.length,
    birgeRatio,
    consistent: birgeRatio <= 1.5,
    leastOhms: least,
    mostOhms: most,
  };
}

/** Weighted mean, sum of the weights, and weighted squares around the mean, with `extra` added to each variance. */
function around(values: Float64Array, own: Float64Array, extra: number) {
  let [sum, products, squares] = [0, 0, 0];
  for (let i = 0; i < values.length; i++) {
    const weight = 1 / (own[i]! + extra);
    sum += weight;
    products += weight * values[i]!;
  }
  const mean = products / sum;
  for (let i = 0; i < values.length; i++) squares += (values[i]! - mean) ** 2 / (own[i]! + extra);
  return { mean, sum, squares };
}

/** The variance that, added to each, makes the steps agree; the squares fall as it grows, and at the squared range they are below n − 1. */
function commonVariance(values: Float64Array, own: Float64Array, range: number): number {
  let [low, high] = [0, range ** 2];
  // Relative to the range: 40 halvings of the square make a millionth of it.
  for (let k = 0; k < 40; k++) {
    const middle = (low + high) / 2;
    if (around(values, own, middle).squares > values.length - 1) low = middle;
    else high = middle;
  }
  return high;
}
