import type { Derivation, DerivationStep } from "../sources/index.js";
import { fill } from "./format.js";
import { escapeHtml } from "./html-text.js";
import { renderFormula } from "./mathml.js";
import { inputTexts, type ReportSources, stepResult, stepSource } from "./steps.js";
import { unmistakable } from "./trace.js";
import type { Voice } from "./voice.js";

/** A place on the web, written out; a remark beside it makes it none. */
const ADDRESS = /^https:\/\/[^\s"'<>\\,;]+$/;

/** The derivation as a numbered list; each step can be linked to by `#step-NUMBER`. */
export function stepsHtml(derivation: Derivation, messages: Voice, sources: ReportSources): string {
  // Quantities and formulas are in the words of the glossary, whatever the language of the page.
  const english = /^en\b/i.test(messages.language) ? "" : ' lang="en" dir="ltr"';
  const items = derivation.map((step, i) => {
    const formula = isCalculation(step) ? renderFormula(step.formula) : escapeHtml(step.formula);
    const inputs = inputTexts(step, messages).map(([value, text]) => {
      const from = earlier(derivation, i, value);
      return escapeHtml(text) + (from ? ` ${stepLinks([from], messages)}` : "");
    });
    return [
      `<li id="step-${i + 1}"><span class="number">${i + 1}</span>`,
      `<p class="quantity"${english}>${escapeHtml(step.quantity)}</p>`,
      `<p class="formula"${english}>= ${formula}</p>`,
      inputs.length > 0 ? `<p class="inputs"${english}>${inputs.join("; ")}</p>` : "",
      `<p class="result" dir="ltr">${escapeHtml(stepResult(step, messages))}</p>`,
      `<p class="source">${sourceHtml(step, messages, sources)}</p></li>`,
    ].join("");
  });
  const note = derivation.some((step) => step.standardUncertainty !== undefined)
    ? `<p class="note">${escapeHtml(messages.phrase.plusMinus)}</p>`
    : "";
  return `<ol>${items.join("\n")}</ol>${note}`;
}

/** Links to steps, in brackets. */
export function stepLinks(steps: readonly number[], messages: Voice): string {
  const links = steps.map(
    (n) => `<a href="#step-${n}" aria-label="${escapeHtml(fill(messages, "step", { n }))}">${n}</a>`,
  );
  return `<span class="steps">[${links.join(", ")}]</span>`;
}

// What yields text has a layout or a rule for its formula, not a calculation.
function isCalculation({ unit }: DerivationStep): boolean {
  return unit !== "";
}

/** The step before this one whose result is this very number. */
function earlier(derivation: Derivation, before: number, value: number | string): number | undefined {
  if (!unmistakable(value)) return undefined;
  const found = derivation.slice(0, before).findLastIndex(({ result }) => result === value);
  return found < 0 ? undefined : found + 1;
}

function sourceHtml(step: DerivationStep, messages: Voice, sources: ReportSources): string {
  const text = escapeHtml(stepSource(step, messages, sources));
  const known = Object.hasOwn(sources, step.source) ? sources[step.source] : undefined;
  const { title, address = "" } = known ?? {};
  if (title === undefined || !ADDRESS.test(address)) return text;
  const shown = escapeHtml(title);
  const link = `<a href="${escapeHtml(address)}" rel="noreferrer">${shown}</a>`;
  return text.replace(shown, () => link);
}
