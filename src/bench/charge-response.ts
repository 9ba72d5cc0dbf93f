import {
  type Estimate,
  probabilityPositive,
  type Refusal,
  refuse,
  requireFinite,
  requireKey,
  requirePositive,
} from "../numeric/index.js";
import { derive, deriveProbability } from "../sources/derive.js";
import type { Derivation } from "../sources/index.js";
import { type ChargeChemistry, chargeProfiles } from "./charge-plan.data.js";

/** Limit of the three-minute charge [V]: 15.5 read in one maker's manuals; 16.5 for calcium types, from memory and unsure, is not used. */
const THREE_MINUTE_LIMIT: Estimate = { value: 15.5, standardUncertainty: 0.1 / Math.sqrt(3) };
const THREE_MINUTE = { source: "workshop-three-minute", standing: "read" } as const;
const ACCEPTANCE = { source: "workshop-charge-acceptance", standing: "read" } as const;
/** No reading of a workshop is larger. */
const MOST = 1e6;

export interface ThreeMinuteOutcome {
  readonly limitVolts: Estimate;
  /** Limit minus highest voltage [V]; negative: the plates resist the charge. */
  readonly marginVolts: Estimate;
  readonly passProbability: number;
  /** False unless started at 30 to 42 A and watched for three minutes. */
  readonly valid: boolean;
}

/**
 * Judges the three-minute charge: how high the voltage goes at about 40 A; high means sulfated plates.
 *
 * In scope: conventional flooded batteries that failed a load test. Out of scope, refused: calcium, EFB, AGM and gel.
 *
 * @param input kind, highest voltage [V] with uncertainty, current at the start [A] (40; 30..42 counts), time watched [s] (180; 165..195 counts)
 * @param derivation receives the steps when given
 * @returns margin [V] to 15.5 V (±0.1, rectangular, our choice); refusal for other kinds
 *
 * Source: a vehicle maker's workshop manual (read); 30 to 40 A in vocational texts (from memory).
 * @example
 * ```ts
 * import { judgeThreeMinuteCharge } from "crankworthy/bench";
 * const charge = judgeThreeMinuteCharge({
 *   chemistry: "flooded",
 *   highestVolts: 16,
 *   voltsStandardUncertainty: 0.05,
 *   startAmperes: 40,
 *   seconds: 180,
 * });
 * "marginVolts" in charge && charge.marginVolts.value; // => -0.5
 * ```
 */
export function judgeThreeMinuteCharge(
  input: {
    readonly chemistry: ChargeChemistry;
    readonly highestVolts: number;
    readonly voltsStandardUncertainty: number;
    readonly startAmperes: number;
    readonly seconds: number;
  },
  derivation?: Derivation,
): ThreeMinuteOutcome | Refusal<"flooded-only"> {
  const { chemistry, highestVolts, voltsStandardUncertainty, startAmperes, seconds } = input;
  requireKey("chemistry", chemistry, chargeProfiles);
  requireFinite("highestVolts", highestVolts, 0, MOST);
  requireFinite("voltsStandardUncertainty", voltsStandardUncertainty, 0, MOST);
  requireFinite("startAmperes", startAmperes, 0, MOST);
  requireFinite("seconds", seconds, 0, MOST);
  if (chemistry !== "flooded")
    return refuse(
      "flooded-only",
      `The three-minute charge has no confirmed limit for ${chemistry}.`,
      "The charge acceptance after five minutes instead.",
    );
  const marginVolts = {
    value: THREE_MINUTE_LIMIT.value - highestVolts,
    standardUncertainty: Math.hypot(THREE_MINUTE_LIMIT.standardUncertainty, voltsStandardUncertainty),
  };
  const passProbability = probabilityPositive(marginVolts);
  const inputs = { limit: THREE_MINUTE_LIMIT.value, highest: highestVolts };
  derive(
    derivation,
    "three-minute charge, margin",
    "limit − highest",
    inputs,
    marginVolts,
    "V",
    THREE_MINUTE,
  );
  deriveProbability(derivation, "three-minute charge, pass probability", marginVolts, passProbability);
  return {
    limitVolts: THREE_MINUTE_LIMIT,
    marginVolts,
    passProbability,
    valid: startAmperes >= 30 && startAmperes <= 42 && Math.abs(seconds - 180) <= 15,
  };
}

/**
 * Least charging current five minutes into a charge, below which a discharged battery does not accept charge.
 *
 * @param capacityAmpereHours rated capacity [Ah] (> 0)
 * @param derivation receives the step when given
 * @returns current [A] the battery must exceed: 10 % of the capacity
 *
 * Scope: one vehicle maker's rule, discharged battery, charger not limiting. Source: workshop manual 2015 (read).
 * @example
 * ```ts
 * import { leastAcceptedAmperes } from "crankworthy/bench";
 * leastAcceptedAmperes(60); // => 6
 * ```
 */
export function leastAcceptedAmperes(capacityAmpereHours: number, derivation?: Derivation): number {
  requirePositive("capacityAmpereHours", capacityAmpereHours);
  const amperes = 0.1 * capacityAmpereHours;
  const inputs = { capacity: capacityAmpereHours };
  derive(derivation, "least accepted current", "0.1 × capacity", inputs, amperes, "A", ACCEPTANCE);
  return amperes;
}
