// The kinds of entries. Each writes what is entered into the values and calls `changed`.
import { h } from "./dom.js";
import type { ChoiceField, NumberField, SetField, TextField, TickField } from "./fields.data.js";
import { type Language, optionWord } from "./languages.js";
import { listFrom, numberText, type Values } from "./sheet.js";

interface Parts {
  readonly id: string;
  readonly values: Values;
  readonly language: Language;
  readonly changed: () => void;
}

const labelOf = (path: string, { words }: Language): string => words.field[path as keyof typeof words.field];

/** A box to tick. */
export function tickEntry({ path }: TickField, { id, values, language, changed }: Parts): HTMLElement[] {
  const box = h("input", { type: "checkbox", id, "aria-describedby": `${id}-issue` });
  box.checked = values.get(path) === true;
  box.addEventListener("change", () => {
    values.set(path, box.checked);
    changed();
  });
  return [box, h("label", { for: id }, labelOf(path, language))];
}

/** Several boxes that make a list. */
export function setEntry(
  { path, options }: SetField,
  { id, values, language, changed }: Parts,
): HTMLElement[] {
  const given = values.get(path);
  const boxes = options.map((option) => {
    const box = h("input", { type: "checkbox", value: option });
    box.checked = Array.isArray(given) && given.includes(option);
    box.addEventListener("change", () => {
      values.set(
        path,
        boxes.filter((one) => one.checked).map((one) => one.value),
      );
      changed();
    });
    return box;
  });
  return [
    h(
      "fieldset",
      { id, tabindex: -1, "aria-describedby": `${id}-issue` },
      h("legend", {}, labelOf(path, language)),
      ...boxes.map((box) => h("label", {}, box, optionWord(box.value, language))),
    ),
  ];
}

/** One of several; a value from a link that is none of them stays to be seen, and the library says what is wrong. */
export function choiceEntry(field: ChoiceField, { id, values, language, changed }: Parts): HTMLElement[] {
  const { path, options, words } = field;
  const given = values.get(path);
  const word = (option: string): string => {
    const { chemistry, standard } = language.pack.messages;
    if (words === "chemistry") return chemistry[option as keyof typeof chemistry];
    if (words === "standard") return standard[option as keyof typeof standard];
    return words === "code" ? option.toUpperCase().replaceAll("-", " ") : optionWord(option, language);
  };
  const list = h(
    "select",
    { id, "aria-describedby": `${id}-issue` },
    h("option", { value: "" }, "–"),
    ...options.map((option) => h("option", { value: option }, word(option))),
    typeof given === "string" &&
      given !== "" &&
      !options.includes(given) &&
      h("option", { value: given }, given),
  );
  list.value = typeof given === "string" ? given : "";
  list.addEventListener("change", () => {
    values.set(path, list.value);
    changed();
  });
  return [h("label", { for: id }, labelOf(path, language)), list];
}

/** Text, a day, an amount, a number or several; numbers with a slider where there is a usual span. */
export function textEntry(field: NumberField | TextField, parts: Parts): HTMLElement[] {
  const { path, kind, unit = "" } = field;
  const { id, values, language, changed } = parts;
  const given = values.get(path);
  const entry = h("input", {
    type: "text",
    id,
    inputmode: kind === "number" || kind === "money" ? "decimal" : undefined,
    placeholder: kind === "date" ? "YYYY-MM-DD" : undefined,
    autocomplete: "off",
    spellcheck: "false",
    dir: kind === "text" ? "auto" : "ltr",
    "aria-describedby": `${id}-unit ${id}-issue`,
  });
  entry.value = typeof given === "string" ? given : "";
  const label = h("label", { for: id, id: `${id}-label` }, labelOf(path, language));
  const blank = h(
    "span",
    { class: "entry", dir: kind === "text" ? undefined : "ltr" },
    entry,
    h("span", { class: "unit", id: `${id}-unit` }, unit),
  );
  const slider = "slide" in field && field.slide ? sliderFor(field, field.slide, entry, parts) : undefined;
  entry.addEventListener("input", () => {
    values.set(path, entry.value);
    slider?.follow();
    changed();
  });
  return slider ? [label, slider.element, blank] : [label, blank];
}

function sliderFor(
  { unit, kind, path }: NumberField,
  [from, to, step]: readonly [number, number, number],
  entry: HTMLInputElement,
  { id, values, language, changed }: Parts,
): { element: HTMLInputElement; follow: () => void } {
  const { mark, words } = language;
  const slider = h("input", { type: "range", min: from, max: to, step, id: `${id}-slider` });
  slider.setAttribute("aria-label", `${labelOf(path, language)}, ${words.slider}`);
  const digits = step < 0.1 ? 2 : step < 1 ? 1 : 0;
  const numbers = (): number[] => {
    const list = listFrom(entry.value, mark);
    return list.every((one) => typeof one === "number") ? (list as number[]) : [];
  };
  const mean = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;
  const follow = (): void => {
    const list = numbers();
    slider.classList.toggle("blank", list.length === 0);
    slider.value = String(list.length === 0 ? (from + to) / 2 : mean(list));
    slider.setAttribute("aria-valuetext", list.length === 0 ? words.notGiven : `${entry.value} ${unit}`);
  };
  slider.addEventListener("input", () => {
    const list = numbers();
    // Several readings move together and keep their differences.
    const shift = list.length > 0 ? Number(slider.value) - mean(list) : 0;
    const moved =
      kind === "numbers" && list.length > 1 ? list.map((one) => one + shift) : [Number(slider.value)];
    entry.value = moved.map((one) => numberText(Number(one.toFixed(digits)), mark)).join(" ");
    values.set(path, entry.value);
    slider.classList.remove("blank");
    slider.setAttribute("aria-valuetext", `${entry.value} ${unit}`);
    changed();
  });
  follow();
  return { element: slider, follow };
}
