/**
 * Throws for a mistake of the programmer, not of the person who measured.
 *
 * @param name how the caller knows the argument
 * @param received what came
 * @param expected what may come, in words
 * @throws RangeError, always
 */
export function wrongArgument(name: string, received: unknown, expected: string): never {
  throw new RangeError(`${name}: received ${received}, expected ${expected}`);
}
