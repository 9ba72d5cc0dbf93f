/**
 * Evaluations for a person at the counter: plain text, Markdown, a page of HTML, worked derivation, summary of a day, and JSON
 * and CSV for programs; in English or in any language whose catalogue the caller brings. The only place where numbers are rounded.
 *
 * @module
 */
export { type CsvOptions, csvHeader, csvRow, csvText } from "./csv.js";
export { renderDerivation } from "./derivation.js";
export { englishGuidance, type GuidanceMessages } from "./guidance.en.data.js";
export { type GuidanceTextOptions, renderCaution, renderEnd, renderStep } from "./guidance.js";
export { type HtmlOptions, renderHtml } from "./html.js";
export { type JsonOptions, renderJson } from "./json.js";
export type { Figures, ReportLine } from "./line.js";
export { layOutMarkdown, renderMarkdown } from "./markdown.js";
export { renderFormula } from "./mathml.js";
export { english } from "./messages.en.data.js";
export type { Messages, Sentence } from "./messages.js";
export { findingText, type ReportSection, reportSections } from "./sections.js";
export type { ReportSources } from "./steps.js";
export { type DaySummary, renderDaySummary } from "./summary.js";
export { layOutTicket, type ReportOptions, renderTicket, type TicketOptions } from "./ticket.js";
export { type TracedFigure, traceReport } from "./trace.js";
export { layOutWide, renderWide } from "./wide.js";
