// The questions: every field with its label, its entry, a slider where there is one, and a place for what is wrong with it.
import { fill, h } from "./dom.js";
import { choiceEntry, setEntry, textEntry, tickEntry } from "./entries.js";
import { type Field, type Group, groups } from "./fields.data.js";
import type { Language } from "./languages.js";
import type { Values } from "./sheet.js";

/** Tells the page that an entry has changed. */
export type OnChange = () => void;

/** Id of the element for a path. */
export const idOf = (path: string): string => `at-${path.replaceAll(".", "-")}`;

/** All groups as one form. */
export function formFor(language: Language, values: Values, onChange: OnChange): HTMLElement[] {
  return groups.map((group: Group, index) => {
    const plain = group.fields.filter((field) => !field.more);
    return h(
      "section",
      { class: "group", "aria-labelledby": `title-${group.id}` },
      h(
        "h3",
        { id: `title-${group.id}` },
        h("span", { class: "number", "aria-hidden": "true" }, `${index + 1}`),
        language.words.group[group.id as keyof typeof language.words.group],
      ),
      ...plain.map((field) => fieldFor(field, language, values, onChange)),
      plain.length < group.fields.length && foldFor(group, language, values, onChange),
    );
  });
}

/** Fields that are seldom needed; how many of them are filled in is said while they are folded away. */
function foldFor(group: Group, language: Language, values: Values, onChange: OnChange): HTMLElement {
  const { more, moreFilled } = language.words;
  const within = group.fields.filter((field) => field.more);
  const summary = h("summary");
  const count = (): void => {
    const n = within.filter(({ path }) => filled(values, path)).length;
    summary.textContent = n > 0 ? fill(moreFilled, { n }) : more;
  };
  count();
  const changed = (): void => {
    count();
    onChange();
  };
  const entries = within.map((field) => fieldFor(field, language, values, changed));
  return h("details", { class: "more" }, summary, ...entries);
}

function filled(values: Values, path: string): boolean {
  const value = values.get(path);
  return value !== undefined && value !== "" && value !== false;
}

function fieldFor(field: Field, language: Language, values: Values, onChange: OnChange): HTMLElement {
  const id = idOf(field.path);
  const issue = h("p", { class: "issue", id: `${id}-issue`, hidden: true });
  const changed = (): void => {
    whole.classList.toggle("blank", !filled(values, field.path));
    onChange();
  };
  const parts = { id, values, language, changed };
  const entry =
    field.kind === "tick"
      ? tickEntry(field, parts)
      : field.kind === "set"
        ? setEntry(field, parts)
        : field.kind === "choice"
          ? choiceEntry(field, parts)
          : textEntry(field, parts);
  const whole = h("div", { class: `field ${field.kind}`, "data-path": field.path }, ...entry, issue);
  whole.classList.toggle("blank", !filled(values, field.path));
  return whole;
}
