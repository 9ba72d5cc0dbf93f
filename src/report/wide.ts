import type { Evaluation } from "../evaluate/index.js";
import { english } from "./messages.en.data.js";
import { type ReportSection, reportSections } from "./sections.js";
import { columns, wrap } from "./text.js";
import { layOutTicket, type TicketOptions } from "./ticket.js";

/** Columns of the questions, with the gap behind them. */
const QUESTION_COLUMNS = 25;

/** Narrower than this the answers would be shorter than on a ticket. */
const LEAST_WIDTH = 60;

/**
 * The report as plain text for a screen or a full page: questions on the left, answers beside them.
 *
 * Says word for word what the ticket says; the eye finds a question in the margin. Below 60 columns it is laid out as a ticket.
 *
 * @param evaluation from `evaluate`; with `{ explain: true }` the derivation is the last answer
 * @param options catalogue, width [columns] (≥ 20, default 80), sources
 * @returns lines separated by `\n`, no newline at the end
 * @throws RangeError when the width is not a whole number of 20 or more
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { renderWide } from "crankworthy/report";
 * const text = renderWide(evaluate({
 *   identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
 *   measurements: { restVolts: 12.62 },
 * }));
 * text.split("\n")[2]; // => "What is it?              Flooded battery."
 * ```
 */
export function renderWide(evaluation: Evaluation, options: TicketOptions = {}): string {
  const { messages = english, width = 80, sources } = options;
  return layOutWide(reportSections(evaluation, messages, sources), width);
}

/** Sections as wide plain text; the part of {@link renderWide} that knows no language. */
export function layOutWide(sections: readonly ReportSection[], width = 80): string {
  if (!(width >= LEAST_WIDTH)) return layOutTicket(sections, width);
  return sections
    .map((section) => {
      const { question, heading } = section;
      if (question === "title" || question === "derivation") return layOutTicket([section], width);
      const left = wrap(heading, QUESTION_COLUMNS - 2);
      const right = answer(section, width - QUESTION_COLUMNS);
      const rows = Math.max(left.length, right.length);
      return Array.from({ length: rows }, (_, i) => beside(left[i] ?? "", right[i] ?? "")).join("\n");
    })
    .join("\n\n");
}

function beside(left: string, right: string): string {
  return (left + " ".repeat(QUESTION_COLUMNS - columns(left)) + right).trimEnd();
}

function answer({ lines }: ReportSection, width: number): string[] {
  let step = 0;
  return lines.flatMap(({ kind, text }) => {
    if (kind === "group") return wrap(text, width);
    if (kind === "text") return wrap(text, width);
    return wrap(text, width, kind === "step" ? `${++step}. ` : "- ");
  });
}
