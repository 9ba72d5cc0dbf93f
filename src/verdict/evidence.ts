import type { Estimate } from "../numeric/index.js";

/** Damage a person can see, hear or smell. */
export type DamageSign = "cracked" | "leaking" | "swollen" | "burnt-post" | "loose-post" | "sulfur-smell";

/** What the rest reading says about the system: see the bands of `vehicle`'s system voltage. */
export type SystemReading =
  | "twelve-volt"
  | "other"
  | "unclear"
  | "no-voltage"
  | "not-at-rest"
  | "reversed"
  | "reversed-after-check"
  | "not-measured";

/** How well the battery is charged, as far as the readings say. */
export interface ChargeEvidence {
  /** Fraction of full charge; not clipped to 0..1. */
  readonly stateOfCharge: Estimate;
  /** `upper`: surface charge was not ruled out, the true charge may be anything below. */
  readonly bound: "two-sided" | "upper";
  /** False when voltage and gravity contradict each other; true or left out otherwise. */
  readonly consistent?: boolean;
}

/** Ability as a fraction of the rating, from one way of measuring it. */
export interface AbilityEvidence {
  readonly from: "cranking-estimate" | "internal-resistance" | "conductance";
  /** 1 = the rating. */
  readonly ratio: Estimate;
}

/** Outcome of an adjustable-load test. */
export interface LoadTestEvidence {
  readonly passProbability: number;
  readonly marginVolts: Estimate;
  readonly limitVolts: number;
  /** Whether a pass, and whether a failure, counts in spite of `invalidReasons`. */
  readonly passStands: boolean;
  readonly failStands: boolean;
  readonly invalidReasons: readonly string[];
  /** True when an earlier test failed and the battery was charged in between. */
  readonly repeated: boolean;
}

/** Gravity differences between cells. */
export interface CellEvidence {
  readonly spread: number;
  /** Probability that the true spread exceeds the policy's limit. */
  readonly exceedProbability: number;
  /** Number of the weakest cell, counted from 1 at the positive post or as the caller counts. */
  readonly weakestCell: number;
  /** False with fresh water not yet mixed in: then the spread shows no defect. */
  readonly mixed: boolean;
}

/** A rest voltage that is short of one or more whole cells. */
export interface MissingCellEvidence {
  readonly cells: number;
  readonly shortfallVolts: number;
}

/** Everything the rules look at; the room `evaluate` fills it, and it can be filled by hand. */
export interface Evidence {
  readonly damage: readonly DamageSign[];
  readonly frozen: "seen" | "possible" | "no";
  readonly freezing?: { readonly temperatureCelsius: number; readonly freezingPointCelsius: number };
  readonly electrolyteLow: boolean;
  readonly system: SystemReading;
  readonly systemVolts?: number;
  /** The charger had finished, or three hourly readings were equal, before this test. */
  readonly chargeCompleted: boolean;
  readonly charge?: ChargeEvidence;
  readonly missingCell?: MissingCellEvidence;
  readonly cells?: CellEvidence;
  readonly abilities: readonly AbilityEvidence[];
  /** An ability was measured that cannot be compared with the label. */
  readonly abilityNotComparable?: boolean;
  readonly loadTest?: LoadTestEvidence;
  /** Relative scatter of repeated readings beyond what repeatability explains, if there were several. */
  readonly scatter?: { readonly relative: number; readonly limit: number };
  /** Spread between placings of the clamps, relative, and what the repeatability within a placing explains. */
  readonly contact?: { readonly between: number; readonly within: number; readonly limit: number };
  /** What in the vehicle lowers a reading of ability made there: a consumer that is on, a path that loses voltage. */
  readonly inVehicle?: { readonly loadOn: boolean; readonly wiringFault: boolean };
  /** Probability that the battery starts the caller's engine on the coldest expected morning. */
  readonly startProbability?: number;
}
