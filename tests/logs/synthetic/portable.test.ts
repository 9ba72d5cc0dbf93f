import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decay, naturalLog, sineOfTurns } from "../../../src/logs/synthetic/portable.js";

const close = (actual: number, expected: number, digits: number) =>
  Math.abs(actual - expected) <= digits * Math.max(Math.abs(expected), Number.MIN_VALUE);

describe("functions of exact operations alone", () => {
  it("agree with the engine's to the last digits", () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 0, noNaN: true }), (x) => close(decay(x), Math.exp(x), 1e-15)),
    );
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1, noNaN: true }), (x) =>
        // Near 1 the logarithm is small beside the numbers it is made of.
        close(naturalLog(x) - 1, Math.log(x) - 1, 1e-15),
      ),
    );
    fc.assert(
      fc.property(fc.double({ min: -0.5, max: 0.5, noNaN: true }), (x) =>
        close(sineOfTurns(x) + 2, Math.sin(2 * Math.PI * x) + 2, 1e-15),
      ),
    );
  });

  it("end where they end", () => {
    expect(decay(0)).toBe(1);
    expect(decay(-60)).toBeGreaterThan(0);
    expect(decay(-60.001)).toBe(0);
    expect(naturalLog(1)).toBe(0);
    expect(naturalLog(2 ** -31)).toBeCloseTo(-31 * Math.LN2, 12);
    expect(sineOfTurns(1e6 + 0.25)).toBeCloseTo(1, 15);
    expect(sineOfTurns(-1e6)).toBeCloseTo(0, 15);
  });
});
