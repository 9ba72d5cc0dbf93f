import { type Refusal, refuse } from "../numeric/refusal.js";

/** A value the model or table behind a function does not reach. */
export type OutsideRange<What extends string> = Refusal<`${What}-outside-range`>;

/** @internal */
export function outside<What extends string>(what: What, range: string): OutsideRange<What> {
  return refuse(`${what}-outside-range`, `The ${what} is outside ${range}.`, "A reading inside this range.");
}
