import { requireFinite } from "../numeric/index.js";

/**
 * The limits of a decision. None of them is set by a standard for starter batteries in the field, so each is a
 * visible value the caller can replace; the defaults are this library's choice and say what they lean on.
 */
export interface DecisionPolicy {
  /** At or above this fraction of its rating a battery is serviceable. Default 0.8: leans on trade habit (0.7-0.8). */
  readonly serviceableFraction: number;
  /** Below this fraction of its rating a battery is unserviceable. Default 0.6: leans on trade habit. */
  readonly unserviceableFraction: number;
  /** How probable "serviceable" must be before the battery is called so. Default 0.95 (guarded acceptance). */
  readonly acceptProbability: number;
  /** How probable a defect must be before the battery is condemned. Default 0.95 (guarded rejection). */
  readonly rejectProbability: number;
  /** State of charge needed to judge ability and to hand a battery back. Default 0.75: workshop manuals' 12.4 V. */
  readonly sufficientCharge: number;
  /** How probable that charge must be before a low ability counts against the battery. Default 0.9. */
  readonly sufficientChargeProbability: number;
  /** Largest gravity difference between cells after a full charge. Default 0.050; stricter: 0.030, 0.025. */
  readonly cellSpread: 0.025 | 0.03 | 0.05;
}

/** Defaults of {@link DecisionPolicy}; standing: our choice. */
export const defaultPolicy: DecisionPolicy = {
  serviceableFraction: 0.8,
  unserviceableFraction: 0.6,
  acceptProbability: 0.95,
  rejectProbability: 0.95,
  sufficientCharge: 0.75,
  sufficientChargeProbability: 0.9,
  cellSpread: 0.05,
};

const SHARES = ["serviceableFraction", "unserviceableFraction", "sufficientCharge"] as const;
const PROBABILITIES = ["acceptProbability", "rejectProbability", "sufficientChargeProbability"] as const;

/**
 * The default policy with single values replaced.
 *
 * @param changes limits and probabilities to replace
 * @throws RangeError naming the field for an unknown field, a value out of range, or limits in the wrong order
 * @example
 * ```ts
 * import { policyWith } from "crankworthy/verdict";
 * policyWith({ serviceableFraction: 0.7 }).unserviceableFraction; // => 0.6
 * ```
 */
export function policyWith(changes: Partial<DecisionPolicy>): DecisionPolicy {
  for (const key of Object.keys(changes))
    if (!Object.hasOwn(defaultPolicy, key)) throw new RangeError(`policy.${key}: no such field`);
  const policy = { ...defaultPolicy, ...changes };
  for (const key of SHARES) requireFinite(`policy.${key}`, policy[key], 0.01, 2);
  for (const key of PROBABILITIES) requireFinite(`policy.${key}`, policy[key], 0.5, 0.999999);
  if (policy.unserviceableFraction > policy.serviceableFraction)
    throw new RangeError("policy.unserviceableFraction: expected at most serviceableFraction");
  if (![0.025, 0.03, 0.05].includes(policy.cellSpread))
    throw new RangeError(`policy.cellSpread: expected 0.025, 0.03 or 0.05, received ${policy.cellSpread}`);
  return policy;
}
