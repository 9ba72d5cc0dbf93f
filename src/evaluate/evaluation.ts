import type { ChargePlan } from "../bench/index.js";
import type {
  Chemistry,
  CombinedCharge,
  GravityChargeReading,
  VoltageChargeReading,
} from "../charge-state/index.js";
import type { DateCodeResult } from "../date-codes/index.js";
import type { LabelReading } from "../label-codes/index.js";
import type { Estimate, Interval, PlainDate, Refusal } from "../numeric/index.js";
import type { RatingStandard } from "../ratings/index.js";
import type { Derivation } from "../sources/index.js";
import type { ColdStart } from "../temperature/index.js";
import type {
  CrankingReason,
  DrawOutcome,
  FlatBatteryExplanation,
  LimitJudgement,
  StandingTime,
} from "../vehicle/index.js";
import type { Action, Cause, Caution, Condition, Finding, FindingCode } from "../verdict/index.js";
import type { Eligibility, Settlement } from "../warranty/index.js";

/** The rating the ability is held against. */
export interface ReferenceCranking {
  readonly standard: RatingStandard;
  /** A; no uncertainty for a printed rating, a wide one for an estimate from a JIS type. */
  readonly amperes: Estimate;
  readonly from: "printed" | "label-code" | "type-estimate";
}

/** What is it. */
export interface IdentitySection {
  readonly chemistry: Chemistry;
  readonly nominalVolts?: number;
  readonly label?: LabelReading;
  readonly rating?: ReferenceCranking;
  /** Ah at the 20 h rate: printed, read from the code, or estimated from the reserve capacity. */
  readonly capacityAmpereHours?: Estimate;
  readonly reserveCapacityMinutes?: Estimate;
}

/** How old is it: every reading of the code, and the oldest and youngest age that any of them allows. */
export interface AgeSection {
  readonly dateCode: DateCodeResult;
  readonly ageDays: Interval;
}

/** How charged. */
export interface ChargeSection {
  readonly stateOfCharge: Estimate;
  /** About 95 %; the upper end alone for a bound. Not clipped to 0..1. */
  readonly interval: Interval;
  readonly bound: "two-sided" | "upper";
  readonly from: "voltage" | "gravity" | "voltage-and-gravity";
  readonly voltage?: VoltageChargeReading;
  readonly gravity?: GravityChargeReading;
  readonly combined?: CombinedCharge;
}

/** How much of the rated ability is left, by one way of measuring it. */
export interface AbilitySection {
  /** Fraction of the rating. */
  readonly ratio: Estimate;
  readonly interval: Interval;
  readonly from: "cranking-estimate" | "internal-resistance" | "conductance";
  /** A in the label's standard, for a cranking estimate. */
  readonly amperes?: Estimate;
  readonly standard?: RatingStandard;
  readonly converted?: boolean;
  /** The reading before any conversion, in its own standard: what a further conversion starts from. */
  readonly measured?: { readonly amperes: Estimate; readonly standard: RatingStandard };
}

/** Outcome of the load test, as a person reads it. */
export interface LoadTestSection {
  readonly limitVolts: number;
  readonly marginVolts: Estimate;
  readonly passProbability: number;
  readonly invalidReasons: readonly string[];
}

/** One reading of the vehicle against one limit. */
export interface VehicleReading extends LimitJudgement {
  readonly code:
    | "cranking-voltage"
    | "cranking-current"
    | "starting-positive-drop"
    | "starting-ground-drop"
    | "starting-ground-resistance"
    | "solenoid-drop"
    | "solenoid-resistance"
    | "regulated-voltage-least"
    | "regulated-voltage-most"
    | "unloaded-rise-least"
    | "unloaded-rise-most"
    | "loaded-rise-least"
    | "charging-positive-drop"
    | "charging-ground-drop"
    | "ripple"
    | "draw-expected"
    | "draw-search";
  readonly unit: "V" | "A" | "mΩ";
  /** Reasons to take the outcome with care. */
  readonly doubts: readonly string[];
}

/** What the circuits of the vehicle showed, part by part. */
export interface VehicleSection {
  readonly starting?: {
    readonly readings: readonly VehicleReading[];
    /** What speed, current and voltage together say. */
    readonly reasons: readonly CrankingReason[];
  };
  readonly charging?: { readonly readings: readonly VehicleReading[] };
  readonly draw?: {
    readonly readings: readonly VehicleReading[];
    readonly outcome?: DrawOutcome;
    /** How long the parked vehicle keeps enough charge to start. */
    readonly standingTime?: StandingTime;
    /** Which of drain and worn battery the days it stood and the charge found support. */
    readonly flatBattery?: Pick<FlatBatteryExplanation, "code" | "drainSufficesProbability">;
  };
}

/** Can the numbers be relied on. */
export interface TrustSection {
  /** `sound`: nothing limits them; `limited`: see `because`; `unusable`: measure again before judging. */
  readonly level: "sound" | "limited" | "unusable";
  readonly because: readonly FindingCode[];
}

/** Something to do next; the words are in the message catalogues. */
export interface NextStep {
  readonly code:
    | "exchange-leads"
    | "check-connection"
    | "end-charging"
    | "thaw-and-inspect"
    | "set-apart"
    | "top-up-water"
    | "warm-up"
    | "change-room"
    | "offer-claim"
    | "cool-down"
    | "find-comparable-rating"
    | "charge"
    | "rest-after-charge"
    | "draw-off-surface-charge"
    | "measure-ability"
    | "measure-again"
    | "measure-with-load"
    | "measure-at-the-posts"
    | "repair-connection"
    | "measure-voltage-drops"
    | "look-at-starter"
    | "repair-charging-circuit"
    | "find-consumer"
    | "let-modules-sleep"
    | "settle-cause"
    | "hand-back"
    | "look-again-before-winter"
    | "take-back"
    | "other-method";
  readonly parameters: Readonly<Record<string, number | string>>;
}

/** What the warranty pays and why. */
export interface WarrantySection {
  readonly eligibility: Eligibility;
  /** Present for a claim that may be settled now. */
  readonly settlement?: Settlement;
}

/** A number that was asked for and honestly refused. */
export interface NamedRefusal extends Refusal {
  /** Path of the record's field it answers, such as `measurements.cranking`. */
  readonly about: string;
}

/** The reasoned answer to one record. Numbers are unrounded; rounding is the report's. */
export interface Evaluation {
  readonly schemaVersion: 1;
  readonly id?: string;
  readonly inspectedOn?: PlainDate;
  readonly identity: IdentitySection;
  readonly age?: AgeSection;
  readonly trust: TrustSection;
  readonly charge?: ChargeSection;
  readonly ability: readonly AbilitySection[];
  readonly loadTest?: LoadTestSection;
  readonly coldStart?: ColdStart;
  /** What was found on the vehicle, where something was measured there. */
  readonly vehicle?: VehicleSection;
  /** What may be behind an engine that does not start; together with `vehicle`. */
  readonly causes?: readonly Cause[];
  readonly verdict: {
    readonly condition: Condition;
    readonly action: Action;
    /** Code of the rule that decided. */
    readonly decidedBy: string;
    readonly serviceableProbability?: number;
    readonly unserviceableProbability?: number;
  };
  readonly findings: readonly Finding[];
  readonly cautions: readonly Caution[];
  readonly nextSteps: readonly NextStep[];
  readonly chargePlan?: ChargePlan;
  readonly warranty?: WarrantySection;
  readonly refusals: readonly NamedRefusal[];
  /** Every number's steps with sources; only with `{ explain: true }`. */
  readonly derivation?: Derivation;
}
