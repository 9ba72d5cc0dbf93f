/**
 * Bench procedures: load test, cell gravities, missing cells, charging, ventilation. Numbers with limits and validity, no verdicts.
 *
 * @module
 */

export {
  type ChargeChemistry,
  type ChargeProfile,
  chargeFactorRange,
  chargeProfiles,
  chargeStopCriteria,
  chargingForbidden,
  deepDischargeJudgement,
  type FigureFrom,
  type StopCriterion,
} from "./charge-plan.data.js";
export {
  type ChargeObstacle,
  type ChargePlan,
  type ChargePlanInput,
  type ChargePlanRefusal,
  chargeCapacityAmpereHours,
  chargeHours,
  planCharge,
} from "./charge-plan.js";
export { judgeThreeMinuteCharge, leastAcceptedAmperes, type ThreeMinuteOutcome } from "./charge-response.js";
export {
  naturalVentilation,
  stationaryAirFlowCubicMetresPerHour,
  stationaryGasMilliamperesPerAmpereHour,
  type VentilationInput,
  ventilationProvenance,
  workshopAirFlowCubicMetresPerHour,
  workshopGasAmperesPer100AmpereHours,
} from "./hydrogen.js";
export {
  type CellGravityInput,
  type CellGravityOutcome,
  gravityFlags,
  type HydrometerFault,
  type HydrometerFlag,
  judgeCellGravities,
  type SpreadLimit,
  spreadLimits,
} from "./hydrometer.js";
export {
  type LoadLimitRefusal,
  type LoadRule,
  type LoadTestCurrent,
  loadTestCurrentAmperes,
  loadTestLimitVolts,
} from "./load-limit.js";
export { type LoadRecord, type LoadRecordReading, loadTestFromRecord } from "./load-record.js";
export { type LoadLimitProfile, loadLimitProfiles } from "./load-test.data.js";
export {
  judgeLoadTest,
  LOAD_TEST_MINIMUM_CHARGE,
  type LoadTestFault,
  type LoadTestInput,
  type LoadTestNote,
  type LoadTestOutcome,
} from "./load-test.js";
export {
  type CellSignature,
  type MissingCellInput,
  type MissingCellOutcome,
  readMissingCells,
} from "./missing-cell.js";
