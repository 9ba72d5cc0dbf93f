/** Throws when a caller's number cannot be what its name says; ranges of users' data are refusals, not this. */
export function requirePositive(name: string, value: number): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name}: received ${value}, expected a number above 0`);
  }
}

/** As {@link requirePositive}, with 0 allowed. */
export function requireNotNegative(name: string, value: number): void {
  if (value !== 0) requirePositive(name, value);
}
