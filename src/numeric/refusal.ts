/**
 * A computation that cannot be done honestly. Returned, never thrown: it is a result, with the reason and with
 * what would lift it. Test for it with {@link isRefusal}, not with `instanceof`.
 */
export interface Refusal<Code extends string = string> {
  readonly refused: true;
  /** Stable machine-readable name of the reason. */
  readonly code: Code;
  /** Why no number is given, one English sentence. */
  readonly reason: string;
  /** What information would lift the refusal, one English sentence. */
  readonly wouldHelp: string;
}

/** Makes a {@link Refusal}. */
export function refuse<Code extends string>(code: Code, reason: string, wouldHelp: string): Refusal<Code> {
  return { refused: true, code, reason, wouldHelp };
}

/**
 * True when a result is a refusal instead of a value.
 *
 * @example
 * ```ts
 * import { isRefusal, refuse } from "crankworthy/numeric";
 * isRefusal(refuse("no-edition", "The edition is not stated.", "The year on the label.")); // => true
 * isRefusal({ value: 1, standardUncertainty: 0 }); // => false
 * ```
 */
export function isRefusal<T>(result: T): result is Extract<T, Refusal> {
  // One look-up: every call sees results of many shapes, where asking `in` first costs as much again.
  return typeof result === "object" && result !== null && (result as Partial<Refusal>).refused === true;
}
