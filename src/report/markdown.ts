import type { Evaluation } from "../evaluate/index.js";
import { english } from "./messages.en.data.js";
import { type ReportSection, reportSections } from "./sections.js";
import { escapeMarkdown } from "./text.js";
import type { ReportOptions } from "./ticket.js";

/**
 * The report as Markdown (CommonMark): a heading for each question. Everything is escaped, so no text of a record becomes
 * markup, HTML or a link to a page.
 *
 * @param evaluation from `evaluate`
 * @param options catalogue, sources
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { renderMarkdown } from "crankworthy/report";
 * const page = renderMarkdown(evaluate({
 *   id: "<b>*17*</b>",
 *   identity: { chemistry: "gel", rating: { standard: "sae-j537", amperes: 600 } },
 *   measurements: { restVolts: 12.8 },
 * }));
 * page.split("\n")[2]; // => "Reference: &lt;b&gt;\\*17\\*&lt;/b&gt;"
 * ```
 */
export function renderMarkdown(evaluation: Evaluation, options: ReportOptions = {}): string {
  const { messages = english, sources } = options;
  return layOutMarkdown(reportSections(evaluation, messages, sources));
}

/** Sections as Markdown; the part of {@link renderMarkdown} that knows no language. */
export function layOutMarkdown(sections: readonly ReportSection[]): string {
  const blocks: string[] = [];
  for (const { question, heading, lines } of sections) {
    blocks.push(`${question === "title" ? "#" : "##"} ${escapeMarkdown(heading)}`);
    let step = 0;
    let before: string | undefined;
    for (const { kind, text } of lines) {
      const safe = escapeMarkdown(text);
      const block =
        kind === "group"
          ? `**${safe}**`
          : kind === "item"
            ? `- ${safe}`
            : kind === "step"
              ? `${++step}. ${safe}`
              : safe;
      // Entries of one list stand together.
      if (before === kind && (kind === "item" || kind === "step")) blocks[blocks.length - 1] += `\n${block}`;
      else blocks.push(block);
      before = kind;
    }
  }
  return `${blocks.join("\n\n")}\n`;
}
