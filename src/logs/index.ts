/**
 * Logger time series: bring rows into one sign and unit, then measure charge, rest and resistance.
 *
 * @module
 */

export {
  type AnalyseLogOptions,
  analyseLog,
  type LogAnalysis,
  type NoWholeLog,
} from "./analyse/analyse-log.js";
export type { LogResistance } from "./analyse/log-resistance.js";
export type { MeasureOptions } from "./analyse/measure-segment.js";
export type {
  FieldOrigin,
  LastRestVoltage,
  LogMeasurement,
  LogQuantityMeasured,
  MeasuredRows,
  NotMeasured,
} from "./analyse/measurement.js";
export {
  type RecordChoices,
  type RecordFromLog,
  recordFromLog,
} from "./analyse/record-from-log.js";
export { checkLog, createLogCheck, type LogCheck } from "./check/check-log.js";
export { estimateLag } from "./check/lag.js";
export type { LagEstimate, LagRefusalCode, LagSecondsRange } from "./check/lag-estimate.js";
export type { LogCheckOptions } from "./check/options.js";
export type {
  LogChannel,
  LogDefect,
  LogDefectCode,
  LogDefectSeverity,
  LogDefectTotal,
  LogQuality,
  LogQuestion,
  LogSampling,
  LogTimeScale,
  TimeScaleStatement,
} from "./check/quality.js";
export { compareTimeScale } from "./check/time-scale.js";
export { type LogChunk, rowNumber } from "./chunk.js";
export { type AlignedSeries, type AlignOptions, alignCurrent } from "./measure/align-current.js";
export { type CapacityAtRate, type CapacityOptions, capacityAtRate } from "./measure/capacity-at-rate.js";
export {
  chargeFactor,
  chargeMovedInSegments,
  type SegmentCharge,
  type SegmentChargeOptions,
} from "./measure/charge-factor.js";
export { type ChargeMoved, type ChargeMovedOptions, chargeMoved } from "./measure/charge-moved.js";
export {
  type ChargingVoltage,
  type ChargingVoltageOptions,
  measureChargingVoltage,
} from "./measure/charging-voltage.js";
export { type CombinedResistance, combineLoadSteps } from "./measure/combine-load-steps.js";
export {
  type CrankCurrent,
  type CrankEvent,
  type CrankOptions,
  measureCrank,
} from "./measure/crank-event.js";
export type { WakeUp } from "./measure/draw-windows.js";
export { type FinalRest, findFinalRest, type RestRule } from "./measure/final-rest.js";
export { findOhmicResistance, type LagRange, type OhmicSearch } from "./measure/find-ohmic-resistance.js";
export {
  type LoadStep,
  type LoadStepOptions,
  type LoadSteps,
  measureLoadSteps,
} from "./measure/load-steps.js";
export { type CurrentLag, fitOhmicResistance, type OhmicFit } from "./measure/ohmic-resistance.js";
export { measureSettledDraw, type SettledDraw, type SettledDrawOptions } from "./measure/parasitic-draw.js";
export { fitPeukert, type PeukertDoubt, type PeukertFit, type PeukertRun } from "./measure/peukert.js";
export {
  type AlternatorSpeed,
  alternatorRippleHertz,
  measureRipple,
  type Ripple,
  type RippleOptions,
} from "./measure/ripple.js";
export {
  type LongRestReading,
  type SelfDischarge,
  type SelfDischargeOptions,
  selfDischargeFromRests,
  type WithinUncertainty,
} from "./measure/self-discharge.js";
export {
  type Relaxation,
  type SettledVoltage,
  type SettledVoltageBound,
  type SettledVoltageOptions,
  settledRestVoltage,
} from "./measure/settled-voltage.js";
export type { RelaxationModel } from "./measure/settled-voltage-shapes.js";
export { sliceSeries } from "./measure/slice-series.js";
export type { VoltageSeries } from "./measure/voltage-series.js";
export type { ReadTally } from "./read/bad-cells.js";
export type { BdfHeader, BdfMatch } from "./read/bdf.js";
export type { ColumnReference, LogColumns, LogQuantity, LogTimeUnit, MissingMarks } from "./read/columns.js";
export { completeRows } from "./read/complete-rows.js";
export type {
  BadCellPolicy,
  CellDelimiter,
  DelimitedFormat,
  JsonLinesFormat,
  LogFormat,
} from "./read/format.js";
export type { HeaderReading, ReadColumn } from "./read/header.js";
export {
  isLogInputError,
  type LogInputCode,
  LogInputError,
  type LogInputProblem,
} from "./read/log-input-error.js";
export { type OpenedLog, type OpenLogOptions, openLog } from "./read/open-log.js";
export { type RowReorder, reorderRows } from "./read/reorder-rows.js";
export { type SegmentRule, segmentRule } from "./segment/rule.js";
export { createSegmenter, type Segmenter, segmentLog } from "./segment/segmenter.js";
export type {
  LogSegment,
  SegmentEdges,
  SegmentKind,
  SegmentReason,
  SegmentReasonCode,
  SegmentTotals,
} from "./segments.js";
export {
  type LogRow,
  type LogSeries,
  type RowCounts,
  type SeriesOptions,
  type SeriesResult,
  seriesFromChunks,
  seriesFromRows,
} from "./series.js";
export type {
  ChargePhase,
  CrankPhase,
  DischargePhase,
  EngineRunningPhase,
  LoadStepsPhase,
  ParkedPhase,
  RestPhase,
  SyntheticBattery,
  SyntheticInstrument,
  SyntheticPhase,
  SyntheticPlan,
} from "./synthetic/plan.js";
export { type SyntheticLog, syntheticLog } from "./synthetic/synthetic-log.js";
export type { SyntheticSegment, SyntheticTruth } from "./synthetic/truth.js";
export { writeDelimited } from "./synthetic/write-delimited.js";
