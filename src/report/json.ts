import type { Evaluation } from "../evaluate/index.js";
import { wrongArgument } from "../numeric/index.js";

/** How to render JSON. */
export interface JsonOptions {
  /** Blanks for each level, a whole number 0..8; default 2, and 0 gives one line. */
  readonly indent?: number;
}

/**
 * The evaluation as JSON text that is the same for the same evaluation, however its object was put together.
 *
 * `schemaVersion` comes first, then the keys of every object in code-unit order; only the inputs of a derivation step keep
 * their order, which is that of the formula. What is undefined is left out, minus zero is written as zero, and `<` as
 * `\u003c`, so that the text is harmless inside a page. Text of the record is not cleaned: reading the JSON back gives the
 * evaluation, and any renderer says the same of it.
 *
 * @param evaluation from `evaluate`
 * @param options indent (0..8, default 2)
 * @returns JSON (RFC 8259), no newline at the end
 * @throws RangeError for an indent outside 0..8, and naming the path of a number that is none
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { renderJson } from "crankworthy/report";
 * const evaluation = evaluate({
 *   identity: { chemistry: "gel", rating: { standard: "sae-j537", amperes: 600 } },
 *   measurements: { restVolts: 12.8 },
 * });
 * const text = renderJson(evaluation, { indent: 0 });
 * text.startsWith('{"schemaVersion":1,"ability":[]'); // => true
 * JSON.parse(text).verdict.action; // => "charge-then-repeat"
 * ```
 */
export function renderJson(evaluation: Evaluation, { indent = 2 }: JsonOptions = {}): string {
  if (!Number.isInteger(indent) || indent < 0 || indent > 8)
    wrongArgument("indent", indent, "a whole number 0..8");
  const { schemaVersion, ...rest } = evaluation;
  const ordered = { schemaVersion, ...(inOrder(rest, "", false) as object) };
  return JSON.stringify(ordered, undefined, indent).replaceAll("<", "\\u003c");
}

function inOrder(value: unknown, path: string, asGiven: boolean): unknown {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) wrongArgument(path, value, "a finite number");
    return value === 0 ? 0 : value;
  }
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map((one, i) => inOrder(one, `${path}[${i}]`, false));
  const keys = Object.keys(value);
  if (!asGiven) keys.sort();
  // Without a prototype a key such as `__proto__` is a key like any other.
  const ordered: Record<string, unknown> = Object.create(null);
  for (const key of keys) {
    const inner = path === "" ? key : `${path}.${key}`;
    ordered[key] = inOrder(
      (value as Record<string, unknown>)[key],
      inner,
      /^derivation\[\d+\]\.inputs$/.test(inner),
    );
  }
  return ordered;
}
