import { type Estimate, normalCdf, normalPdf, normalQuantile, requireFinite } from "../numeric/index.js";

/** Limits of a tolerance; leave one out for a one-sided requirement. Both in the unit of the quantity. */
export interface ToleranceLimits {
  readonly lower?: number;
  readonly upper?: number;
}

/**
 * Probability that the true value of a quantity lies inside its limits, given one estimate and no other knowledge.
 *
 * Normal model: p = Φ((T_U − y)/u) − Φ((T_L − y)/u) (JCGM 106:2012 §7, from memory, checked on its worked examples).
 * With `standardUncertainty` 0 the answer is 1 or 0; a value on the limit conforms.
 *
 * @param quantity value and standard uncertainty (≥ 0), any unit
 * @param limits in the same unit
 * @returns probability in 0..1
 * @example
 * ```ts
 * import { conformanceProbability } from "crankworthy/verdict";
 * // 84 % of its rating, u = 4 %, at least 80 % wanted
 * conformanceProbability({ value: 0.84, standardUncertainty: 0.04 }, { lower: 0.8 }); // => 0.8413
 * ```
 */
export function conformanceProbability(quantity: Estimate, limits: ToleranceLimits): number {
  const { value, standardUncertainty: u } = quantity;
  const { lower, upper } = limits;
  requireFinite("quantity.value", value);
  requireFinite("quantity.standardUncertainty", u, 0);
  if (lower !== undefined && upper !== undefined && lower > upper)
    throw new RangeError(`limits: expected lower <= upper, received ${lower} and ${upper}`);
  if (!(u > 0))
    return (lower === undefined || value >= lower) && (upper === undefined || value <= upper) ? 1 : 0;
  // One-sided cases avoid the difference of two numbers near 1.
  if (upper === undefined) return lower === undefined ? 1 : normalCdf((value - lower) / u);
  if (lower === undefined) return normalCdf((upper - value) / u);
  const centre = (lower + upper) / 2;
  return value > centre
    ? normalCdf((value - lower) / u) - normalCdf((value - upper) / u)
    : normalCdf((upper - value) / u) - normalCdf((lower - value) / u);
}

/** Outcome of comparing an estimate with a lower limit under two guard bands. */
export type LimitDecision = "above" | "below" | "undecided";

/**
 * Compares an estimate with a lower limit: `above` or `below` only when that is as probable as asked for.
 *
 * @param quantity value and standard uncertainty
 * @param limit lower limit, same unit
 * @param probability how sure a statement must be, 0.5..1 (0.5 is shared risk: never undecided)
 */
export function decideAgainstLimit(quantity: Estimate, limit: number, probability: number): LimitDecision {
  const above = conformanceProbability(quantity, { lower: limit });
  if (above >= probability) return "above";
  return 1 - above >= probability ? "below" : "undecided";
}

/**
 * Guarded limits around a lower tolerance limit: at or above `acceptFrom` the quantity conforms with at least this
 * probability, below `rejectBelow` it fails with at least this probability, between them nothing is decided.
 *
 * @param limit lower limit
 * @param standardUncertainty of the measurement, same unit, ≥ 0
 * @param probability one-sided level, 0.5..1, for example 0.95 (guard band 1.645 u)
 * @example
 * ```ts
 * import { guardedLimits } from "crankworthy/verdict";
 * guardedLimits(80, 4, 0.95).acceptFrom; // => 86.6
 * guardedLimits(80, 4, 0.95).rejectBelow; // => 73.4
 * ```
 */
export function guardedLimits(
  limit: number,
  standardUncertainty: number,
  probability: number,
): { readonly acceptFrom: number; readonly rejectBelow: number } {
  requireFinite("standardUncertainty", standardUncertainty, 0);
  requireFinite("probability", probability, 0.5, 1 - Number.EPSILON);
  const guardBand = standardUncertainty === 0 ? 0 : normalQuantile(probability) * standardUncertainty;
  return { acceptFrom: limit + guardBand, rejectBelow: limit - guardBand };
}

/**
 * What a reading says together with what was known before (normal prior, normal measurement).
 *
 * y = (y₀/u₀² + η/u²)/(1/u₀² + 1/u²), u_y = u₀u/√(u₀² + u²) (JCGM 106:2012 §7, from memory).
 *
 * @example
 * ```ts
 * import { withPriorKnowledge } from "crankworthy/verdict";
 * const known = { value: 95, standardUncertainty: 12 };
 * withPriorKnowledge({ value: 84, standardUncertainty: 4 }, known).value; // => 85.1
 * ```
 */
