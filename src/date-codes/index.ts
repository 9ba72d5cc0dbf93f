/**
 * Manufacturing date codes: every meaning a code can have, each as an interval of days, and the evidence for it.
 *
 * @module
 */
export { type AgeInterval, ageInterval, withinLimit } from "./age.js";
export { DEFAULT_MAX_AGE_YEARS, type DecodeWindow, decodeContext } from "./context.js";
export { type DecodeOptions, decodeDateCode, MAX_TEXT_LENGTH } from "./decode.js";
export { encodeDateCode } from "./encode.js";
export { type DateCodeEvidence, PLAUSIBLE_SHELF_MONTHS } from "./evidence.js";
export { decodePunchedGrid, type PunchedGrid } from "./punched-grid.js";
export type {
  Confusable,
  DateCodeNote,
  DateCodeRefusal,
  DateCodeRefusalCode,
  DateCodeResult,
  DateReading,
  DateReason,
  ExcludedReading,
  Settler,
} from "./reading.js";
export type {
  DatePrecision,
  DateScheme,
  DateSchemeId,
  DayRange,
  DecodeContext,
  WeekRule,
} from "./scheme.js";
export { dateSchemes } from "./schemes/index.js";
export type { SchemeChoice, TemplatedScheme } from "./template.js";
