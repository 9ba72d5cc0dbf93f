import fc from "fast-check";
import { expect } from "vitest";

/** Numbers a caller may hand over by mistake: not numbers, without end, huge, tiny, negative. */
const strange = fc.oneof(
  fc.constantFrom(Number.NaN, Infinity, -Infinity, 0, -0, -1, 1e308, -1e308, 1e12, 5e-324, 1e-300),
  fc.double(),
);

/** Mostly a number between the two, so that most calls get somewhere; now and then a strange one. */
export const around = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof({ weight: 9, arbitrary: fc.double({ min, max, noNaN: true }) }, { weight: 1, arbitrary: strange });

/** A value with its uncertainty, each strange now and then. */
export const estimateAround = (
  min: number,
  max: number,
): fc.Arbitrary<{ value: number; standardUncertainty: number }> =>
  fc.record({ value: around(min, max), standardUncertainty: around(0, (max - min) / 5) });

/** Mostly one of the names, now and then another one. */
export function either<const T extends string>(...names: readonly T[]): fc.Arbitrary<T> {
  return fc.oneof(
    { weight: 19, arbitrary: fc.constantFrom(...names) },
    { weight: 1, arbitrary: fc.constantFrom("foo", "", "constructor", "__proto__") as fc.Arbitrary<never> },
  );
}

/** The arbitrary, or undefined as often. */
export const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.oneof(arbitrary, fc.constant(undefined));

/** Drops the keys that are undefined, as `exactOptionalPropertyTypes` wants it. */
export function given<T extends object>(record: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
}

/** Where NaN stands in a result, as a path; nothing where there is none. */
export function nanIn(value: unknown, path = "result"): string | undefined {
  if (typeof value === "number") return Number.isNaN(value) ? path : undefined;
  if (typeof value === "string") return /\bNaN\b/.test(value) ? path : undefined;
  if (typeof value !== "object" || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = nanIn(inner, `${path}.${key}`);
    if (found) return found;
  }
  return undefined;
}

/** Holds when a call gives a result without NaN, or throws a RangeError that names what was wrong. */
export function neverNaN<T>(input: fc.Arbitrary<T>, call: (given: T) => unknown, runs = 2000): void {
  let answered = 0;
  fc.assert(
    fc.property(input, (one) => {
      let result: unknown;
      try {
        result = call(one);
      } catch (error) {
        expect(error).toBeInstanceOf(RangeError);
        expect((error as RangeError).message).toMatch(/received .*expected/s);
        return;
      }
      answered++;
      expect(nanIn(result)).toBeUndefined();
    }),
    { numRuns: runs },
  );
  // A property over calls that all throw would hold for any code.
  expect(answered).toBeGreaterThan(runs / 20);
}
