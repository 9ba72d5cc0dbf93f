import { erfc, normalCdf, normalPdf, normalQuantile } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("normal distribution", () => {
  it("reaches 0 and 1 at infinity, not NaN", () => {
    expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
    expect(erfc(Number.NEGATIVE_INFINITY)).toBe(2);
    expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
    expect(normalQuantile(1.5)).toBeNaN();
  });

  it("is symmetric, rises, and its slope is the density", () => {
    fc.assert(
      fc.property(fc.double({ min: -7, max: 7, noNaN: true }), (z) => {
        expect(normalCdf(z) + normalCdf(-z)).toBeCloseTo(1, 14);
        expect(normalCdf(z + 0.01)).toBeGreaterThan(normalCdf(z));
        expect((normalCdf(z + 1e-5) - normalCdf(z - 1e-5)) / 2e-5).toBeCloseTo(normalPdf(z), 8);
      }),
    );
  });

  it("quantile and distribution undo each other", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (p) => {
        expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 13);
      }),
    );
  });
});
