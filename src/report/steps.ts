import type { Derivation, DerivationStep, Source } from "../sources/index.js";
import { fill, fixed } from "./format.js";
import { line, type ReportLine } from "./line.js";
import { clean } from "./text.js";
import type { Voice } from "./voice.js";

/** Sources of a derivation by key, such as the `bibliography`. */
export type ReportSources = Readonly<Record<string, Source>>;

/** The steps of a derivation, in the order in which they were taken, with inputs, uncertainty and source. */
export function derivationLines(
  derivation: Derivation,
  messages: Voice,
  sources: ReportSources,
): ReportLine[] {
  const lines = derivation.map((step) => line(stepText(step, messages, sources), "step"));
  if (derivation.some((step) => step.standardUncertainty !== undefined))
    lines.push(line(messages.phrase.plusMinus));
  return lines;
}

function stepText(step: DerivationStep, messages: Voice, sources: ReportSources): string {
  const given = inputTexts(step, messages).map(([, text]) => text);
  return [
    clean(`${step.quantity} = ${step.formula}`),
    ...(given.length > 0 ? [clean(given.join("; "))] : []),
    stepResult(step, messages),
    stepSource(step, messages, sources),
  ].join("\n");
}

/** `name = number` for each input that says something, with the number itself. */
export function inputTexts(
  { inputs }: DerivationStep,
  messages: Voice,
): [value: number | string, text: string][] {
  return Object.entries(inputs)
    .filter(([, value]) => value !== "")
    .map(([name, value]) => [
      value,
      `${name}\u00a0=\u00a0${typeof value === "number" ? short(value, messages) : value}`,
    ]);
}

/** `= result ± uncertainty unit`. */
export function stepResult({ result, standardUncertainty, unit }: DerivationStep, messages: Voice): string {
  return fill(messages, "stepResult", {
    result: resultText(result, standardUncertainty, messages),
    unit: unit === "1" ? "" : unit,
  });
}

/** The source of a step with edition, locator and standing. */
export function stepSource(
  { source, standing }: DerivationStep,
  messages: Voice,
  sources: ReportSources,
): string {
  const known = Object.hasOwn(sources, source) ? sources[source] : undefined;
  const { title, edition, locator }: Partial<Source> = known ?? { title: source };
  return fill(messages, "stepSource", { title, edition, locator, standing });
}

// JCGM 100 §7.2.6: the uncertainty with two significant digits, the result to the same decimal.
function resultText(result: number | string, uncertainty: number | undefined, messages: Voice): string {
  if (typeof result === "string") return result;
  if (uncertainty === undefined || !(uncertainty > 0)) return short(result, messages);
  const digits = Math.min(10, Math.max(0, 1 - Math.floor(Math.log10(uncertainty))));
  return `${fixed(result, digits, messages)} ± ${fixed(uncertainty, digits, messages)}`;
}

function short(value: number, { asIs }: Voice): string {
  return Number.isFinite(value) ? asIs(String(Number(value.toPrecision(5)))) : "?";
}
