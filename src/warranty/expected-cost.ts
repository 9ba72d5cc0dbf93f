import { type Estimate, propagate, type Refusal, refuse, requireFinite } from "../numeric/index.js";
import type { SourceId, Standing } from "../sources/index.js";
import type { WarrantyTerms } from "./terms.js";
import { failureShare, LARGEST_SHAPE, LEAST_SHAPE, partialMean, type WeibullLife } from "./weibull-life.js";

/** What the seller promises. The two combined ones differ in where proration starts, as the terms do. */
export type PromisePolicy =
  | "free-replacement"
  | "pro-rata"
  | "combined-from-purchase"
  | "combined-from-end-of-free-period";

/** A promise in months, as far as its cost depends on it. */
export interface WarrantyPromise {
  readonly policy: PromisePolicy;
  /** Free period, months, 0..`totalMonths`; asked for by the combined policies, left out or consistent with the others. */
  readonly freeMonths?: number;
  /** Whole term, months, above 0; need not be whole. */
  readonly totalMonths: number;
}

/** A promise and how long the batteries live. A {@link WeibullFit} can be spread into it. */
export interface WarrantyCostQuestion extends WarrantyPromise {
  /** 0.1..50, with standard uncertainty when it was fitted. */
  readonly shape: number | Estimate;
  /** Months. */
  readonly scaleMonths: number | Estimate;
  /** Correlation of the logarithms of shape and scale, −1..1; 0 when left out. */
  readonly correlation?: number;
  /** What one replacement costs the seller, any unit of money; 1 when left out, so the result is a share of it. */
  readonly costPerReplacement?: number;
}

/** What a promise costs on average. */
export interface ExpectedWarrantyCost {
  /** Per battery sold, in the unit of `costPerReplacement`; uncertainty from shape and scale only. */
  readonly expectedCost: Estimate;
  /** Share of batteries that fail within the term. */
  readonly failureShareInTerm: number;
  /** Share that fails within the free period. */
  readonly failureShareInFreePeriod: number;
  readonly formula: string;
  readonly source: SourceId;
  readonly standing: Standing;
}

// Formula, source and standing by policy. F share failed, μ partial mean life, w end of free period, W end of term.
const RULES = {
  "free-replacement": ["F(W)", "warranty-choice", "computed"],
  "pro-rata": ["F(W) − μ(W) / W", "blischke-murthy", "from-memory"],
  "combined-from-purchase": ["F(W) − (μ(W) − μ(w)) / W", "ca-18-ccr-3210", "computed"],
  "combined-from-end-of-free-period": [
    "F(w) + [W (F(W) − F(w)) − (μ(W) − μ(w))] / (W − w)",
    "ritchken-1984",
    "computed",
  ],
} as const satisfies Record<PromisePolicy, readonly [string, SourceId, Standing]>;

/**
 * What a warranty costs the seller on average for each battery sold.
 *
 * Scope: the **first claim only**. A replacement that fails in its turn, and a replacement with a term of its own, are not
 * in it: those need a renewal process, which is not modelled here. Every failure within the term is taken to be claimed
 * and accepted, the cost of a replacement to be constant; core deposit, tax and handling are the caller's. Months count
 * continuously. An average is no amount of money to settle: claims are settled in decimals by {@link settleClaim}.
 *
 * Equations, c cost of a replacement, F(t) = 1 − exp(−(t/η)^b), μ(t) = η γ(1 + 1/b, (t/η)^b):
 * free replacement c F(W); pro rata c [F(W) − μ(W)/W]; combined, proration from purchase (drops at w)
 * c {F(W) − [μ(W) − μ(w)]/W}; combined, proration from the end of the free period (continuous)
 * c {F(w) + [W (F(W) − F(w)) − (μ(W) − μ(w))]/(W − w)}.
 *
 * Sources: Blischke & Murthy, Warranty Cost Analysis, chapter 4 (pro rata, from memory); the combined ones worked out from
 * the rebates of 18 CCR 3210 and of Ritchken 1984, equation 2.
 *
 * @param question promise, life and cost
 * @returns the expected cost with the uncertainty that shape and scale bring (first order, in their logarithms)
 * @throws RangeError when an argument is outside its range
 * @example
 * ```ts
 * import { expectedWarrantyCost } from "crankworthy/warranty";
 * const life = { shape: 2, scaleMonths: 60 };
 * const promise = { freeMonths: 24, totalMonths: 60, costPerReplacement: 100 };
 * expectedWarrantyCost({ ...life, ...promise, policy: "combined-from-purchase" }).expectedCost.value; // => 29.197
 * expectedWarrantyCost({ ...life, ...promise, policy: "combined-from-end-of-free-period" }).expectedCost.value; // => 38.805
 * ```
 */
