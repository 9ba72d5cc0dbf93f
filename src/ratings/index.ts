/**
 * Rating standards, conversions between them with uncertainty and refusals, label codes, capacity relations.
 *
 * @module
 */
export { type BciGroupReading, decodeBciGroup, formatBciGroup } from "./bci-group.js";
export {
  type CapacityRelation,
  type Construction,
  capacityAmpereHours,
  relationProvenance,
  reserveCapacityMinutes,
  reserveMinutesByRelation,
  type SourcedEstimate,
} from "./capacity.js";
export { type CaseCodeReading, decodeCaseCode, formatCaseCode } from "./case-code.js";
export { type ComparedRating, compareToRating, type RatingComparison } from "./compare.js";
export { type ConversionRow, ratingConversions } from "./convert.data.js";
export {
  type ConversionRefusalCode,
  type ConvertedRating,
  convertRating,
  enGridStepAmperes,
  type RatingConversion,
} from "./convert.js";
export { type DinNumberReading, decodeDinNumber, formatDinNumber } from "./din-number.js";
export { decodeEtn, type EtnParts, type EtnReading, formatEtn } from "./etn.js";
export { performanceRank, type ReferenceOptions, type ReferenceRefusalCode } from "./jis-reference.js";
export {
  decodeJisStartStop,
  decodeJisType,
  formatJisStartStop,
  formatJisType,
  type JisParts,
  type JisStartStopReading,
  type JisTypeReading,
} from "./jis-type.js";
export { decodeLabelCode } from "./label-code.js";
export {
  type CaseSize,
  type LabelFact,
  type LabelReading,
  type LabelRefusalCode,
  type LabelScheme,
  type ReferenceRating,
  ratingOfLabel,
  type Terminals,
} from "./label-reading.js";
export {
  type DischargeTest,
  type PeukertExponent,
  type PeukertKind,
  peukertExponent,
  peukertExponentFromTests,
  peukertHours,
} from "./peukert.js";
export { referenceCrankingAmperes } from "./reference-cranking-amperes.js";
export {
  type Provenance,
  type RatingDefinition,
  type RatingStage,
  type RatingStandard,
  ratingStandards,
  type SecondRatingStage,
  type StandardAmperes,
} from "./standards.js";
