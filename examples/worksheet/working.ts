// The working: every step with its formula, the numbers put in, the result and where the rule comes from.
import type { Derivation } from "crankworthy";
import { type ReportSection, renderFormula } from "crankworthy/report";
import { fromMarkup, h } from "./dom.js";
import type { Language } from "./languages.js";

/** The derivation as a numbered list; each step can be linked to. */
export function working(
  { heading, lines }: ReportSection,
  derivation: Derivation,
  { tag }: Language,
): HTMLElement {
  // Quantities and formulas are in the words of the glossary, in every language.
  const english = tag === "en" ? {} : { lang: "en", dir: "ltr" };
  const steps = derivation.map(({ quantity, formula, unit }, index) => {
    // A line of the report has the parts of a step below each other: formula, numbers put in if any, result, source.
    const parts = lines[index]?.text.split("\n") ?? [];
    const inserted = parts.length > 3 ? parts[1] : undefined;
    const [result, source] = parts.slice(-2);
    // What yields text has a rule for its formula, not a calculation.
    const shown = unit === "" ? [formula] : fromMarkup(renderFormula(formula), "text/html");
    return h(
      "li",
      { id: `step-${index + 1}`, tabindex: -1 },
      h("p", { class: "formula", ...english }, h("span", { class: "quantity" }, quantity), " = ", ...shown),
      inserted !== undefined && h("p", { class: "inserted", ...english }, inserted),
      h("p", { class: "result" }, h("bdi", {}, result)),
      h("p", { class: "source" }, source),
    );
  });
  const note = lines.slice(derivation.length).map(({ text }) => h("p", { class: "note" }, text));
  return h(
    "section",
    { class: "answer working", "aria-labelledby": "answer-derivation" },
    h("h3", { id: "answer-derivation" }, heading),
    ...note,
    h("ol", {}, ...steps),
  );
}
