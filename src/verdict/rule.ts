import type { SourceId, Standing } from "../sources/index.js";
import { conformanceProbability } from "./conformance.js";
import type { AbilityEvidence, Evidence, LoadTestEvidence } from "./evidence.js";
import type { Action, Condition, Finding } from "./finding.js";
import type { DecisionPolicy } from "./policy.js";

/** Where a rule stands in the order of precedence; the first decisive rule sets condition and action. */
export type RuleStage =
  | "hazard"
  | "system"
  | "measurement"
  | "cells"
  | "charge"
  | "conflict"
  | "ability"
  | "fitness";

/** What a rule makes of the evidence. */
export interface RuleOutcome {
  readonly findings: readonly Finding[];
  /** Present when the rule decides, if no rule before it did. */
  readonly decision?: { readonly condition: Condition; readonly action: Action };
}

/** One reason for a verdict: one file, one rule. */
export interface Rule {
  readonly code: string;
  readonly stage: RuleStage;
  readonly source: SourceId;
  readonly standing: Standing;
  /** Returns nothing when the rule does not fire. */
  readonly weigh: (facts: Facts) => RuleOutcome | undefined;
}

/** Evidence with the comparisons that several rules share, made once. */
export interface Facts {
  readonly evidence: Evidence;
  readonly policy: DecisionPolicy;
  /** Probability that the state of charge reaches the policy's limit; undefined when nothing measured it. */
  readonly chargeProbability: number | undefined;
  /** True when a low ability may be held against the battery. */
  readonly chargeSufficient: boolean;
  /** The ability the verdict rests on: the first of the caller's list. */
  readonly ability: AbilityEvidence | undefined;
  /** Probabilities that the ability reaches the serviceable and the unserviceable limit. */
  readonly reachesServiceable: number | undefined;
  readonly reachesUnserviceable: number | undefined;
  readonly loadTest: "passed" | "failed" | "undecided" | "none";
  /** A low ability was read in the vehicle, where a consumer or a bad path may have lowered it. */
  readonly doubtedInVehicle: boolean;
  /** A hazard or another system: no further measurement is asked for. */
  readonly untestable: boolean;
}

/** Makes the shared comparisons. */
export function facts(evidence: Evidence, policy: DecisionPolicy): Facts {
  const { charge, abilities, loadTest } = evidence;
  const chargeProbability =
    charge && conformanceProbability(charge.stateOfCharge, { lower: policy.sufficientCharge });
  // Readings that contradict each other show no charge, and a word about one is no measurement: it only tips a reading
  // that makes the charge likely.
  const trusted = charge !== undefined && charge.consistent !== false;
  const measuredSufficient =
    trusted && charge.bound === "two-sided" && chargeProbability! >= policy.sufficientChargeProbability;
  const historySufficient = trusted && evidence.chargeCompleted && chargeProbability! >= 0.5;
  const ability = abilities[0];
  const reachesServiceable =
    ability && conformanceProbability(ability.ratio, { lower: policy.serviceableFraction });
  const outcome = loadTest ? outcomeOf(loadTest, policy) : "none";
  const { inVehicle } = evidence;
  return {
    evidence,
    policy,
    chargeProbability,
    chargeSufficient: measuredSufficient || historySufficient,
    ability,
    reachesServiceable,
    reachesUnserviceable:
      ability && conformanceProbability(ability.ratio, { lower: policy.unserviceableFraction }),
    loadTest: outcome,
    // A load test is read at the posts: its second failure needs no reading of ability beside it.
    doubtedInVehicle:
      inVehicle !== undefined &&
      (inVehicle.loadOn || inVehicle.wiringFault) &&
      reachesServiceable !== undefined &&
      reachesServiceable < policy.acceptProbability &&
      !(outcome === "failed" && loadTest?.repeated === true),
    untestable:
      evidence.damage.length > 0 ||
      evidence.frozen !== "no" ||
      (evidence.chargeCompleted && (evidence.missingCell !== undefined || provenSpread(evidence, policy))) ||
      (evidence.system !== "twelve-volt" && evidence.system !== "not-measured"),
  };
}

/** A gravity spread that shows a failed cell: after a full charge, with mixed acid, beyond doubt. */
export function provenSpread({ cells, chargeCompleted }: Evidence, policy: DecisionPolicy): boolean {
  if (!chargeCompleted || !cells?.mixed) return false;
  return cells.exceedProbability >= policy.rejectProbability;
}

function outcomeOf(test: LoadTestEvidence, policy: DecisionPolicy): Facts["loadTest"] {
  const { passProbability, passStands, failStands } = test;
  if (passProbability >= policy.acceptProbability) return passStands ? "passed" : "none";
  if (1 - passProbability >= policy.rejectProbability) return failStands ? "failed" : "none";
  return passStands && failStands ? "undecided" : "none";
}