export function withPriorKnowledge(reading: Estimate, prior: Estimate): Estimate {
  requireFinite("reading.standardUncertainty", reading.standardUncertainty, Number.MIN_VALUE);
  requireFinite("prior.standardUncertainty", prior.standardUncertainty, Number.MIN_VALUE);
  const readingWeight = 1 / reading.standardUncertainty ** 2;
  const priorWeight = 1 / prior.standardUncertainty ** 2;
  return {
    value: (reading.value * readingWeight + prior.value * priorWeight) / (readingWeight + priorWeight),
    standardUncertainty: 1 / Math.sqrt(readingWeight + priorWeight),
  };
}

/** Shares of a whole population of items that a decision rule gets wrong. */
export interface GlobalRisks {
  /** Probability that an item is outside the limits. */
  readonly outside: number;
  /** Probability that an item is outside and accepted. */
  readonly consumer: number;
  /** Probability that an item is inside and rejected. */
  readonly producer: number;
  /** Share of the accepted items that are outside. */
  readonly outsideAmongAccepted: number;
}

/** A population of items that is not normal: its density, and where it lies. */
export interface PopulationDensity {
  readonly density: (value: number) => number;
  /** The density is negligible outside these ends. */
  readonly lower: number;
  readonly upper: number;
}

/**
 * Global consumer's and producer's risk of accepting by one reading: how often the decision rule errs over a whole
 * population of items.
 *
 * R_C = ∫_outside g(η)·F(η) dη and R_P = ∫_inside g(η)·(1 − F(η)) dη with F(η) the probability that a reading of η
 * falls inside the acceptance limits (JCGM 106:2012 §9, from memory). Simpson's rule, a normal population over ±9
 * standard deviations.
 *
 * @param population mean and standard deviation of normal items, or any density
 * @param measurementStandardUncertainty of one reading, > 0
 * @param limits tolerance
 * @param acceptance limits applied to the reading, by default the tolerance itself
 * @example
 * ```ts
 * import { globalRisks } from "crankworthy/verdict";
 * // Returned batteries: 85 % ± 15 % of their rating; readings good to 4 %; 80 % wanted, accepted from 86.6 %
 * const risks = globalRisks({ value: 85, standardUncertainty: 15 }, 4, { lower: 80 }, { lower: 86.6 });
 * risks.consumer; // => 0.002
 * risks.producer; // => 0.174
 * ```
 */
export function globalRisks(
  population: Estimate | PopulationDensity,
  measurementStandardUncertainty: number,
  limits: ToleranceLimits,
  acceptance: ToleranceLimits = limits,
): GlobalRisks {
  const { density, lower, upper } = "density" in population ? population : normalPopulation(population);
  const clip = (value: number): number => Math.min(upper, Math.max(lower, value));
  const low = clip(limits.lower ?? lower);
  const high = clip(limits.upper ?? upper);
  const accepted = (eta: number): number =>
    conformanceProbability({ value: eta, standardUncertainty: measurementStandardUncertainty }, acceptance);
  const consumerAt = (eta: number): number => density(eta) * accepted(eta);
  const producerAt = (eta: number): number => density(eta) * (1 - accepted(eta));
  const consumer = simpson(consumerAt, lower, low) + simpson(consumerAt, high, upper);
  const producer = simpson(producerAt, low, high);
  const outside =
    "density" in population
      ? simpson(density, lower, low) + simpson(density, high, upper)
      : 1 - conformanceProbability(population, limits);
  const acceptedShare = consumer + (1 - outside) - producer;
  return {
    outside,
    consumer,
    producer,
    outsideAmongAccepted: acceptedShare > 0 ? consumer / acceptedShare : 0,
  };
}

function normalPopulation({ value: mean, standardUncertainty: sd }: Estimate): PopulationDensity {
  return {
    density: (eta) => normalPdf((eta - mean) / sd) / sd,
    lower: mean - 9 * sd,
    upper: mean + 9 * sd,
  };
}

function simpson(f: (x: number) => number, from: number, to: number): number {
  if (!(to > from)) return 0;
  const intervals = 4000;
  const step = (to - from) / intervals;
  let sum = f(from) + f(to);
  for (let i = 1; i < intervals; i++) sum += f(from + i * step) * (i % 2 === 1 ? 4 : 2);
  return (sum * step) / 3;
}

/**
 * Standard uncertainty of the mean of n repeated readings: only what repeats at random shrinks.
 *
 * u² = u_common² + u_repeat²/n (procedures of JCGM 100 §4.2; common part: calibration, conversion, temperature).
 */
export function repeatedReadingUncertainty(common: number, repeatability: number, readings: number): number {
  return Math.sqrt(common * common + (repeatability * repeatability) / readings);
}
