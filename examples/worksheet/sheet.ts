// What stands on the sheet, as text, and the record it means.
import { type Field, type Group, groups } from "./fields.data.js";

export type Value = string | boolean | readonly string[];
/** Entries by the path of their field; a blank one is missing. */
export type Values = Map<string, Value>;

type Tree = { [key: string]: unknown };

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i;
const LONGEST_TEXT = 300;
const allGroups: readonly Group[] = groups;
export const fields: readonly Field[] = allGroups.flatMap((group) => group.fields);

/** The decimal mark of a language: `.` or `,`; other marks are written as `.`, as on an instrument. */
export function decimalMark(language: string): "." | "," {
  const parts = new Intl.NumberFormat(language, { numberingSystem: "latn" }).formatToParts(0.5);
  return parts.find((part) => part.type === "decimal")?.value === "," ? "," : ".";
}

/** What was typed as a number, or as it is: then the library says what is wrong with it. */
export function numberFrom(text: string, mark: "." | ","): number | string {
  const plain = text.trim().replace("−", "-").replace(mark, ".");
  return NUMBER.test(plain) ? Number(plain) : text.trim();
}

/** A number as the sheet shows it. */
export function numberText(value: number, mark: "." | ","): string {
  return String(value).replace(".", mark);
}

/**
 * Entries of a list: apart by blanks or semicolons, and by commas. A comma between two digits is none of these: it may be meant
 * for thousands ("1,200"), so the text stays whole for the library to refuse, unless it is the decimal mark.
 */
export function listFrom(text: string, mark: "." | ","): (number | string)[] {
  const parts = text.trim().split(mark === "," ? /,?\s+|;\s*/ : /(?:[\s;]|(?<!\d),|,(?!\d))+/);
  return parts.filter((part) => part !== "").map((part) => numberFrom(part, mark));
}

/** The record that the entries make. Nothing is checked here: that is the library's work. */
export function recordOf(values: Values, mark: "." | ","): Tree {
  const record: Tree = { schemaVersion: 1, identity: {}, measurements: {} };
  for (const group of allGroups) {
    if (group.onlyWith !== undefined && values.get(group.onlyWith) !== true) continue;
    for (const field of group.fields) {
      if (field.path === group.onlyWith) continue;
      const meant = meaning(field, values.get(field.path), mark);
      if (meant !== undefined) put(record, field.path.split("."), meant);
    }
  }
  return record;
}

function meaning(field: Field, value: Value | undefined, mark: "." | ","): unknown {
  if (field.kind === "tick") return value === true ? true : field.always ? false : undefined;
  if (field.kind === "set") {
    const list = Array.isArray(value) ? [...value] : [];
    return list.length > 0 || field.always ? list : undefined;
  }
  if (typeof value !== "string" || value.trim() === "") return undefined;
  switch (field.kind) {
    case "number":
      return numberFrom(value, mark);
    case "numbers": {
      const list = listFrom(value, mark);
      return list.length === 1 && !field.always ? list[0] : list;
    }
    case "money":
      return value.trim().replace(mark, ".");
    case "choice":
      if (field.as === "number") return numberFrom(value, mark);
      if (field.as === "boolean" && (value === "true" || value === "false")) return value === "true";
      return value;
    default:
      return value.trim();
  }
}

function put(record: Tree, [key, ...rest]: readonly string[], value: unknown): void {
  if (key === undefined) return;
  if (rest.length === 0) record[key] = value;
  else {
    record[key] ??= {};
    put(record[key] as Tree, rest, value);
  }
}

/** Entries for a record from anywhere, and the paths in it that the sheet has no place for. */
export function valuesOf(record: unknown, mark: "." | ","): { values: Values; leftOut: string[] } {
  const values: Values = new Map();
  const taken = new Set<string>(["schemaVersion"]);
  for (const group of allGroups) {
    for (const field of group.fields) {
      const given = find(record, field.path.split("."));
      if (given === undefined) continue;
      const shown = field.path === group.onlyWith ? true : entry(field, given, mark);
      if (shown === undefined) continue;
      values.set(field.path, shown);
      if (field.path !== group.onlyWith) taken.add(field.path);
    }
  }
  return { values, leftOut: leaves(record).filter((path) => !taken.has(path)) };
}

function entry(field: Field, given: unknown, mark: "." | ","): Value | undefined {
  if (field.kind === "tick") return typeof given === "boolean" ? given : undefined;
  if (field.kind === "set") {
    const known = Array.isArray(given) && given.every((one) => field.options.includes(one));
    return known ? (given as string[]) : undefined;
  }
  const list = Array.isArray(given) && field.kind === "numbers" ? given : [given];
  if (list.length > 50) return undefined;
  const texts = list.map((one) => {
    if (typeof one === "number") return numberText(one, mark);
    if (field.kind === "choice" && typeof one === "boolean") return String(one);
    if (typeof one !== "string" || one.length > LONGEST_TEXT) return undefined;
    return field.kind === "money" ? one.replace(".", mark) : one;
  });
  return texts.includes(undefined) ? undefined : texts.join(" ");
}

function find(value: unknown, [key, ...rest]: readonly string[]): unknown {
  if (key === undefined) return value;
  if (typeof value !== "object" || value === null || !Object.hasOwn(value, key)) return undefined;
  return find((value as Tree)[key], rest);
}

/** Paths of all values; a list counts as one. */
function leaves(value: unknown, before = ""): string[] {
  if (typeof value !== "object" || value === null || Array.isArray(value))
    return before === "" ? [] : [before];
  return Object.entries(value).flatMap(([key, inner]) =>
    leaves(inner, before === "" ? key : `${before}.${key}`),
  );
}
