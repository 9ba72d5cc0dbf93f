import type { Evaluation } from "../evaluate/index.js";
import { bibliography } from "../sources/index.js";
import { checkedSvg } from "./check-svg.js";
import { fill } from "./format.js";
import { stepLinks, stepsHtml } from "./html-steps.js";
import { htmlStyle } from "./html-style.data.js";
import { escapeHtml, sentenceHtml } from "./html-text.js";
import type { ReportLine } from "./line.js";
import { english } from "./messages.en.data.js";
import type { Messages, Question } from "./messages.js";
import { type ReportSection, reportSections } from "./sections.js";
import type { ReportOptions } from "./ticket.js";
import { traceSections } from "./trace.js";
import { type Voice, voiceOf } from "./voice.js";

/** How to render a page. */
export interface HtmlOptions extends ReportOptions {
  /**
   * Pictures of `crankworthy/pictures` for this evaluation: SVG that this library made, in the order of their showing. Each has
   * to begin with `<svg`; one with a script, an event attribute, foreign content or an outside reference is refused.
   */
  readonly pictures?: readonly string[];
}

/** Steps of one line of an answer, for each question. */
type Steps = ReadonlyMap<string, readonly number[]>;

/**
 * The report as one HTML document that needs nothing else: no script, no font, no picture from elsewhere; a content security
 * policy forbids them.
 *
 * What it is fit for and what to do stand on top; below, the answers on the wide side and what to do next and what can hurt on
 * the narrow side. Follows the reader's preference for dark pages, prints black on white. Printed, the answers of an ordinary
 * evaluation fit on one page of A4 or Letter (a full check of the vehicle takes more); a derivation follows on further pages. With a derivation each figure
 * names the step it comes from. Everything is escaped; direction and language are those of the catalogue, and quantities and formulas
 * of the derivation are marked as English.
 *
 * @param evaluation from `evaluate`; with `{ explain: true }` the derivation is the end of the page
 * @param options catalogue, sources (default: the whole bibliography), pictures
 * @returns an HTML document, newline at the end
 * @throws RangeError for a picture that is no drawing
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { renderHtml } from "crankworthy/report";
 * const page = renderHtml(evaluate({
 *   id: "<b>17</b>",
 *   identity: { chemistry: "gel", rating: { standard: "sae-j537", amperes: 600 } },
 *   measurements: { restVolts: 12.8 },
 * }));
 * page.startsWith('<!doctype html>\n<html lang="en-GB" dir="ltr">'); // => true
 * page.includes("&lt;b&gt;17&lt;/b&gt;"); // => true
 * page.includes("<script"); // => false
 * ```
 */
export function renderHtml(evaluation: Evaluation, options: HtmlOptions = {}): string {
  const { messages = english, sources = bibliography, pictures = [] } = options;
  const voice = voiceOf(messages);
  const { derivation } = evaluation;
  const sections = reportSections({ ...evaluation, derivation: [] }, messages);
  const drawings = pictures.map((one, i) => `<figure>${checkedSvg(one, `pictures[${i}]`)}</figure>`);
  const steps = stepsByLine(evaluation, sections, messages);
  const { phrase, language, direction } = voice;
  const block = (...questions: readonly Question[]): string =>
    questions
      .map((one) => sections.find((section) => section.question === one))
      .map((section) => (section ? sectionHtml(section, evaluation, steps, voice) : ""))
      .join("");
  const [title] = sections;
  const reference = title!.lines.map((one) => one.text);
  const hazard = evaluation.findings.some((one) => one.severity === "hazard");
  return [
    "<!doctype html>",
    `<html lang="${escapeHtml(language)}" dir="${direction}">`,
    '<head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark"><meta name="referrer" content="no-referrer">',
    `<title>${escapeHtml([title!.heading, ...reference].join(" · "))}</title>`,
    `<style>${htmlStyle}</style></head>`,
    `<body><header><h1>${escapeHtml(title!.heading)}</h1>${reference.map((one) => `<p>${sentenceHtml(one, direction, evaluation.id)}</p>`).join("")}</header>`,
    "<main>",
    verdictHtml(evaluation, sections, voice),
    derivation ? `<p class="note">${escapeHtml(phrase.stepsInBrackets)}</p>` : "",
    '<div class="columns"><div class="found">',
    block("what", "trust", "charge", "ability", "start", "vehicle", "noticed", "warranty"),
    '</div><div class="aside">',
    hazard ? block("hurt", "next") : block("next", "hurt"),
    block("cause", "age", "refused"),
    "</div></div>",
    ...appendix(drawings, derivation && stepsHtml(derivation, voice, sources), voice),
    "</main></body></html>\n",
  ]
    .filter((one) => one !== "")
    .join("\n");
}

