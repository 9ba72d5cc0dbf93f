import type { Evaluation } from "../evaluate/evaluation.js";
import type { BatteryRecord } from "../evaluate/record.js";
import type { DecisionPolicy } from "../verdict/index.js";
import { ABILITY_STEP, abilityCells, above, type Knowledge } from "./knowledge.js";
import type { GuidancePrior } from "./prior.js";

/** Probabilities of what full knowledge would say; they add up to 1. */
export interface AnswerProbabilities {
  readonly serviceable: { readonly charged: number; readonly short: number };
  readonly worn: { readonly charged: number; readonly short: number };
  readonly unserviceable: number;
}

/** What full knowledge of charge and ability would say, by the policy's limits. */
export function answers({ charged, short }: Knowledge, policy: DecisionPolicy): AnswerProbabilities {
  const serviceable = { charged: 0, short: 0 };
  const worn = { charged: 0, short: 0 };
  let unserviceable = 0;
  abilityCells.forEach((a, j) => {
    const upper = above(a, ABILITY_STEP, policy.serviceableFraction);
    const lower = above(a, ABILITY_STEP, policy.unserviceableFraction);
    serviceable.charged += charged[j]! * upper;
    serviceable.short += short[j]! * upper;
    worn.charged += charged[j]! * (lower - upper);
    worn.short += short[j]! * (lower - upper);
    unserviceable += (charged[j]! + short[j]!) * (1 - lower);
  });
  return { serviceable, worn, unserviceable };
}

function rightProbability(
  evaluation: Evaluation | undefined,
  knowledge: Knowledge,
  policy: DecisionPolicy,
): number {
  const { serviceable, worn, unserviceable } = answers(knowledge, policy);
  const { condition = "not-established", action = "repeat", decidedBy = "" } = evaluation?.verdict ?? {};
  if (action === "isolate" || action === "stop") return 1;
  switch (condition) {
    case "internally-failed":
      // Shown by the cells, which charge and ability do not model; the rules asked for this probability.
      return decidedBy === "cell-spread" || decidedBy === "missing-cell"
        ? policy.rejectProbability
        : unserviceable;
    case "unserviceable":
      return unserviceable;
    case "serviceable":
    case "worn": {
      const held = condition === "serviceable" ? serviceable : worn;
      if (action === "keep") return held.charged;
      if (action === "charge-then-keep") return held.short;
      return action === "retire" ? held.charged + held.short : Math.max(held.charged, held.short);
    }
    default:
      // No answer yet: the best guess, worth no more than what the rules ask of an answer.
      return Math.min(
        policy.acceptProbability,
        Math.max(serviceable.charged, serviceable.short, worn.charged, worn.short, unserviceable),
      );
  }
}

/** Damage and ice were looked for. */
export const lookedOver = ({ conditions }: BatteryRecord): boolean =>
  conditions?.damage !== undefined && conditions.ice !== undefined;

/** The battery leaves service for a defect, so that a claim is a question. */
export const claimable = (evaluation: Evaluation | undefined): boolean =>
  evaluation?.verdict.action === "retire";

function claimOpen({ warranty }: Evaluation): boolean {
  if (!warranty) return true;
  const { eligibility, settlement } = warranty;
  return eligibility.answer === "not-yet" || settlement?.outcome === "cannot-tell";
}

/** What the risk is reckoned from. */
export interface RiskGrounds {
  readonly record: BatteryRecord;
  readonly evaluation: Evaluation | undefined;
  readonly knowledge: Knowledge;
  readonly nominalVolts: number | undefined;
  /** Whether the settlement of a claim is part of the answer. */
  readonly withClaim: boolean;
}

/** Probability that the answer given now is not the one full knowledge would give. */
export function riskOf(
  { record, evaluation, knowledge, nominalVolts, withClaim }: RiskGrounds,
  prior: GuidancePrior,
  policy: DecisionPolicy,
): number {
  let right = rightProbability(evaluation, knowledge, policy);
  if (!lookedOver(record)) right *= 1 - prior.hazardProbability;
  if (record.measurements.restVolts === undefined && nominalVolts === undefined)
    right *= 1 - prior.otherSystemProbability;
  const { coveredProbability } = prior;
  if (withClaim && claimable(evaluation) && claimOpen(evaluation!))
    right *= Math.max(coveredProbability, 1 - coveredProbability);
  return Math.min(1, Math.max(0, 1 - right));
}
