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
