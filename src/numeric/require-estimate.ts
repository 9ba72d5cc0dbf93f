import type { Estimate } from "./estimate.js";
import { wrongArgument } from "./wrong-argument.js";

/** Nothing about a battery is larger in its unit, and squares and quotients of what passes stay numbers. */
const LARGEST = 1e12;

/**
 * Stops a value that is not a finite number above zero, and one too small or too large for any battery.
 *
 * @param name how the caller knows the argument
 * @param value what was received, any unit (1e-12..1e12)
 * @throws RangeError naming argument, what was received and what was expected
 */
export function requirePositive(name: string, value: number): void {
  if (Number.isFinite(value) && value >= 1 / LARGEST && value <= LARGEST) return;
  wrongArgument(name, value, `a number above 0, at most ${LARGEST}`);
}

/**
 * Stops an estimate whose value is not a finite number within its bounds, or whose uncertainty is negative or not finite.
 *
 * @param name how the caller knows the argument
 * @param estimate what was received, any unit
 * @param lower smallest value allowed, default −1e12
 * @param upper largest value allowed, default 1e12
 * @throws RangeError naming argument, what was received and what was expected
 * @example
 * ```ts
 * import { requireEstimate } from "crankworthy/numeric";
 * requireEstimate("restVolts", { value: 12.6, standardUncertainty: 0.01 }); // => undefined
 * ```
 */
export function requireEstimate(name: string, estimate: Estimate, lower = -LARGEST, upper = LARGEST): void {
  const { value, standardUncertainty: u } = estimate;
  if (Number.isFinite(value) && value >= lower && value <= upper && u >= 0 && u <= LARGEST) return;
  wrongArgument(name, `${value} ± ${u}`, `a finite number in ${lower}..${upper}, uncertainty ≥ 0`);
}

/** As {@link requireEstimate} for a quantity that is above zero: value at least 1e-12. */
export function requirePositiveEstimate(name: string, estimate: Estimate): void {
  requireEstimate(name, estimate, 1 / LARGEST);
}
