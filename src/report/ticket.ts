import type { Evaluation } from "../evaluate/index.js";
import { english } from "./messages.en.data.js";
import type { Messages } from "./messages.js";
import { type ReportSection, reportSections } from "./sections.js";
import type { ReportSources } from "./steps.js";
import { pageWidth, wrap } from "./text.js";

/** How to render. */
export interface ReportOptions {
  /** Catalogue of the language, default English. */
  readonly messages?: Messages;
  /** Bibliography for the derivation; without it the steps name the keys of their sources. */
  readonly sources?: ReportSources;
}

/** How to render plain text. */
export interface TicketOptions extends ReportOptions {
  /** Columns, a whole number ≥ 20; default 42. */
  readonly width?: number;
}

/**
 * The report as plain text for a narrow printer or a terminal: questions and short answers.
 *
 * Text from the record is cleaned of control characters; no line is wider than asked, wide characters counted double.
 * Rounding is done here and nowhere before.
 *
 * @param evaluation from `evaluate`; with `{ explain: true }` the derivation is the last answer
 * @param options catalogue, width [columns] (≥ 20, default 42), sources
 * @returns lines separated by `\n`, no newline at the end
 * @throws RangeError when the width is not a whole number of 20 or more
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { renderTicket } from "crankworthy/report";
 * const ticket = renderTicket(evaluate({
 *   id: "W-17",
 *   identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
 *   conditions: { temperatureCelsius: 22, lastEvent: "drive", hoursAtRest: 12 },
 *   measurements: { restVolts: 12.62, cranking: { standard: "sae-j537", amperes: [585, 590, 588] } },
 * }));
 * ticket.includes("Rating 600 A CCA (SAE), as printed."); // => true
 * ```
 */
export function renderTicket(evaluation: Evaluation, options: TicketOptions = {}): string {
  const { messages = english, width = 42, sources } = options;
  return layOutTicket(reportSections(evaluation, messages, sources), width);
}

/**
 * Sections as plain text; the part of {@link renderTicket} that knows no language.
 *
 * @param sections from `reportSections`
 * @param width columns, a whole number ≥ 20
 */
export function layOutTicket(sections: readonly ReportSection[], width = 42): string {
  pageWidth(width);
  return sections
    .map(({ heading, lines }) => {
      let step = 0;
      return [
        ...wrap(heading, width),
        ...lines.flatMap(({ kind, text }) => {
          if (kind === "group") return wrap(text, width, "  ");
          if (kind === "text") return wrap(text, width, "  ");
          return wrap(text, width, kind === "step" ? `  ${++step}. ` : "  - ");
        }),
      ].join("\n");
    })
    .join("\n\n");
}
