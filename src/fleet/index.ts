/**
 * Many records: JSON Lines in order, and summaries that merge.
 *
 * @module
 */
export { evaluateJsonLines, type LineResult, MOST_LINE_CHARACTERS } from "./json-lines.js";
export { emptySummary, mergeSummaries, type Summary, summaryOf } from "./summary.js";
