import { wrongArgument } from "./wrong-argument.js";

/**
 * Stops a programming error at the door: throws when an argument is not a finite number within its bounds.
 * For data of a user's record use the checks of `evaluate`, which report instead of throwing.
 *
 * @param name how the caller knows the argument
 * @param value what was received
 * @param lower smallest value allowed, default none
 * @param upper largest value allowed, default none
 * @throws RangeError naming argument, what was received and what was expected
 */
export function requireFinite(name: string, value: number, lower = -Infinity, upper = Infinity): void {
  if (Number.isFinite(value) && value >= lower && value <= upper) return;
  wrongArgument(name, value, `a finite number in ${lower}..${upper}`);
}
