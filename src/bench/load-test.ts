import {
  type Estimate,
  probabilityPositive,
  requireEstimate,
  requireFinite,
  requireKey,
} from "../numeric/index.js";
import { derive, deriveProbability } from "../sources/derive.js";
import type { Derivation } from "../sources/index.js";
import {
  type LoadLimitRefusal,
  type LoadRule,
  loadTestCurrentAmperes,
  loadTestLimitVolts,
} from "./load-limit.js";
import { loadLimitProfiles } from "./load-test.data.js";

/** Lowest state of charge at which a load test may be judged [1]. */
export const LOAD_TEST_MINIMUM_CHARGE = 0.75;
const DURATION_SECONDS = 15;
// Our choice: a stopwatch in hand.
const DURATION_TOLERANCE_SECONDS = 2;
// Our choice: held within ±5 % is on the mark, beyond ±10 % the limit no longer belongs to the load.
const LOAD_NEAR = 0.05;
const LOAD_FAR = 0.1;
// Our choice: gas and the larger part of the surface charge need about an hour to go ("no load test on a freshly charged,
// gassing battery", workshop practice; gassing up to 1 h after the charger is off, a stationary-battery text).
const GASSING_HOURS = 1;
/** No reading of a workshop is larger. */
const MOST = 1e6;

const CHARGE_RULE = { source: "charge-before-load", standing: "read" } as const;
const MARGIN_RULE = { source: "load-half-rating", standing: "read" } as const;

/** Why an outcome does not count. `harder` conditions spare a pass, `easier` ones spare a failure. */
export type LoadTestFault =
  | "charge-below-75-percent"
  | "charge-unknown"
  | "temperature-unknown"
  | "duration-too-short"
  | "duration-too-long"
  | "load-too-low"
  | "load-too-high"
  | "load-basis-unknown"
  | "just-charged";

export type LoadTestNote =
  | "charge-uncertain"
  | "load-off-nominal"
  | "load-fits-three-times-capacity"
  | "strictest-limit";

export interface LoadTestInput {
  /** Terminal voltage 15 s into the load [V] (≥ 0). */
  readonly volts: number;
  readonly voltsStandardUncertainty: number;
  readonly loadAmperes: number;
  readonly seconds: number;
  /** Of the electrolyte [°C]; unknown: judged against the highest limit of the table, where only a pass counts. */
  readonly temperatureCelsius?: Estimate;
  readonly stateOfCharge?: Estimate;
  /** Since the end of the last charge or drive [h] (≥ 0); left out: not known, not judged. */
  readonly hoursSinceCharge?: number;
  /** Surface charge was drawn off before the test by lamps or a load; then the hours do not matter. */
  readonly surfaceChargeRemoved?: boolean;
  /** Cold-cranking rating [A]. */
  readonly ratedCrankingAmperes?: number;
  readonly capacityAmpereHours?: number;
  readonly nominalVolts?: 12 | 6;
  readonly profile?: keyof typeof loadLimitProfiles;
}

export interface LoadTestOutcome {
  readonly limitVolts: Estimate;
  readonly marginVolts: Estimate;
  /** Probability that the true voltage is at or above the true limit. */
  readonly passProbability: number;
  /** Probability that charge was at least 75 %; absent when the charge is unknown. */
  readonly chargeSufficientProbability?: number;
  /** True when nothing speaks against using the outcome either way. */
  readonly valid: boolean;
  readonly invalidReasons: readonly LoadTestFault[];
  /** Whether a pass would stand in spite of the reasons (conditions were harder), and a failure (easier). */
  readonly passStands: boolean;
  readonly failStands: boolean;
  readonly rule?: LoadRule;
  readonly notes: readonly LoadTestNote[];
}

// Conditions that make the test easier than meant: a pass proves nothing, a failure still does.
const EASIER: readonly LoadTestFault[] = ["duration-too-short", "load-too-low", "just-charged"];

/**
 * Judges an adjustable-load test: margin to the limit with the uncertainty of both, and whether the test may count.
 *
 * In scope: one battery, constant load, 15 s. Out of scope: what to do next (a first low result means charge and
 * repeat), frozen batteries.
 *
 * @param input see {@link LoadTestInput}
 * @param derivation receives the steps when given
 * @returns margin [V], probability, validity with reasons; refusal where the table says nothing about the temperature
 *
 * Validity (our choice over the sources): charge of at least 75 % more likely than not (a note up to 95 %), 13 to 17 s, load within
 * ±10 % of half the rating (a note beyond ±5 %), or of three times the capacity when no rating is known; at least 1 h
 * since a charge or drive, where the time is given, unless surface charge was drawn off: before, gas and surface charge
 * hold the voltage up, so a pass does not stand and a failure does.
 * Equation: pass probability = Φ((V − limit)/√(u(V)² + u(limit)²)). Source: see {@link loadTestLimitVolts}.
 * @example
 * ```ts
 * import { judgeLoadTest } from "crankworthy/bench";
 * const outcome = judgeLoadTest({
 *   volts: 9.9,
 *   voltsStandardUncertainty: 0.02,
 *   loadAmperes: 260,
 *   seconds: 15,
 *   temperatureCelsius: { value: 22, standardUncertainty: 3 },
 *   stateOfCharge: { value: 0.95, standardUncertainty: 0.09 },
 *   ratedCrankingAmperes: 520,
 * });
 * "valid" in outcome && outcome.valid; // => true
 * "valid" in outcome && outcome.marginVolts.value; // => 0.3
 * ```
 */
