/**
 * Evaluations for a person at the counter: plain text, Markdown, worked derivation, summary of a day; in English or in
 * any language whose catalogue the caller brings. The only place where numbers are rounded.
 *
 * @module
 */
export { renderDerivation } from "./derivation.js";
export { englishGuidance, type GuidanceMessages } from "./guidance.en.data.js";
export { type GuidanceTextOptions, renderCaution, renderEnd, renderStep } from "./guidance.js";
export type { ReportLine } from "./line.js";
export { layOutMarkdown, renderMarkdown } from "./markdown.js";
export { english } from "./messages.en.data.js";
export type { Messages, Sentence } from "./messages.js";
export { findingText, type ReportSection, reportSections } from "./sections.js";
export type { ReportSources } from "./steps.js";
export { type DaySummary, renderDaySummary } from "./summary.js";
export { layOutTicket, type ReportOptions, renderTicket, type TicketOptions } from "./ticket.js";
