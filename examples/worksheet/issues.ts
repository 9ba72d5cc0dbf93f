// What the library says is wrong with a record, beside the field that its path names.
import type { InputIssue } from "crankworthy";
import { at, fill, h } from "./dom.js";
import type { Field } from "./fields.data.js";
import { idOf } from "./form.js";
import type { Language } from "./languages.js";
import { fields } from "./sheet.js";

/** Marks the fields, opens folds around them, and gives the list for the answer side. */
export function showIssues(issues: readonly InputIssue[], language: Language): HTMLElement[] {
  const texts = new Map<string, HTMLElement[]>();
  const list = issues.map((issue) => {
    const field = fieldOf(issue.path);
    const text = sentence(issue, field, language);
    if (!field) return h("li", {}, ...text);
    texts.set(field.path, [
      ...(texts.get(field.path) ?? []),
      h("span", {}, ...sentence(issue, field, language)),
    ]);
    const words = language.words.field[field.path as keyof typeof language.words.field];
    return h("li", {}, h("a", { href: `#${idOf(field.path)}` }, words), ": ", ...text);
  });
  for (const { path } of fields) {
    const found = texts.get(path) ?? [];
    const entry = at(idOf(path));
    const place = at(`${idOf(path)}-issue`);
    place.replaceChildren(...found);
    place.hidden = found.length === 0;
    entry.closest(".field")?.classList.toggle("wrong", found.length > 0);
    if (found.length === 0) entry.removeAttribute("aria-invalid");
    else entry.setAttribute("aria-invalid", "true");
    if (found.length > 0) entry.closest("details")?.setAttribute("open", "");
  }
  if (list.length === 0) return [];
  const heading = fill(language.words.look, { n: issues.length });
  return [h("section", { class: "answer issues" }, h("h3", {}, heading), h("ul", {}, ...list))];
}

/** The field of a path; for a part of the record that is missing as a whole, its first field. */
export function fieldOf(path: string): Field | undefined {
  const plain = path.replace(/\[\d+\]/g, "");
  return (
    fields.find((one) => one.path === plain) ??
    fields.find((one) => plain.startsWith(`${one.path}.`) && one.kind !== "tick") ??
    (plain === ""
      ? undefined
      : fields.find((one) => one.path.startsWith(`${plain}.`) && one.path !== "identity.chemistry"))
  );
}

// The library speaks English and puts the path first, which the place says already.
function sentence(issue: InputIssue, field: Field | undefined, { tag, words }: Language): (Node | string)[] {
  const { path, code } = issue;
  const index = /\[(\d+)\]$/.exec(path)?.[1];
  const start = `${path}: `;
  const said = field && issue.message.startsWith(start) ? issue.message.slice(start.length) : issue.message;
  const text = said.charAt(0).toUpperCase() + said.slice(1);
  return [
    index === undefined ? "" : `${fill(words.entry, { n: Number(index) + 1 })}: `,
    tag === "en" ? "" : `${words.issue?.[code] ?? ""} `,
    tag === "en" ? `${text}.` : h("span", { lang: "en", dir: "ltr" }, `${text}.`),
  ];
}
