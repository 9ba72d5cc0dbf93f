import { wrongArgument } from "../numeric/index.js";
import type { Exclusion } from "./terms.js";

/** What the workshop established, in the words of the verdict. */
export interface ClaimFacts {
  /** `serviceable`, `worn`, `unserviceable`, `internally-failed` or `not-established`. */
  readonly condition: string;
  /** `keep`, `charge-then-keep`, `charge-then-repeat`, `repeat`, `retire`, `isolate` or `stop`. */
  readonly action: string;
  /** Damage and circumstances seen, by the names of {@link Exclusion}; others are ignored here. */
  readonly damage: readonly string[];
  /** Probability that the battery misses its limit, 0..1. */
  readonly rejectionProbability?: number;
  /** Probability the policy asks for before a claim is accepted, 0..1. */
  readonly requiredProbability: number;
  /** Fully charged before the decisive test (or charging was tried and failed). */
  readonly charged: boolean;
  /** The decisive test was repeated and confirmed. */
  readonly repeated: boolean;
  /** Exclusions of the terms. */
  readonly exclusions: readonly Exclusion[];
}

/** Why a claim can or cannot be made; exclusions appear under their own names. */
export type EligibilityEvidence =
  | Exclusion
  | "no-defect-found"
  | "recharge-and-test-again"
  | "repeat-the-test"
  | "no-trustworthy-measurement"
  | "rejection-not-certain-enough"
  | "not-this-system"
  | "hazard-decides"
  | "rejection-certain-enough"
  | "failed-inside";

/** Whether the battery itself qualifies for a claim. */
export interface Eligibility {
  readonly answer: "claimable" | "not-yet" | "excluded";
  /** All grounds of the answer. */
  readonly evidence: readonly EligibilityEvidence[];
}

/**
 * Tells whether the battery qualifies for a claim, from facts found elsewhere.
 *
 * Scope: condition, damage and the quality of the measurement. A battery that is merely discharged is never refused:
 * it is to be recharged and tested again first. A claim needs its own, stricter probability than calling a battery
 * unserviceable does (our choice, after the guard bands of JCGM 106).
 *
 * @param facts see {@link ClaimFacts}
 * @returns `claimable`, `not-yet` (with what is still to be done) or `excluded` (with the evidence)
 * @throws RangeError when a probability is not within 0..1
 * @example
 * ```ts
 * import { claimEligibility } from "crankworthy/warranty";
 * const tested = { condition: "worn", action: "retire", damage: [], requiredProbability: 0.95, exclusions: [] };
 * const facts = { ...tested, rejectionProbability: 0.98, charged: true, repeated: true };
 * claimEligibility(facts).answer; // => "claimable"
 * claimEligibility({ ...facts, charged: false }).evidence; // => ["recharge-and-test-again"]
 * ```
 */
export function claimEligibility(facts: ClaimFacts): Eligibility {
  const { condition, action, rejectionProbability, requiredProbability } = facts;
  for (const one of [requiredProbability, rejectionProbability ?? 0]) {
    if (!(one >= 0 && one <= 1)) wrongArgument("probability", one, "0..1");
  }
  const excluded = facts.exclusions.filter((one) => facts.damage.includes(one));
  if (excluded.length > 0) return { answer: "excluded", evidence: excluded };
  if (action === "stop") return { answer: "not-yet", evidence: ["not-this-system"] };
  const failedInside = condition === "internally-failed";
  // A hazard forbids the charge that a certain answer would need; only an inner failure speaks without it.
  const hazard = action === "isolate";
  if (hazard && !failedInside) return { answer: "not-yet", evidence: ["hazard-decides"] };

  const open: EligibilityEvidence[] = [];
  if (!hazard && (!facts.charged || action === "charge-then-keep" || action === "charge-then-repeat")) {
    open.push("recharge-and-test-again");
  }
  const defective = failedInside || condition === "worn" || condition === "unserviceable";
  if (!defective) {
    if (condition === "serviceable") {
      if (open.length === 0) return { answer: "excluded", evidence: ["no-defect-found"] };
    } else if (open.length === 0) open.push("no-trustworthy-measurement");
    return { answer: "not-yet", evidence: open };
  }
  if (!hazard && (!facts.repeated || action === "repeat")) open.push("repeat-the-test");
  // An inner failure is shown by its own evidence; a probability counts only where one was stated.
  if (rejectionProbability === undefined) {
    if (!failedInside) open.push("no-trustworthy-measurement");
  } else if (rejectionProbability < requiredProbability) open.push("rejection-not-certain-enough");
  if (open.length > 0) return { answer: "not-yet", evidence: open };
  const evidence: EligibilityEvidence[] = failedInside ? ["failed-inside"] : [];
  if (rejectionProbability !== undefined) evidence.push("rejection-certain-enough");
  return { answer: "claimable", evidence };
}
