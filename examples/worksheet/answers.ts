// The answers: verdict, cautions and next steps first, then question by question, the working last.
import type { BatteryRecord, Evaluation } from "crankworthy";
import type { ReportLine } from "crankworthy/report";
import { type ReportSection, reportSections, traceReport } from "crankworthy/report";
import { bibliography } from "crankworthy/sources";
import { fill, h, runs } from "./dom.js";
import { type Drawn, drawing, drawn } from "./drawings.js";
import { answerField, type Place, placeOf } from "./field.js";
import type { Language } from "./languages.js";
import { working } from "./working.js";

/** What is asked first at the counter. */
const FIRST = ["now", "hurt", "next"] as const;

interface Shown {
  readonly evaluation: Evaluation;
  readonly record: BatteryRecord;
  readonly language: Language;
  readonly before: Place | undefined;
  /** Width for pictures [px]. */
  readonly width: number;
}

/** Everything on the answer side. */
export function answersFor({ evaluation, record, language, before, width }: Shown): HTMLElement[] {
  const { messages, pictures } = language.pack;
  const sections = reportSections(evaluation, messages, bibliography);
  const steps = stepsByLine(evaluation, language);
  const pictureOf = (question: string): HTMLElement | undefined =>
    drawn.includes(question as Drawn)
      ? drawing(question as Drawn, evaluation, record, { width, words: pictures })
      : undefined;
  const first = FIRST.flatMap((question) => sections.filter((one) => one.question === question));
  const others = sections.filter(
    ({ question }) => question !== "title" && !first.some((one) => one.question === question),
  );
  return [
    answerField(language, placeOf(evaluation), before),
    ...first.map((section) => answer(section, language, steps)),
    ...others.map((section) =>
      section.question === "derivation"
        ? working(section, evaluation.derivation ?? [], language)
        : answer(section, language, steps, pictureOf(section.question)),
    ),
  ];
}

type Steps = ReadonlyMap<string, readonly number[]>;

function stepsByLine(evaluation: Evaluation, { pack }: Language): Steps {
  const found = new Map<string, number[]>();
  for (const { question, line, steps } of traceReport(evaluation, { messages: pack.messages })) {
    const key = `${question} ${line}`;
    found.set(
      key,
      [...new Set([...(found.get(key) ?? []), ...steps])].sort((a, b) => a - b),
    );
  }
  return found;
}

function answer(
  { question, heading, lines }: ReportSection,
  language: Language,
  steps: Steps,
  picture?: HTMLElement,
): HTMLElement {
  const blocks: HTMLElement[] = [];
  lines.forEach((line, index) => {
    const whole = lineElement(line, steps.get(`${question} ${index}`) ?? [], language);
    if (whole.tagName !== "LI") {
      blocks.push(whole);
      return;
    }
    // Entries of one list stand together.
    const tag = line.kind === "step" ? "ol" : "ul";
    const last = blocks.at(-1);
    if (last?.tagName.toLowerCase() === tag) last.append(whole);
    else blocks.push(h(tag, {}, whole));
  });
  return h(
    "section",
    { class: `answer ${question}`, "aria-labelledby": `answer-${question}` },
    h("h3", { id: `answer-${question}` }, heading),
    ...blocks,
    picture,
  );
}

function lineElement(
  { kind, text }: ReportLine,
  steps: readonly number[],
  { words, pack }: Language,
): HTMLElement {
  const tag = kind === "group" ? "h4" : kind === "text" ? "p" : "li";
  const links = steps.flatMap((n, index) => [
    index > 0 ? ", " : "",
    h("a", { href: `#step-${n}`, "aria-label": fill(words.workedIn, { n }) }, `${n}`),
  ]);
  return h(
    tag,
    {},
    ...runs(text, pack.messages.direction),
    links.length > 0 && h("span", { class: "steps" }, " [", ...links, "]"),
  );
}
