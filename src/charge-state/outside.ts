import { type Refusal, refuse } from "../numeric/refusal.js";

/** A value the model or table behind a function does not reach. */
export type OutsideRange<What extends string> = Refusal<`${What}-outside-range`>;

/** @internal */
export function outside<What extends string>(what: What, range: string): OutsideRange<What> {
  return refuse(`${what}-outside-range`, `The ${what} is outside ${range}.`, "A reading inside this range.");
}

/** A mistake of the programmer, not of the person who measured. @internal */
export function wrongArgument(name: string, received: unknown, expected: string): never {
  throw new RangeError(`${name}: received ${received}, expected ${expected}`);
}

/** @internal */
export function requireNotNegative(name: string, value: number): void {
  if (!(value >= 0 && value < 1 / 0)) wrongArgument(name, value, "a finite number of at least 0");
}
