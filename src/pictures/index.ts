/**
 * Pictures of logs and evaluations: SVG as text, made without a browser, legible in grey, in the dark and read aloud.
 *
 * @module
 */
export { type AbilityPictureOptions, abilityPicture } from "./ability.js";
export { chargePicture } from "./charge.js";
export { type ColdStartPictured, coldStartPicture } from "./cold-start.js";
export { type LogTrace, type LogTraceOptions, logTracePicture } from "./log-trace.js";
export type { NumberFormat } from "./numbers.js";
export type { PictureOptions } from "./sheet.js";
export {
  createTraceThinner,
  type ThinnedChannel,
  type ThinnedTrace,
  type TraceThinner,
} from "./trace-thinner.js";
export { type WarrantyPictured, warrantyPicture } from "./warranty.js";
export { englishPictureWords } from "./words.en.data.js";
export { type PictureWord, type PictureWords, pictureWordArguments } from "./words.js";
