import type { Evaluation } from "./evaluation.js";

/** One thing that two evaluations do not have in common. */
export interface Difference {
  /**
   * Keys joined by dots; elements of a list by their code where they have one, else by index:
   * `findings[charge-low].evidence.percent`, `ability[0].ratio.value`.
   */
  readonly path: string;
  /** `reordered`: the same elements in another order; both orders are given. */
  readonly kind: "changed" | "added" | "removed" | "reordered";
  /** Absent for `added`. */
  readonly before?: unknown;
  /** Absent for `removed`. */
  readonly after?: unknown;
  /** (after − before) / |before|, for numbers with a `before` other than 0. */
  readonly relativeChange?: number;
}

/**
 * Everything in which a later evaluation differs from an earlier one: numbers, verdicts, findings, lines of a ledger.
 *
 * Scope: numbers are compared exactly, so a changed last digit shows; `relativeChange` tells whether it matters. Elements of
 * a list are matched by their code (or kind, rule or origin), so a new finding does not shift the ones behind it. An added
 * or removed element is one difference, whatever it holds. The derivation is compared only where both have one.
 *
 * @param before the earlier evaluation
 * @param after the later one, of the same record
 * @returns the differences in the order of the evaluation; empty when nothing moved
 * @example
 * ```ts
 * import { differenceOf, evaluate } from "crankworthy/evaluate";
 * const record = {
 *   identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
 *   measurements: { cranking: { standard: "sae-j537", amperes: [480, 486] } },
 * };
 * const before = evaluate(record);
 * const after = evaluate(record, { policy: { serviceableFraction: 0.7 } });
 * differenceOf(before, after)[0]; // => { path: "verdict.condition", kind: "changed", before: "not-established", after: "serviceable" }
 * ```
 */
export function differenceOf(before: Evaluation, after: Evaluation): Difference[] {
  if (before.derivation && after.derivation) return differencesBetween(before, after);
  const { derivation: _before, ...earlier } = before;
  const { derivation: _after, ...later } = after;
  return differencesBetween(earlier, later);
}

/** {@link differenceOf} for any two values of plain data. */
export function differencesBetween(before: unknown, after: unknown): Difference[] {
  const found: Difference[] = [];
  compare(before, after, "", found);
  return found;
}

type Table = Readonly<Record<string, unknown>>;
const isTable = (value: unknown): value is Table =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function compare(before: unknown, after: unknown, path: string, found: Difference[]): void {
  if (isTable(before) && isTable(after)) compareTables(before, after, path, found);
  else if (Array.isArray(before) && Array.isArray(after)) compareLists(before, after, path, found);
  else if (!same(before, after)) {
    const numbers = typeof before === "number" && typeof after === "number" && before !== 0;
    const relative = numbers && { relativeChange: (after - before) / Math.abs(before) };
    found.push({ path, kind: "changed", before, after, ...relative });
  }
}

// −0 and 0 are one number, as they are in a dossier.
const same = (before: unknown, after: unknown): boolean =>
  before === after || (Number.isNaN(before) && Number.isNaN(after));

function compareTables(before: Table, after: Table, path: string, found: Difference[]): void {
  for (const key of new Set([...Object.keys(before), ...Object.keys(after)])) {
    const at = path === "" ? key : `${path}.${key}`;
    // A key without a value is a missing key.
    const [earlier, later] = [before, after].map((one) => (Object.hasOwn(one, key) ? one[key] : undefined));
    step(earlier, later, at, found);
  }
}

function step(before: unknown, after: unknown, path: string, found: Difference[]): void {
  if (before === undefined && after === undefined) return;
  if (before === undefined) found.push({ path, kind: "added", after });
  else if (after === undefined) found.push({ path, kind: "removed", before });
  else compare(before, after, path, found);
}

function compareLists(
  before: readonly unknown[],
  after: readonly unknown[],
  path: string,
  found: Difference[],
): void {
  const earlier = byName(before);
  const later = byName(after);
  if (!earlier || !later) {
    for (let i = 0; i < Math.max(before.length, after.length); i++)
      step(before[i], after[i], `${path}[${i}]`, found);
    return;
  }
  for (const name of new Set([...earlier.keys(), ...later.keys()]))
    step(earlier.get(name), later.get(name), `${path}[${name}]`, found);
  const orders = [
    [...earlier.keys()].filter((name) => later.has(name)),
    [...later.keys()].filter((name) => earlier.has(name)),
  ] as const;
  if (orders[0].some((name, i) => name !== orders[1][i]))
    found.push({ path, kind: "reordered", before: orders[0], after: orders[1] });
}

/** Fields that name an element within its list, first match counts. */
const NAMING = ["code", "kind", "scheme", "from", "quantity"] as const;

/** Elements by name; undefined when they have none. A name that comes again gets its number: `core`, `core#2`. */
function byName(list: readonly unknown[]): Map<string, unknown> | undefined {
  const named = new Map<string, unknown>();
  const seen = new Map<string, number>();
  for (const one of list) {
    const name = nameOf(one);
    if (name === undefined) return undefined;
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    named.set(times === 1 ? name : `${name}#${times}`, one);
  }
  return named;
}

function nameOf(one: unknown): string | undefined {
  if (typeof one === "string") return one;
  if (!isTable(one)) return undefined;
  for (const field of NAMING) {
    const name = one[field];
    if (typeof name === "string") return name;
  }
  return undefined;
}
