import type { Estimate } from "./estimate.js";
import { normalCdf } from "./normal.js";

/**
 * Probability that a quantity is above zero under a normal model: how sure a margin is.
 *
 * @param margin value and standard uncertainty, any unit; without uncertainty the sign decides, 0.5 at zero
 * @returns probability in 0..1
 * @example
 * ```ts
 * import { probabilityPositive } from "crankworthy/numeric";
 * probabilityPositive({ value: 1.4, standardUncertainty: 1 }); // => 0.9192
 * ```
 */
export function probabilityPositive(margin: Estimate): number {
  if (margin.standardUncertainty === 0 || margin.value === 0) return (Math.sign(margin.value) + 1) / 2;
  return normalCdf(margin.value / margin.standardUncertainty);
}
