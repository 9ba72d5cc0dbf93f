import type { Interval } from "../numeric/index.js";
import type { Phrase, Word } from "./messages.js";
import { clean } from "./text.js";
import type { Voice } from "./voice.js";

/** Values for the placeholders of a template. */
export type Parameters = Readonly<Record<string, number | string | undefined>>;

// Unit of a placeholder: decimals, and what is printed behind (no-break space, so that number and unit stay together).
const UNITS: Readonly<Record<string, readonly [digits: number, shown: string]>> = {
  V: [2, "\u00a0V"],
  A: [0, "\u00a0A"],
  Ah: [0, "\u00a0Ah"],
  mA: [0, "\u00a0mA"],
  mV: [0, "\u00a0mV"],
  mΩ: [1, "\u00a0mΩ"],
  m: [1, "\u00a0m"],
  "m³": [1, "\u00a0m³"],
  "m³/h": [1, "\u00a0m³/h"],
  "cm²": [0, "\u00a0cm²"],
  min: [0, "\u00a0min"],
  h: [1, "\u00a0h"],
  "°C": [0, "\u00a0°C"],
  "%": [0, "\u00a0%"],
  "%1": [1, "\u00a0%"],
  d: [1, ""],
  g: [3, ""],
  n: [0, ""],
};

/** A number with fixed decimals, no exponent, no minus zero; `?` for what is no finite number. */
export function fixed(value: number, digits: number, voice: Voice): string {
  return Number.isFinite(value) ? voice.decimals(value, digits) : "?";
}

/** A number as it stands on a label: no rounding. */
export function asPrinted(value: number, unit: string, { asIs }: Voice): string {
  return Number.isFinite(value) ? `${asIs(String(value))}\u00a0${unit}` : "?";
}

/** A number in a unit of {@link Messages}, rounded for the reader. */
export function quantity(value: number, unit: string, messages: Voice): string {
  if (unit === "p") return chance(value, messages);
  if (unit === "c") return quantity(Math.min(1, Math.max(0, value)), "%", messages);
  if (unit === "-V") return quantity(-value, "V", messages);
  if (!Number.isFinite(value)) return "?";
  const [digits, shown] = UNITS[unit] ?? [Number.isInteger(value) ? 0 : 2, ""];
  const text = fixed(unit.startsWith("%") ? 100 * value : value, digits, messages);
  return (unit === "h" || unit === "d" ? text.replace(/\D0$/, "") : text) + shown;
}

function chance(probability: number, messages: Voice): string {
  const [hundred, thousand, above, below] = messages.chance;
  if (!(probability >= 0 && probability <= 1)) return "?";
  if (probability > 0.999) return above;
  if (probability < 0.001) return below;
  const fine = probability > 0.99 || probability < 0.01;
  return (fine ? thousand : hundred).replace("{n}", fixed((fine ? 1000 : 100) * probability, 0, messages));
}

/** `from 57 to 93 %`, with the unit once. */
export function range({ lower, upper }: Interval, unit: string, messages: Voice): string {
  const [low, high] = [quantity(lower, unit, messages), quantity(upper, unit, messages)];
  const shown = UNITS[unit]?.[1] ?? "";
  return low === high
    ? high
    : fill(messages, "range", { lower: low.slice(0, low.length - shown.length), upper: high });
}

/** An interval of a share; what lies outside the possible is not shown, but said: `at least 81 %`. */
export function shareRange(interval: Interval, most: number, messages: Voice): string {
  const { lower, upper } = interval;
  if (lower <= 0)
    return upper >= most
      ? messages.phrase.anything
      : fill(messages, "atMost", { value: quantity(Math.max(0, upper), "%", messages) });
  return upper >= most
    ? fill(messages, "atLeast", { value: quantity(Math.min(most, lower), "%", messages) })
    : range(interval, "%", messages);
}

/** Codes, separated by commas, as words. */
export function words(codes: string, { word, comma }: Voice): string {
  return codes
    .split(", ")
    .map((code) => (Object.hasOwn(word, code) ? word[code as Word] : clean(code).replaceAll("-", " ")))
    .join(comma);
}

// `one=day|other=days`: the form for this number, as it is shown rounded to a whole one.
function plural(count: number | string, forms: string, { pluralForm }: Voice): string {
  const wanted = typeof count === "number" ? pluralForm(Math.round(count)) : "other";
  const form = (name: string) => forms.split("|").find((one) => one.startsWith(`${name}=`));
  return (form(wanted) ?? form("other") ?? "=?").replace(/^\w+=/, "");
}

/** Fills a template of the catalogue: see {@link Messages} for its notation. A value is never read as a template. */
export function fillTemplate(messages: Voice, template: string, parameters: Parameters): string {
  const value = (name: string): number | string | undefined => {
    const given = Object.hasOwn(parameters, name) ? parameters[name] : undefined;
    // "?" stands for what a hand-made finding does not know.
    return given === "" || given === "?" ? undefined : given;
  };
  let wanted = template;
  // Innermost brackets first.
  for (let before = ""; before !== wanted; ) {
    before = wanted;
    wanted = wanted.replace(/\[([^[\]]*)\]/g, (_, part: string) =>
      [...part.matchAll(/\{([\w-]+)/g)].every(([, name]) => value(name!) !== undefined) ? part : "",
    );
  }
  return wanted.replace(/\{([\w-]+)([:#]?)([^}]*)\}/g, (_, name: string, kind: string, unit: string) => {
    const given = value(name);
    if (given === undefined) return "?";
    if (kind === "#") return plural(given, unit, messages);
    if (typeof given === "number") return quantity(given, unit, messages);
    if (unit === "s") return messages.asIs(clean(given));
    if (unit === "date") return messages.day(clean(given));
    return unit === "w" ? words(given, messages) : inOrder(clean(given), messages);
  });
}

// In a text from right to left a minus sign, a code such as 2024-12 and a formula would be turned round; the mark U+200E
// before them keeps their order. What the library wrote itself lost its marks when it was cleaned.
function inOrder(text: string, { direction }: Voice): string {
  if (direction === "ltr") return text;
  const signed = text.replace(/(?<![\p{L}\p{N}\p{M}])(?=[-−]\d)/gu, "\u200e");
  return /^[\d(][^\p{Script=Arabic}\p{Script=Hebrew}]*$/u.test(signed) ? `\u200e${signed}` : signed;
}

/** Fills a phrase of the catalogue. */
export function fill(messages: Voice, phrase: Phrase, parameters: Parameters): string {
  return fillTemplate(messages, messages.phrase[phrase], parameters);
}
