import type { z } from "zod";
import { policyConventions } from "../warranty/index.js";
import { type InputIssue, issue, picture } from "./issue.js";
import { nearestKey } from "./nearest-key.js";
import { NOT_A_DATE, type Range, ranges } from "./ranges.data.js";
import type { BatteryRecord } from "./record.js";
import { recordSchema } from "./schema.js";

type Path = readonly PropertyKey[];
type ZodIssue = z.core.$ZodIssue;

/** A record, or every issue it has. */
export type ParseResult =
  | { readonly ok: true; readonly record: BatteryRecord }
  | { readonly ok: false; readonly issues: readonly InputIssue[] };

const MOST_UNKNOWN_KEYS = 20;
const TERMS = "warranty.terms.";

/**
 * Checks an unknown value against the record's schema. Never throws, never converts, never drops a key.
 *
 * @param input anything
 */
export function parseRecord(input: unknown): ParseResult {
  let parsed: ReturnType<typeof recordSchema.safeParse>;
  try {
    parsed = recordSchema.safeParse(input);
  } catch {
    // Getters and proxies can throw while being read; data never does.
    return { ok: false, issues: [issue("wrong-type", "", "an object that throws when read", "plain data")] };
  }
  if (!parsed.success)
    return { ok: false, issues: parsed.error.issues.flatMap((one) => translate(one, [], input)) };
  // The schema's output type differs from the record's only in `readonly` and in `undefined` for missing keys.
  const record = parsed.data as BatteryRecord;
  const issues = record.warranty?.terms.useClasses ? pollutingClasses(input) : [];
  return issues.length === 0 ? { ok: true, record } : { ok: false, issues };
}

const POLLUTING = ["__proto__", "constructor", "prototype"];

// The schema library drops an own "__proto__" of a free-form table; nothing is dropped silently here.
function pollutingClasses(input: unknown): InputIssue[] {
  const path = ["warranty", "terms", "useClasses"];
  const classes = valueAt(input, path) as object;
  return POLLUTING.filter((key) => Object.hasOwn(classes, key)).map((key) =>
    issue("unknown-key", pathText([...path, key]), "a reserved name", "another name for the use class"),
  );
}

function translate(found: ZodIssue, before: Path, input: unknown): InputIssue[] {
  const path = [...before, ...found.path];
  const name = pathText(path);
  const value = valueAt(input, path);
  const received = picture(value);
  const range = rangeOf(path);
  switch (found.code) {
    case "invalid_type":
      if (value === undefined) return [missing(name, expectedType(found.expected, range))];
      if (typeof value === "number" && !Number.isFinite(value))
        return [issue("not-finite", name, received, range ? rangeText(range) : "a finite number")];
      return [
        issue(
          "wrong-type",
          name,
          received,
          expectedType(found.expected, range),
          typeof value === "number" && found.expected === "string" && name.startsWith("warranty.")
            ? 'money and percentages are decimal text, such as "129.99"'
            : typeof value === "string" && range
              ? "numbers are not read from text"
              : "",
        ),
      ];
    case "too_big":
    case "too_small":
      return [outOfRange(found, name, value, range)];
    case "invalid_value": {
      const choices = found.values.map((choice) => picture(choice)).join(", ");
      if (value === undefined) return [missing(name, `one of ${choices}`)];
      return [issue("not-a-choice", name, received, `one of ${choices}`, nearChoice(value, found.values))];
    }
    case "unrecognized_keys":
      return unknownKeys(found.keys, path);
    case "invalid_union": {
      // Of several shapes, speak of the one the value was meant to have.
      const branch =
        found.errors.find((errors) => errors.every((error) => error.path.length > 0)) ?? found.errors[0];
      return (branch ?? []).flatMap((one) => translate(one, path, input));
    }
    case "invalid_format":
      return [issue("wrong-format", name, received, formatText(name))];
    case "custom":
      return [
        found.message === NOT_A_DATE
          ? issue("not-a-date", name, received, "a date of the calendar as YYYY-MM-DD, 1950 to 2199")
          : issue("wrong-format", name, received, found.message),
      ];
    default:
      return [issue("wrong-format", name, received, found.message)];
  }
}

function missing(name: string, expected: string): InputIssue {
  const field = name.slice(TERMS.length);
  if (name.startsWith(TERMS) && Object.hasOwn(policyConventions, field)) {
    const conventions = policyConventions[field as keyof typeof policyConventions];
    const list = conventions.map(([convention, meaning]) => `"${convention}" (${meaning})`).join(" or ");
    return issue(
      "missing-convention",
      name,
      "nothing",
      list,
      "published practice differs, so there is no default",
    );
  }
  return issue("missing", name, "nothing", expected);
}