export function judgeLoadTest(
  input: LoadTestInput,
  derivation?: Derivation,
): LoadTestOutcome | LoadLimitRefusal {
  const { volts, loadAmperes, seconds, temperatureCelsius, stateOfCharge, profile = "usual" } = input;
  const { nominalVolts = 12, ratedCrankingAmperes, capacityAmpereHours } = input;
  const { hoursSinceCharge, surfaceChargeRemoved = false } = input;
  requireFinite("volts", volts, 0, MOST);
  requireFinite("voltsStandardUncertainty", input.voltsStandardUncertainty, 0, MOST);
  requireFinite("loadAmperes", loadAmperes, 0, MOST);
  requireFinite("seconds", seconds, 0, MOST);
  requireKey("profile", profile, loadLimitProfiles);
  if (stateOfCharge) requireEstimate("stateOfCharge", stateOfCharge);
  if (hoursSinceCharge !== undefined) requireFinite("hoursSinceCharge", hoursSinceCharge, 0);
  const invalidReasons: LoadTestFault[] = [];
  const notes: LoadTestNote[] = [];

  const rows = loadLimitProfiles[profile].rows;
  const warmest = { value: 0, standardUncertainty: 0 };
  if (!temperatureCelsius) {
    const top = rows[rows.length - 1]![0];
    warmest.value = loadLimitProfiles[profile].unit === "F" ? (top - 32) / 1.8 : top;
    invalidReasons.push("temperature-unknown");
    notes.push("strictest-limit");
  }
  const limitVolts = loadTestLimitVolts(temperatureCelsius ?? warmest, { profile, nominalVolts });
  if ("refused" in limitVolts) return limitVolts;

  let chargeSufficientProbability: number | undefined;
  if (stateOfCharge) {
    const above = {
      value: stateOfCharge.value - LOAD_TEST_MINIMUM_CHARGE,
      standardUncertainty: stateOfCharge.standardUncertainty,
    };
    chargeSufficientProbability = probabilityPositive(above);
    if (derivation) {
      const inputs = { charge: stateOfCharge.value, least: LOAD_TEST_MINIMUM_CHARGE };
      derive(
        derivation,
        "charge above the least for a load test",
        "charge − least",
        inputs,
        above,
        "1",
        CHARGE_RULE,
      );
      const quantity = "probability of enough charge for a load test";
      deriveProbability(derivation, quantity, above, chargeSufficientProbability);
    }
    if (chargeSufficientProbability < 0.5) invalidReasons.push("charge-below-75-percent");
    else if (chargeSufficientProbability < 0.95) notes.push("charge-uncertain");
  } else invalidReasons.push("charge-unknown");

  if (hoursSinceCharge !== undefined && hoursSinceCharge < GASSING_HOURS && !surfaceChargeRemoved)
    invalidReasons.push("just-charged");
  if (seconds < DURATION_SECONDS - DURATION_TOLERANCE_SECONDS) invalidReasons.push("duration-too-short");
  if (seconds > DURATION_SECONDS + DURATION_TOLERANCE_SECONDS) invalidReasons.push("duration-too-long");

  const current = loadTestCurrentAmperes({
    ...(ratedCrankingAmperes !== undefined && { coldCrankingAmperes: ratedCrankingAmperes }),
    ...(capacityAmpereHours !== undefined && { capacityAmpereHours }),
  });
  let basisUnknown = false;
  if ("amperes" in current) {
    const deviation = loadAmperes / current.amperes - 1;
    if (deviation < -LOAD_FAR) invalidReasons.push("load-too-low");
    else if (deviation > LOAD_FAR) invalidReasons.push("load-too-high");
    else if (Math.abs(deviation) > LOAD_NEAR) notes.push("load-off-nominal");
    const other = current.otherRuleAmperes;
    if (other && Math.abs(deviation) > LOAD_FAR && Math.abs(loadAmperes / other - 1) <= LOAD_FAR)
      notes.push("load-fits-three-times-capacity");
  } else {
    basisUnknown = true;
    invalidReasons.push("load-basis-unknown");
  }

  const marginVolts = {
    value: volts - limitVolts.value,
    standardUncertainty: Math.hypot(input.voltsStandardUncertainty, limitVolts.standardUncertainty),
  };
  const passProbability = probabilityPositive(marginVolts);
  if (derivation) {
    derive(
      derivation,
      "load-test limit",
      "straight line between the rows of the table",
      { temperature: temperatureCelsius?.value ?? "unknown", profile, nominalVolts },
      limitVolts,
      "V",
      loadLimitProfiles[profile],
    );
    const inputs = { voltage: volts, limit: limitVolts.value, load: loadAmperes, seconds };
    derive(
      derivation,
      "load-test margin",
      "voltage under load − limit",
      inputs,
      marginVolts,
      "V",
      MARGIN_RULE,
    );
    deriveProbability(derivation, "load-test pass probability", marginVolts, passProbability);
  }
  return {
    limitVolts,
    marginVolts,
    passProbability,
    ...(chargeSufficientProbability !== undefined && { chargeSufficientProbability }),
    valid: invalidReasons.length === 0,
    invalidReasons,
    passStands: !basisUnknown && !invalidReasons.some((reason) => EASIER.includes(reason)),
    failStands: !basisUnknown && invalidReasons.every((reason) => EASIER.includes(reason)),
    ...("rule" in current && { rule: current.rule }),
    notes,
  };
}
