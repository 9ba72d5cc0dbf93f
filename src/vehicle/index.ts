/**
 * Checks on the vehicle: starting and charging circuit, voltage drops, ripple, parasitic draw, system voltage.
 *
 * @module
 */

export {
  type BandName,
  type ChargingRiseName,
  RIPPLE_LIMITS,
  type RippleLimitName,
  type RippleMethod,
  type RipplePlace,
} from "./charging-circuit.data.js";
export {
  type ChargingControl,
  type ChargingDoubt,
  type ChargingJudgement,
  type ChargingOutcome,
  type ChargingReading,
  judgeChargingRise,
  judgeChargingVoltage,
  type RegulatedBand,
  regulatedBand,
} from "./charging-circuit.js";
export {
  type CrankingCause,
  type CrankingObservation,
  type CrankingReason,
  reasonOnCranking,
} from "./cranking-reasons.js";
export type { JudgementOptions, Limit, LimitJudgement, LimitOutcome } from "./limit.js";
export type { DrawProfileName } from "./parasitic-draw.data.js";
export {
  type DrawJudgement,
  type DrawLimits,
  type DrawOutcome,
  type DrawReading,
  drawLimits,
  judgeDraw,
} from "./parasitic-draw.js";
export { judgeRipple, type RippleDoubt, type RippleReading } from "./ripple.js";
export {
  daysUntilNoStart,
  explainFlatBattery,
  type FlatBattery,
  type FlatBatteryExplanation,
  type ParkedVehicle,
  type StandingTime,
} from "./standing-time.js";
export type { CrankingMinimumName, CrankingTimeName, EngineClass } from "./starting-circuit.data.js";
export {
  type CrankingCurrentJudgement,
  type CrankingDoubt,
  type CrankingReading,
  crankingTime,
  judgeCrankingCurrent,
  judgeCrankingVoltage,
  minimumCrankingVolts,
} from "./starting-circuit.js";
export {
  type NominalVolts,
  recogniseSystem,
  SYSTEM_BANDS,
  type SystemBands,
  type SystemVoltage,
} from "./system-voltage.js";
export { DROP_LIMITS, type DropLimitName } from "./voltage-drop.data.js";
export {
  type DropJudgement,
  dropLimit,
  judgeVoltageDrop,
  sumOfDropLimits,
  type VoltageDrop,
} from "./voltage-drop.js";
