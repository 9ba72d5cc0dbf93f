import { type Refusal, refuse } from "../numeric/index.js";

/** A value that JSON cannot carry, and where it is. */
export interface NotRepresentable extends Refusal<"not-representable"> {
  /** Keys and indexes joined as in `evaluation.ability[0].ratio`; empty for the value itself. */
  readonly path: string;
}

/** Deeper than any record or evaluation; also what ends a circle. */
const DEEPEST = 100;

const HALF_PAIR = /\p{Cs}/u;

/**
 * Writes a value as canonical JSON (RFC 8785): one text for one content, so that it can be hashed.
 *
 * Keys in the order of their UTF-16 code units, numbers and strings as ECMAScript writes them, no white space. Nothing is
 * left out or converted silently: `undefined`, NaN, infinities, functions, big integers, dates and other objects with
 * behaviour, half a surrogate pair, and circles are refused with their path. −0 is written 0, as the RFC says.
 *
 * @param value plain data
 * @returns the text, or the refusal `not-representable` with a `path`
 * @example
 * ```ts
 * import { canonicalJson } from "crankworthy/warranty";
 * canonicalJson({ volts: 12.60, id: "07", at: [1e21, -0] }); // => '{"at":[1e+21,0],"id":"07","volts":12.6}'
 * canonicalJson({ measurements: { restVolts: Number.NaN } }).path; // => "measurements.restVolts"
 * ```
 */
export function canonicalJson(value: unknown): string | NotRepresentable {
  return writeCanonical(value, false);
}

/** {@link canonicalJson}; `lenient` takes a key without a value for a missing key, as the types of this library do. */
export function writeCanonical(value: unknown, lenient: boolean): string | NotRepresentable {
  let refusal: NotRepresentable | undefined;
  const text = write(value, "", 0);
  return refusal ?? text;

  function write(one: unknown, path: string, depth: number): string {
    if (refusal) return "";
    switch (typeof one) {
      case "string":
        return HALF_PAIR.test(one) ? refused(path, "half a surrogate pair") : JSON.stringify(one);
      case "boolean":
        return String(one);
      case "number":
        return Number.isFinite(one) ? JSON.stringify(one) : refused(path, String(one));
      case "object":
        if (one === null) return "null";
        if (depth > DEEPEST) return refused(path, `more than ${DEEPEST} levels, perhaps a circle`);
        return Array.isArray(one) ? list(one, path, depth) : table(one, path, depth);
      default:
        return refused(path, one === undefined ? "undefined" : `a ${typeof one}`);
    }
  }

  function list(one: readonly unknown[], path: string, depth: number): string {
    // An index loop sees the holes of a sparse list, as undefined.
    const parts: string[] = [];
    for (let i = 0; i < one.length && !refusal; i++) parts.push(write(one[i], `${path}[${i}]`, depth + 1));
    return `[${parts.join(",")}]`;
  }

  function table(one: object, path: string, depth: number): string {
    const prototype = Object.getPrototypeOf(one);
    // Plain objects of another realm (a worker, a frame) have another Object.prototype, but none above it.
    if (prototype !== null && Object.getPrototypeOf(prototype) !== null)
      return refused(path, "no plain object");
    const parts: string[] = [];
    for (const key of Object.keys(one).sort()) {
      const inner = (one as Record<string, unknown>)[key];
      if (lenient && inner === undefined) continue;
      const at = path === "" ? key : `${path}.${key}`;
      const name = HALF_PAIR.test(key) ? refused(at, "half a surrogate pair") : JSON.stringify(key);
      parts.push(`${name}:${write(inner, at, depth + 1)}`);
      if (refusal) return "";
    }
    return `{${parts.join(",")}}`;
  }

  function refused(path: string, found: string): string {
    const where = path === "" ? "The value" : path;
    refusal = {
      ...refuse(
        "not-representable",
        `${where}: ${found} has no place in JSON.`,
        "Plain finite data; leave out keys without a value.",
      ),
      path,
    };
    return "";
  }
}
