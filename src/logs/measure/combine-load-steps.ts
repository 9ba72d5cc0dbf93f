import { type Estimate, type Refusal, refuse } from "../../numeric/index.js";
import type { LoadStep } from "./load-steps.js";

/** One resistance from several steps. */
export interface CombinedResistance {
  /** Weighted mean, leads included [Ω]. */
  readonly resistanceOhms: Estimate;
  /** `polarisation` as soon as one of the steps says so. */
  readonly includes: "ohmic" | "polarisation";
  readonly steps: number;
  /** Scatter of the steps against their own uncertainties; 1 when they agree, 0 for one step. */
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
 * the steps; drift and gain have one sign in all of them and do not. Where the steps disagree, the part that averages out is
 * widened by the Birge ratio.
 *
 * @param steps of {@link measureLoadSteps}
 * @returns the weighted mean [Ω]
 *
 * Refuses `no-step`.
 *
 * Equation: R = Σ wᵢRᵢ, wᵢ ∝ 1/uᵢ²; u² = max(1, B²)·Σ wᵢ²(u_noise² + u_resolution²) + (Σ wᵢu_drift)² + (Σ wᵢu_gain)².
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
  const values = steps.map((step) => step.resistanceOhms.value);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  // Without noise an uncertainty may be 0: no step shall weigh infinitely much.
  const floor = 1e-6 * most;
  const weights = steps.map((step) => 1 / (step.resistanceOhms.standardUncertainty ** 2 + floor ** 2));
  const sum = weights.reduce((a, b) => a + b, 0);
  let [mean, random, drift, gain] = [0, 0, 0, 0];
  steps.forEach((step, i) => {
    const share = weights[i]! / sum;
    const { noise, resolution, drift: ownDrift, gain: ownGain } = step.contributionsOhms;
    mean += share * values[i]!;
    random += share * share * (noise * noise + resolution * resolution);
    drift += share * ownDrift;
    gain += share * ownGain;
  });
  const squares = values.reduce((total, value, i) => total + weights[i]! * (value - mean) ** 2, 0);
  const birgeRatio = steps.length > 1 ? Math.sqrt(squares / (steps.length - 1)) : 0;
  return {
    resistanceOhms: {
      value: mean,
      standardUncertainty: Math.hypot(Math.max(1, birgeRatio) * Math.sqrt(random), drift, gain),
    },
    includes: steps.some((step) => step.includes === "polarisation") ? "polarisation" : "ohmic",
    steps: steps.length,
    birgeRatio,
    consistent: birgeRatio <= 1.5,
    leastOhms: least,
    mostOhms: most,
  };
}