/** Pictures and derivation; where there are both, they share the pages that follow when printed. */
function appendix(
  drawings: readonly string[],
  steps: string | undefined,
  { phrase, question }: Voice,
): string[] {
  const parts: string[] = [];
  if (drawings.length > 0)
    parts.push(
      `<section class="pictures" id="pictures"><h2>${escapeHtml(phrase.pictures)}</h2><div>${drawings.join("")}</div></section>`,
    );
  if (steps !== undefined)
    parts.push(
      `<section class="derivation" id="derivation"><h2>${escapeHtml(question.derivation)}</h2>${steps}</section>`,
    );
  return parts.length > 1 ? ['<div class="appendix">', ...parts, "</div>"] : parts;
}

/** The two axes: what it is, and what to do about it. */
function verdictHtml(
  { verdict }: Evaluation,
  sections: readonly ReportSection[],
  { condition, action, phrase, question }: Voice,
): string {
  const axis = (name: string, [answer, meaning]: readonly [string, string?]): string =>
    `<div class="axis"><p class="name">${escapeHtml(name)}</p><p class="answer">${escapeHtml(answer)}</p>${
      meaning === undefined ? "" : `<p>${escapeHtml(meaning)}</p>`
    }</div>`;
  const reason = sections.find((one) => one.question === "now")?.lines.at(-1)?.text ?? "";
  return `<section class="verdict" id="now"><h2>${escapeHtml(question.now)}</h2>${axis(
    phrase.byCondition,
    condition[verdict.condition],
  )}${axis(phrase.byAction, action[verdict.action])}<p class="reason">${escapeHtml(reason)}</p></section>`;
}

function sectionHtml(section: ReportSection, evaluation: Evaluation, steps: Steps, voice: Voice): string {
  const { question, heading, lines } = section;
  let html = "";
  let list: "ul" | "ol" | undefined;
  const inList = (wanted: typeof list): void => {
    if (list === wanted) return;
    if (list) html += `</${list}>`;
    if (wanted) html += `<${wanted}>`;
    list = wanted;
  };
  // Hazards stand in a frame of their own.
  let framed = false;
  const frame = (wanted: boolean): void => {
    if (framed !== wanted) html += wanted ? '<div class="hazard">' : "</div>";
    framed = wanted;
  };
  for (const [i, one] of lines.entries()) {
    const content = lineHtml(one, voice, evaluation) + marks(steps.get(`${question} ${i}`), voice);
    inList(one.kind === "item" ? "ul" : one.kind === "step" ? "ol" : undefined);
    if (one.kind === "group") {
      frame(false);
      frame(question === "noticed" && one.text === fill(voice, "group", { name: voice.severity.hazard }));
      html += `<h3>${content}</h3>`;
    } else html += one.kind === "text" ? `<p>${content}</p>` : `<li>${content}</li>`;
  }
  inList(undefined);
  frame(false);
  return `<section id="${question}"><h2>${escapeHtml(heading)}</h2>${html}</section>`;
}

// The title of a finding stands out of its sentence.
function lineHtml({ text, kind }: ReportLine, voice: Voice, { findings }: Evaluation): string {
  const { direction } = voice;
  const title =
    kind === "item"
      ? findings
          .map(({ code }) => voice.finding[code][0] + voice.sentence[0])
          .find((one) => text.startsWith(one))
      : undefined;
  if (title === undefined) return sentenceHtml(text, direction);
  const meaning = sentenceHtml(text.slice(title.length), direction);
  return `<strong>${sentenceHtml(title, direction)}</strong>${meaning === "" ? "" : voice.sentence[1] + meaning}`;
}

function marks(steps: readonly number[] | undefined, voice: Voice): string {
  return steps && steps.length > 0 ? ` ${stepLinks(steps, voice)}` : "";
}

function stepsByLine(evaluation: Evaluation, sections: readonly ReportSection[], messages: Messages): Steps {
  const found = new Map<string, number[]>();
  if (!evaluation.derivation) return found;
  for (const { question, line, steps } of traceSections(evaluation, sections, messages)) {
    const key = `${question} ${line}`;
    const before = found.get(key) ?? [];
    found.set(
      key,
      [...new Set([...before, ...steps])].sort((a, b) => a - b),
    );
  }
  return found;
}
