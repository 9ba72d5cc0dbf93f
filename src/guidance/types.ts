import type { Evaluation } from "../evaluate/evaluation.js";
import type { InputIssue } from "../evaluate/issue.js";
import type { Caution, DecisionPolicy } from "../verdict/index.js";
import type { GuidancePrior } from "./prior.js";

/** Every step the guidance can ask for, in the order that breaks ties. */
export const guidedStepCodes = [
  "look-over",
  "read-label",
  "check-leads",
  "measure-temperature",
  "tell-rest-history",
  "measure-rest-voltage",
  "draw-off-surface-charge",
  "measure-gravity",
  "measure-cranking",
  "repeat-reading",
  "top-up-water",
  "warm-up",
  "cool-down",
  "change-room",
  "charge",
  "load-test",
  "charge-and-repeat-load-test",
  "read-date-code",
  "give-purchase-and-terms",
] as const;

export type GuidedStepCode = (typeof guidedStepCodes)[number];

/** Why a step is worth its while. */
export type GuidedReason =
  | "hazard-first"
  | "nothing-without-label"
  | "connection-doubtful"
  | "temperature-unknown"
  | "rest-history-unknown"
  | "charge-unknown"
  | "surface-charge-possible"
  | "charge-uncertain"
  | "ability-unknown"
  | "one-reading-uncertain"
  | "plates-uncovered"
  | "too-cold-to-charge"
  | "too-hot-to-charge"
  | "room-without-air"
  | "too-little-charge"
  | "ability-between-limits"
  | "first-failure-needs-repeat"
  | "age-unknown"
  | "claim-open";

/** One measurement or preparation to do now. */
export interface GuidedStep {
  readonly code: GuidedStepCode;
  /** Paths of the record that the answer fills. */
  readonly fill: readonly string[];
  /**
   * Paths that are no longer true once the step is done; {@link answerStep} takes them out: low acid only when the answer
   * says that water was added, a room only when it names another.
   */
  readonly clear: readonly string[];
  readonly why: { readonly code: GuidedReason };
  /** Numbers for the sentence: how many readings, which load, which charge. */
  readonly parameters: Readonly<Record<string, number | string>>;
  /** Probability that the answer given now is not the one that full knowledge would give, 0..1. */
  readonly riskNow: number;
  /** How much of it this step takes away on average; a preparation counts by the reading it makes possible or better. */
  readonly expectedRiskDrop: number;
}

/** How to be led. */
export interface GuidanceOptions {
  readonly policy?: Partial<DecisionPolicy>;
  /** What is known of batteries that come in, before anything is known of this one; single fields replace the default. */
  readonly prior?: Partial<GuidancePrior>;
  /** Steps not to ask for: the instrument is missing, the label cannot be read, no claim is made. */
  readonly exclude?: readonly GuidedStepCode[];
  /** Once there is an answer, a step that takes away less risk than this is not asked for, 0..1; default 0.01. */
  readonly smallestRiskDrop?: number;
}

/** Why the guidance ends. */
export type GuidanceEnd = "hazard" | "other-system" | "settled" | "nothing-left" | "not-evaluable";

/** A step that is called for and not asked for: it was answered twice and did not take, or was left out. */
export interface UntakenStep {
  readonly code: GuidedStepCode;
  readonly why: { readonly code: GuidedReason };
  readonly because: "tried" | "excluded";
}

/** The next step, the end, or what is wrong with the draft. */
export type Guidance =
  | { readonly ok: false; readonly issues: readonly InputIssue[] }
  | {
      readonly ok: true;
      readonly done: false;
      readonly riskNow: number;
      readonly step: GuidedStep;
      /** What else could be done, best first. */
      readonly alternatives: readonly GuidedStep[];
      /** What can hurt while doing it. */
      readonly cautions: readonly Caution[];
      /** The answer as it stands, where there is enough for one. */
      readonly evaluation?: Evaluation;
    }
  | {
      readonly ok: true;
      readonly done: true;
      readonly because: GuidanceEnd;
      /** What stands in the way of an answer, at `nothing-left` and `not-evaluable`; may be empty. */
      readonly untaken: readonly UntakenStep[];
      readonly riskNow: number;
      readonly cautions: readonly Caution[];
      /** Missing only where the label was not read or nothing was measured, as with damage seen at first sight. */
      readonly evaluation?: Evaluation;
    };