export function expectedWarrantyCost(question: WarrantyCostQuestion): ExpectedWarrantyCost {
  const { policy, totalMonths, costPerReplacement = 1, correlation = 0 } = question;
  const rule = Object.hasOwn(RULES, policy) ? RULES[policy] : undefined;
  if (!rule)
    throw new RangeError(`policy: received ${policy}, expected one of ${Object.keys(RULES).join(", ")}`);
  const shape = asEstimate("shape", question.shape, LEAST_SHAPE, LARGEST_SHAPE);
  const scale = asEstimate("scaleMonths", question.scaleMonths, 1e-6, 1e6);
  requireFinite("totalMonths", totalMonths, 1e-6, 1e5);
  requireFinite("costPerReplacement", costPerReplacement, 0);
  requireFinite("correlation", correlation, -1, 1);
  const freeMonths = freeMonthsOf(question);

  const shareOfCost = ([logShape, logScale]: number[]): number =>
    costShare(
      policy,
      { shape: Math.exp(logShape!), scaleMonths: Math.exp(logScale!) },
      freeMonths,
      totalMonths,
    );
  const inLogarithms = [shape, scale].map(({ value, standardUncertainty }) => ({
    value: Math.log(value),
    standardUncertainty: standardUncertainty / value,
  }));
  const life = { shape: shape.value, scaleMonths: scale.value };
  const [formula, source, standing] = rule;
  return {
    expectedCost: {
      value: costPerReplacement * costShare(policy, life, freeMonths, totalMonths),
      standardUncertainty:
        costPerReplacement * propagate(shareOfCost, inLogarithms, () => correlation).standardUncertainty,
    },
    failureShareInTerm: failureShare(life, totalMonths),
    failureShareInFreePeriod: failureShare(life, freeMonths),
    formula,
    source,
    standing,
  };
}

function costShare(policy: PromisePolicy, life: WeibullLife, free: number, total: number): number {
  const failed = failureShare(life, total);
  if (policy === "free-replacement" || free === total) return failed;
  const fromEnd = policy === "combined-from-end-of-free-period";
  if (fromEnd && total - free < NEARLY_ALL_FREE * total) return meanFailureShare(life, free, total);
  const failedFree = failureShare(life, free);
  const prorated = partialMean(life, total) - partialMean(life, free);
  return fromEnd
    ? failedFree + (total * (failed - failedFree) - prorated) / (total - free)
    : failed - prorated / total;
}

/** A prorated part shorter than this fraction of the term: the formula would divide a difference of equal numbers. */
const NEARLY_ALL_FREE = 1e-3;

// The continuous combined policy is the mean of F over the prorated part; three Gauss points are exact for one so short.
function meanFailureShare(life: WeibullLife, from: number, to: number): number {
  const middle = (from + to) / 2;
  const offset = ((to - from) / 2) * Math.sqrt(0.6);
  const outer = failureShare(life, middle - offset) + failureShare(life, middle + offset);
  return (5 * outer + 8 * failureShare(life, middle)) / 18;
}

function freeMonthsOf({ policy, freeMonths, totalMonths }: WarrantyCostQuestion): number {
  const [least, most] =
    policy === "pro-rata"
      ? [0, 0]
      : policy === "free-replacement"
        ? [totalMonths, totalMonths]
        : [0, totalMonths];
  const months = freeMonths ?? (least === most ? least : Number.NaN);
  requireFinite("freeMonths", months, least, most);
  return months;
}

function asEstimate(name: string, given: number | Estimate, least: number, most: number): Estimate {
  const quantity = typeof given === "number" ? { value: given, standardUncertainty: 0 } : given;
  requireFinite(name, quantity.value, least, most);
  // A life known no better than a factor of e is no life to compute with.
  requireFinite(`${name}.standardUncertainty`, quantity.standardUncertainty, 0, quantity.value);
  return quantity;
}

/**
 * The promise that warranty terms make, for {@link expectedWarrantyCost}.
 *
 * @param terms lengths and proration origin
 * @returns the promise, or a refusal for terms whose cost follows another formula: a step schedule, a free period in days,
 *   or use classes (choose the class and hand in its lengths)
 * @example
 * ```ts
 * import { promiseOf } from "crankworthy/warranty";
 * promiseOf({ freeMonths: 12, totalMonths: 36, prorationOrigin: "purchase" }); // => { policy: "combined-from-purchase", freeMonths: 12, totalMonths: 36 }
 * promiseOf({ freeMonths: 24, totalMonths: 24, prorationOrigin: "purchase" }).policy; // => "free-replacement"
 * ```
 */
export function promiseOf(
  terms: Pick<
    WarrantyTerms,
    "freeMonths" | "totalMonths" | "prorationOrigin" | "freeDays" | "stepSchedule" | "useClasses" | "cap"
  >,
): WarrantyPromise | Refusal<"cost-formula-not-known"> {
  const { freeMonths, totalMonths, prorationOrigin } = terms;
  const other = (["stepSchedule", "freeDays", "useClasses", "cap"] as const).find(
    (key) => terms[key] !== undefined,
  );
  if (other !== undefined) {
    return refuse(
      "cost-formula-not-known",
      `Terms with ${other} do not follow one of the formulas for the expected cost.`,
      "Lengths in months for one use class, without step schedule and cap.",
    );
  }
  if (freeMonths === totalMonths) return { policy: "free-replacement", freeMonths, totalMonths };
  if (freeMonths === 0) return { policy: "pro-rata", totalMonths };
  return { policy: `combined-from-${prorationOrigin}`, freeMonths, totalMonths };
}
