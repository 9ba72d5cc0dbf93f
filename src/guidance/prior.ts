import { type Estimate, requireFinite } from "../numeric/index.js";

/** What is known of batteries that come over the counter, before anything is known of this one. */
export interface GuidancePrior {
  /** State of charge as it comes in: a normal distribution cut off at 0 and 1. */
  readonly charge: Estimate;
  /** Ability as a fraction of the rating: a normal distribution cut off at 0.05 and 1.3. */
  readonly ability: Estimate;
  /** Probability that it is damaged or frozen. */
  readonly hazardProbability: number;
  /** Probability that it is not a 12 V battery. */
  readonly otherSystemProbability: number;
  /** Probability that a claim is paid, before terms and sale are known. */
  readonly coveredProbability: number;
}

/**
 * Default of {@link GuidancePrior}. Standing: our choice, without a document: the mean ability lies on the serviceable limit,
 * so that nothing is taken for granted either way, and batteries that come in are rarely full.
 */
export const defaultGuidancePrior: GuidancePrior = {
  charge: { value: 0.65, standardUncertainty: 0.25 },
  ability: { value: 0.8, standardUncertainty: 0.2 },
  hazardProbability: 0.03,
  otherSystemProbability: 0.02,
  coveredProbability: 0.5,
};

/** The default prior with single fields replaced; RangeError naming the field for one that makes no sense. */
export function priorWith(changes: Partial<GuidancePrior> = {}): GuidancePrior {
  for (const key of Object.keys(changes))
    if (!Object.hasOwn(defaultGuidancePrior, key)) throw new RangeError(`prior.${key}: no such field`);
  const prior = { ...defaultGuidancePrior, ...changes };
  for (const key of ["charge", "ability"] as const) {
    requireFinite(`prior.${key}.value`, prior[key].value, 0, 1.3);
    requireFinite(`prior.${key}.standardUncertainty`, prior[key].standardUncertainty, 0.02, 10);
  }
  for (const key of ["hazardProbability", "otherSystemProbability", "coveredProbability"] as const)
    requireFinite(`prior.${key}`, prior[key], 0, 1);
  return prior;
}
