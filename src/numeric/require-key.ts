import { wrongArgument } from "./wrong-argument.js";

/**
 * Stops a name that a table does not hold; inherited names are none of its own.
 *
 * @param name how the caller knows the argument
 * @param key what was received
 * @param table its own keys are what may come
 * @throws RangeError naming argument, what was received and what was expected
 */
export function requireKey(name: string, key: string, table: object): void {
  if (!Object.hasOwn(table, key)) wrongArgument(name, String(key), `one of ${Object.keys(table).join(", ")}`);
}
