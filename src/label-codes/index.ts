/**
 * Codes printed on batteries: what each says, what it cannot say, and how well that is known.
 *
 * @module
 */
export { type BciGroupReading, decodeBciGroup, formatBciGroup } from "./bci-group.js";
export { type CaseCodeReading, decodeCaseCode, formatCaseCode } from "./case-code.js";
export { type DinNumberReading, decodeDinNumber, formatDinNumber } from "./din-number.js";
export { decodeEtn, type EtnParts, type EtnReading, formatEtn } from "./etn.js";
export type { JisParts } from "./jis-parts.js";
export { performanceRank, type ReferenceOptions, type ReferenceRefusalCode } from "./jis-reference.js";
export {
  decodeJisStartStop,
  decodeJisType,
  formatJisStartStop,
  formatJisType,
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
export { referenceCrankingAmperes } from "./reference-cranking-amperes.js";
