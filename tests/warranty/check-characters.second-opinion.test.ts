import { mod11_2, mod11_10, mod37_2, mod37_36, mod97_10 } from "cdigit";
import { type CheckSystem, checkCharacters, hasValidCheck } from "crankworthy/warranty";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

// ISO/IEC 7064 against a general check-digit package (npm cdigit, MIT or Apache-2.0): 10 000 random texts each.
const DIGITS = "0123456789";
const ALPHANUMERIC = `${DIGITS}ABCDEFGHIJKLMNOPQRSTUVWXYZ`;
const systems: [CheckSystem, { compute(data: string): string; validate(text: string): boolean }, string][] = [
  ["mod-11-2", mod11_2, DIGITS],
  ["mod-11-10", mod11_10, DIGITS],
  ["mod-37-2", mod37_2, ALPHANUMERIC],
  ["mod-37-36", mod37_36, ALPHANUMERIC],
  ["mod-97-10", mod97_10, DIGITS],
];

describe.each(systems)("%s against cdigit", (system, other, alphabet) => {
  const text = fc.string({ unit: fc.constantFrom(...alphabet), minLength: 1, maxLength: 30 });

  it("computes the same characters", () => {
    fc.assert(
      fc.property(text, (data) => {
        expect(checkCharacters(system, data)).toBe(other.compute(data));
      }),
      { numRuns: 10_000 },
    );
  });

  it("accepts and refuses the same texts", () => {
    fc.assert(
      // At least three characters: the package throws where nothing is left to protect.
      fc.property(
        text,
        text.filter((tail) => tail.length > 1),
        (data, tail) => {
          const whole = data + tail;
          // Check values lie in 02..98; 99, 00 and 01 satisfy the congruence too, and only we refuse them.
          if (system === "mod-97-10" && /(?:99|00|01)$/.test(whole))
            expect(hasValidCheck(system, whole)).toBe(false);
          else expect(hasValidCheck(system, whole)).toBe(other.validate(whole));
        },
      ),
      { numRuns: 10_000 },
    );
  });
});
