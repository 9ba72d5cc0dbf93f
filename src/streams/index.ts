/**
 * Text from anywhere, in pieces of whole lines: bounded memory, and errors that say where.
 *
 * @module
 */
export { byteOffsetAt } from "./byte-offset-at.js";
export { lines, type TextLine } from "./lines.js";
export type { ReadProgress, ReadTextOptions, TextEncodingName } from "./options.js";
export { readText, type TextPiece } from "./read-text.js";
export { isStreamError, StreamError, type StreamErrorCode } from "./stream-error.js";
export type { TextChunk, TextInput, WebStream } from "./text-input.js";
