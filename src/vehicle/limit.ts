import {
  type Estimate,
  normalCdf,
  type Refusal,
  refuse,
  requireEstimate,
  wrongArgument,
} from "../numeric/index.js";
import { deriveProbability } from "../sources/derive.js";
import type { Derivation, SourceId, Standing } from "../sources/index.js";

/** A limit with the spread of what other sources print for the same thing. */
export interface Limit {
  /** The limit that decides. */
  readonly value: number;
  /** Lowest and highest figure in use; both equal `value` where one source is followed. */
  readonly lower: number;
  readonly upper: number;
  readonly source: SourceId;
  readonly standing: Standing;
}

/** @internal A limit as the tables hold it; `read` where no standing is given. */
export type LimitRow = readonly [
  value: number,
  lower: number,
  upper: number,
  source: SourceId,
  standing?: Standing | undefined,
];

/** @internal */
export function limitOf([value, lower, upper, source, standing = "read"]: LimitRow, scale = 1): Limit {
  return { value: value * scale, lower: lower * scale, upper: upper * scale, source, standing };
}

/** What a reading says about a limit. */
export type LimitOutcome = "within-limit" | "beyond-limit" | "not-established";

/** A reading against one limit. */
export interface LimitJudgement {
  readonly outcome: LimitOutcome;
  readonly measured: Estimate;
  readonly limit: Limit;
  /** Distance to the limit in the unit of the reading, positive on the good side; uncertainty that of the reading. */
  readonly margin: Estimate;
  /** Probability that the true value keeps to `limit.value`. */
  readonly probabilityWithin: number;
  /** False where another figure in use, `limit.lower` or `limit.upper`, gives another outcome. */
  readonly sourcesAgree: boolean;
}

/** Settings of every judgement on the vehicle. */
export interface JudgementOptions {
  /** Probability that an outcome needs, strictly between 0.5 and 1. Default 0.95 (our choice). */
  readonly confidence?: number;
}

/** @internal For quantities without a negative side. */
export function refuseNegative(quantity: string): Refusal<"negative-reading"> {
  return refuse("negative-reading", `A ${quantity} is not negative.`, "The sign of the reading.");
}

// Exactly at the limit without uncertainty counts as kept.
function probabilityNotNegative(value: number, u: number): number {
  if (u === 0) return value >= 0 ? 1 : 0;
  const z = value / u;
  return z > 9 ? 1 : normalCdf(z);
}

function outcomeOf(probability: number, confidence: number): LimitOutcome {
  if (probability >= confidence) return "within-limit";
  return probability <= 1 - confidence ? "beyond-limit" : "not-established";
}

/**
 * Compares a reading with a lower (`at-least`) or upper (`at-most`) limit by the conformance probability of JCGM 106.
 *
 * @internal
 */
export function judgeLimit(
  quantity: string,
  unit: string,
  measured: Estimate,
  side: "at-least" | "at-most",
  limit: Limit,
  options?: JudgementOptions,
  derivation?: Derivation,
): LimitJudgement {
  requireEstimate(quantity, measured);
  const { value: figure, lower, upper } = limit;
  if (!(figure >= lower && figure <= upper && upper - lower < Infinity))
    wrongArgument("limit", `${figure} in ${lower}..${upper}`, "lower ≤ value ≤ upper");
  const confidence = options?.confidence ?? 0.95;
  if (!(confidence > 0.5 && confidence < 1)) wrongArgument("confidence", confidence, "0.5 < confidence < 1");
  const sign = side === "at-least" ? 1 : -1;
  const { value, standardUncertainty } = measured;
  const margin: Estimate = { value: sign * (value - limit.value), standardUncertainty };
  const probabilityWithin = probabilityNotNegative(margin.value, standardUncertainty);
  const outcome = outcomeOf(probabilityWithin, confidence);
  const same = (figure: number) =>
    figure === limit.value ||
    outcomeOf(probabilityNotNegative(sign * (value - figure), standardUncertainty), confidence) === outcome;
  derivation?.push({
    quantity: `${quantity}, margin to the limit`,
    formula: sign > 0 ? "measured - limit" : "limit - measured",
    inputs: { measured: measured.value, limit: limit.value, lower: limit.lower, upper: limit.upper },
    result: margin.value,
    unit,
    standardUncertainty: margin.standardUncertainty,
    source: limit.source,
    standing: limit.standing,
  });
  deriveProbability(
    derivation,
    `${quantity}, probability of keeping to the limit`,
    margin,
    probabilityWithin,
  );
  return {
    outcome,
    measured,
    limit,
    margin,
    probabilityWithin,
    sourcesAgree: same(limit.lower) && same(limit.upper),
  };
}
