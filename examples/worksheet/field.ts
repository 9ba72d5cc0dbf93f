// The field of answers: what the battery is on one side, what to do now on the other, and a line drawn from one to the other, as
// in an exercise where each word on the left belongs to a word on the right.
import type { Evaluation } from "crankworthy";
import type { Sentence } from "crankworthy/report";
import { h } from "./dom.js";
import type { Language } from "./languages.js";

/** Condition and action, each by its place on its side. */
export interface Place {
  readonly condition: string;
  readonly action: string;
}

export const placeOf = ({ verdict: { condition, action } }: Evaluation): Place => ({ condition, action });

/** The drawing, with the answer and the answer before it, if there was another. */
export function answerField({ pack, words }: Language, now: Place, before: Place | undefined): HTMLElement {
  const { condition, action } = pack.messages;
  const conditions = Object.keys(condition);
  const actions = Object.keys(action);
  const side = (name: string, entries: Readonly<Record<string, Sentence>>, chosen: string): HTMLElement =>
    h(
      "div",
      { class: "side" },
      h("p", { class: "axis" }, name),
      h(
        "ul",
        {},
        ...Object.entries(entries).map(([code, [title]]) =>
          h("li", code === chosen ? { class: "chosen", "aria-current": "true" } : {}, h("span", {}, title)),
        ),
      ),
    );
  const middle = (list: readonly string[], code: string): number =>
    ((list.indexOf(code) + 0.5) / list.length) * 100;
  const between = ({ condition: from, action: to }: Place): string => {
    const [start, end] = [middle(conditions, from), middle(actions, to)];
    return `M0,${start} C45,${start} 55,${end} 100,${end}`;
  };
  const lines = svg("svg", { viewBox: "0 0 100 100", preserveAspectRatio: "none", "aria-hidden": "true" });
  // Faint lines: the two axes.
  lines.append(svg("path", { class: "rule", d: "M0,0 V100 M100,0 V100" }));
  if (before) lines.append(svg("path", { class: "before", d: between(before) }));
  lines.append(svg("path", { class: "line", d: between(now) }));
  return h(
    "figure",
    { class: "field-of-answers" },
    h(
      "div",
      { class: "sides" },
      side(words.conditionAxis, condition, now.condition),
      h("div", { class: "lines" }, lines as unknown as HTMLElement),
      side(words.actionAxis, action, now.action),
    ),
    before && h("figcaption", {}, words.before),
  );
}

function svg(tag: string, attributes: Readonly<Record<string, string>>): SVGElement {
  const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  return made;
}
