/**
 * Rating standards, conversions between them with uncertainty and refusals, capacity relations.
 *
 * @module
 */
export {
  type CapacityRelation,
  type Construction,
  capacityAmpereHours,
  relationProvenance,
  reserveCapacityMinutes,
  reserveMinutesByRelation,
  type SourcedEstimate,
} from "./capacity.js";
export { type ComparedRating, compareToRating, type RatingComparison } from "./compare.js";
export { type ConversionRow, ratingConversions } from "./convert.data.js";
export {
  type ConversionRefusalCode,
  type ConvertedRating,
  convertRating,
  enGridStepAmperes,
  type RatingConversion,
} from "./convert.js";
export {
  type DischargeTest,
  type PeukertExponent,
  type PeukertKind,
  peukertExponent,
  peukertExponentFromTests,
  peukertHours,
} from "./peukert.js";
export {
  type RatingDefinition,
  type RatingStage,
  type RatingStandard,
  ratingStandards,
  type SecondRatingStage,
  type StandardAmperes,
} from "./standards.js";
