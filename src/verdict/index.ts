/**
 * From evidence to a decision: conformance probabilities, policy, rules, findings and cautions.
 *
 * @module
 */

export type { CauseCode, CauseRule, CauseSupport, SettlingStep, Sign } from "./causes/cause.js";
export { causeRules } from "./causes/index.js";
export { type Cause, type Causes, weighCauses } from "./causes.js";
export {
  type Caution,
  type CautionCode,
  type CautionSetting,
  type ChargingAir,
  COLD_TO_CHARGE,
  cautionCodes,
  cautions,
  charges,
} from "./caution.js";
export {
  conformanceProbability,
  decideAgainstLimit,
  type GlobalRisks,
  globalRisks,
  guardedLimits,
  type LimitDecision,
  type PopulationDensity,
  repeatedReadingUncertainty,
  type ToleranceLimits,
  withPriorKnowledge,
} from "./conformance.js";
export { decide, type Verdict } from "./decide.js";
export type {
  AbilityEvidence,
  CellEvidence,
  ChargeEvidence,
  DamageSign,
  Evidence,
  LoadTestEvidence,
  MissingCellEvidence,
  SystemReading,
} from "./evidence.js";
export {
  type Action,
  type Condition,
  type Finding,
  type FindingCode,
  type FindingLimit,
  finding,
  findingCodes,
  type Severity,
} from "./finding.js";
export { type DecisionPolicy, defaultPolicy, policyWith } from "./policy.js";
export { type Facts, facts, type Rule, type RuleOutcome, type RuleStage } from "./rule.js";
export { rules } from "./rules/index.js";