function outOfRange(
  found: Extract<ZodIssue, { code: "too_big" | "too_small" }>,
  name: string,
  value: unknown,
  range: Range | undefined,
): InputIssue {
  const received = picture(value);
  if (range && typeof value === "number") {
    const magnitude = Math.abs(value);
    const hint = range.looksLike?.find(([from, to]) => magnitude >= from && magnitude <= to)?.[2];
    return issue(hint ? "wrong-unit" : "out-of-range", name, received, rangeText(range), hint);
  }
  const bound = found.code === "too_big" ? `at most ${found.maximum}` : `at least ${found.minimum}`;
  const of = found.origin === "string" ? " characters" : found.origin === "array" ? " entries" : "";
  return issue(
    found.origin === "string" && found.code === "too_big" ? "too-long" : "out-of-range",
    name,
    received,
    bound + of,
  );
}

function unknownKeys(keys: readonly string[], path: Path): InputIssue[] {
  const known = keysAt(path);
  const shown = keys.slice(0, MOST_UNKNOWN_KEYS).map((key) => {
    const near = nearestKey(key, known);
    return issue(
      "unknown-key",
      pathText([...path, key.length > 40 ? `${key.slice(0, 40)}…` : key]),
      "an unknown key",
      near ? `"${near}", the nearest known key` : `one of ${known.join(", ")}`,
    );
  });
  if (keys.length > MOST_UNKNOWN_KEYS)
    shown.push(
      issue(
        "unknown-key",
        pathText(path),
        `${keys.length - MOST_UNKNOWN_KEYS} more unknown keys`,
        "known keys only",
      ),
    );
  return shown;
}

function rangeOf(path: Path): Range | undefined {
  const name = path.filter((key) => typeof key !== "number").join(".");
  return Object.hasOwn(ranges, name) ? ranges[name as keyof typeof ranges] : undefined;
}

const rangeText = (range: Range): string => `a number from ${range.min} to ${range.max} (${range.unit})`;

function expectedType(expected: string, range: Range | undefined): string {
  if (range) return rangeText(range);
  return expected === "int"
    ? "a whole number"
    : /^[aeiou]/.test(expected)
      ? `an ${expected}`
      : `a ${expected}`;
}

function formatText(name: string): string {
  if (name.endsWith(".currency")) return "three capital letters (ISO 4217)";
  return name.endsWith("ercent")
    ? 'a percentage as decimal text, such as "7.25"'
    : 'money as decimal text, such as "129.99"';
}

function nearChoice(value: unknown, choices: readonly unknown[]): string {
  if (typeof value !== "string") return "";
  const near = nearestKey(
    value,
    choices.filter((choice) => typeof choice === "string"),
  );
  return near ? `did you mean "${near}"?` : "";
}

// Keys are the caller's text: control characters would reach a terminal.
function pathText(path: Path): string {
  const text = path.reduce<string>(
    (text, key) =>
      typeof key === "number" ? `${text}[${key}]` : text === "" ? String(key) : `${text}.${String(key)}`,
    "",
  );
  return text.replace(/\p{Cc}/gu, "?");
}

function valueAt(input: unknown, path: Path): unknown {
  let value = input;
  for (const key of path) {
    if (value === null || typeof value !== "object" || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

interface SchemaNode {
  readonly def: {
    readonly innerType?: SchemaNode;
    readonly element?: SchemaNode;
    readonly valueType?: SchemaNode;
    readonly shape?: Readonly<Record<string, SchemaNode>>;
    readonly options?: readonly SchemaNode[];
  };
}

/** Known keys of the object the path leads to, read from the schema itself. */
function keysAt(path: Path): string[] {
  let node: SchemaNode | undefined = unwrapped(recordSchema as unknown as SchemaNode);
  for (const key of path) {
    const def: SchemaNode["def"] | undefined = node?.def;
    node = unwrapped(def?.shape?.[String(key)] ?? def?.element ?? def?.valueType);
  }
  const { shape, options = [] } = node?.def ?? {};
  return shape ? Object.keys(shape) : options.flatMap((one) => Object.keys(one.def.shape ?? {}));
}

function unwrapped(node: SchemaNode | undefined): SchemaNode | undefined {
  let inner = node;
  while (inner?.def.innerType) inner = inner.def.innerType;
  return inner;
}
