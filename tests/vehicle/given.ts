import { type Estimate, isRefusal } from "crankworthy/numeric";

/** Narrows a result to its value, or fails the test with the refusal. */
export function given<T extends object>(result: T): Exclude<T, { readonly refused: true }> {
  if (isRefusal(result)) throw new Error(`refused: ${JSON.stringify(result)}`);
  return result as Exclude<T, { readonly refused: true }>;
}

export const plusMinus = (value: number, standardUncertainty = 0): Estimate => ({
  value,
  standardUncertainty,
});
