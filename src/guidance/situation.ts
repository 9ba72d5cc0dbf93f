import { tryEvaluate } from "../evaluate/evaluate.js";
import type { Evaluation, IdentitySection } from "../evaluate/evaluation.js";
import type { InputIssue } from "../evaluate/issue.js";
import type { BatteryRecord } from "../evaluate/record.js";
import type { DecisionPolicy } from "../verdict/index.js";
import { type Knowledge, knowledgeOf } from "./knowledge.js";
import type { GuidancePrior } from "./prior.js";
import { riskOf } from "./risk.js";
import type { GuidedStepCode } from "./types.js";

/** What holds for one call of the guidance. */
export interface GuidanceSetting {
  readonly changes: Partial<DecisionPolicy> | undefined;
  readonly policy: DecisionPolicy;
  readonly prior: GuidancePrior;
  readonly exclude: ReadonlySet<GuidedStepCode>;
  /** Steps that were answered and did not take. */
  readonly spent: ReadonlySet<GuidedStepCode>;
}

/** A draft, real or imagined, with what follows from it. */
export interface Situation {
  readonly record: BatteryRecord;
  readonly labelRead: boolean;
  readonly evaluation: Evaluation | undefined;
  readonly identity: IdentitySection | undefined;
  readonly knowledge: Knowledge;
  readonly risk: number;
}

/** Evaluates a draft as far as it goes. */
export function situationOf(
  record: BatteryRecord,
  labelRead: boolean,
  setting: GuidanceSetting,
): Situation | readonly InputIssue[] {
  const { policy, prior } = setting;
  const options = setting.changes ? { policy: setting.changes } : {};
  let evaluation: Evaluation | undefined;
  let identity: IdentitySection | undefined;
  if (labelRead) {
    const whole = tryEvaluate(record, options);
    if (whole.ok) {
      evaluation = whole.evaluation;
      identity = evaluation.identity;
    } else if (whole.issues.some(({ path }) => path !== "measurements")) return whole.issues;
    else {
      // Nothing measured yet: any reading lets the label be read.
      const label = tryEvaluate({ identity: record.identity, measurements: { restVolts: 12.5 } });
      if (!label.ok) return label.issues;
      identity = label.evaluation.identity;
    }
  }
  const knowledge = knowledgeOf(record, evaluation, prior, policy);
  const nominalVolts = identity?.nominalVolts ?? record.identity.nominalVolts;
  const withClaim = record.warranty !== undefined || !setting.exclude.has("give-purchase-and-terms");
  const risk = riskOf({ record, evaluation, knowledge, nominalVolts, withClaim }, prior, policy);
  return { record, labelRead, evaluation, identity, knowledge, risk };
}
