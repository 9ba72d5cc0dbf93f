/**
 * One record in, one reasoned evaluation out.
 *
 * @module
 */
export { type Difference, differenceOf, differencesBetween } from "./difference.js";
export { type EvaluateOptions, type EvaluateResult, evaluate, tryEvaluate } from "./evaluate.js";
export type {
  AbilitySection,
  AgeSection,
  ChargeSection,
  Evaluation,
  IdentitySection,
  LoadTestSection,
  NamedRefusal,
  NextStep,
  ReferenceCranking,
  TrustSection,
  VehicleReading,
  VehicleSection,
  WarrantySection,
} from "./evaluation.js";
export { InputError, type InputIssue, isInputError } from "./issue.js";
export { type MigratedRecord, type Migration, migrateRecord, RECORD_SCHEMA_VERSION } from "./migrate.js";
export { type ParseResult, parseRecord } from "./parse.js";
export type {
  AcidGravities,
  BatteryRecord,
  ChargingMeasurement,
  ConductanceMeasurement,
  CrankingMeasurement,
  DateCode,
  DrawMeasurement,
  LabelCode,
  LoadTestMeasurement,
  PrintedRating,
  RecordConditions,
  RecordIdentity,
  RecordMeasurements,
  RecordRequirement,
  RecordVehicle,
  RecordVentilation,
  RecordWarranty,
  ReferenceBasis,
  ResistanceMeasurement,
  RippleMeasurement,
  StartingMeasurement,
} from "./record.js";
export { type ReopenedDossier, reopenDossier } from "./reopen.js";
export { recordSchema } from "./schema.js";
export { type StandardRecordSchema, standardRecordSchema } from "./standard-schema.js";
export { LIBRARY_VERSION } from "./version.js";
