/**
 * Which single measurement or preparation would most change the decision now: from an empty draft to a settled record.
 *
 * @module
 */

export { type DraftRecord, type FieldValues, recordOfDraft } from "./draft.js";
export { answerStep, nextStep } from "./next-step.js";
export { defaultGuidancePrior, type GuidancePrior } from "./prior.js";
export {
  type Guidance,
  type GuidanceEnd,
  type GuidanceOptions,
  type GuidedReason,
  type GuidedStep,
  type GuidedStepCode,
  guidedStepCodes,
  type UntakenStep,
} from "./types.js";
