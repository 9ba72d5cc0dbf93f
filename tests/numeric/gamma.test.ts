import { logGamma, normalCdf, regularizedLowerGamma } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

/** Allowed error of log-gamma: its own rounding plus that of a result of this size. */
const close = (actual: number, expected: number, relative = 4e-15, absolute = 3e-14) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(absolute + relative * Math.abs(expected));

describe("logGamma", () => {
  it("gives the factorials up to 170!", () => {
    let sum = 0;
    for (let n = 1; n <= 170; n++) {
      sum += Math.log(n);
      close(logGamma(n + 1), sum, 1e-14);
    }
  });

  it("gives √π at one half, and half-integers from it", () => {
    let expected = 0.5 * Math.log(Math.PI);
    for (let k = 0; k < 40; k++) {
      close(logGamma(k + 0.5), expected, 1e-14);
      expected += Math.log(k + 0.5);
    }
  });

  it("obeys reflection: Γ(x) Γ(1 − x) = π / sin πx", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 0.999, noNaN: true }), (x) => {
        close(logGamma(x) + logGamma(1 - x), Math.log(Math.PI / Math.sin(Math.PI * x)), 1e-13, 1e-12);
      }),
    );
  });

  it("obeys duplication: Γ(x) Γ(x + ½) = 2^(1 − 2x) √π Γ(2x)", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (x) => {
        const right = (1 - 2 * x) * Math.LN2 + 0.5 * Math.log(Math.PI) + logGamma(2 * x);
        close(logGamma(x) + logGamma(x + 0.5), right, 1e-13, 1e-12);
      }),
    );
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("throws for %s", (x) => {
    expect(() => logGamma(x)).toThrow(RangeError);
  });
});

describe("regularizedLowerGamma", () => {
  const anyX = fc.double({ min: 1e-6, max: 300, noNaN: true });

  it("is the error function for a = 1/2", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6, noNaN: true }), (z) => {
        expect(
          Math.abs(regularizedLowerGamma(0.5, z * z) - (2 * normalCdf(z * Math.SQRT2) - 1)),
        ).toBeLessThan(1e-13);
      }),
    );
  });

  it("is 1 − a Poisson sum for whole a", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.double({ min: 1e-3, max: 100, noNaN: true }),
        (a, x) => {
          let term = Math.exp(-x);
          let below = 0;
          for (let k = 0; k < a; k++) {
            below += term;
            term *= x / (k + 1);
          }
          expect(Math.abs(regularizedLowerGamma(a, x) - (1 - below))).toBeLessThan(1e-13);
        },
      ),
    );
  });

  it("obeys P(a + 1, x) = P(a, x) − x^a e^(−x) / Γ(a + 1), also across the switch of method", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), anyX, (a, x) => {
        const step = Math.exp(a * Math.log(x) - x - logGamma(a + 1));
        expect(Math.abs(regularizedLowerGamma(a + 1, x) - regularizedLowerGamma(a, x) + step)).toBeLessThan(
          5e-14,
        );
      }),
    );
  });

  it("agrees with Simpson's rule, an integral without series or fraction", () => {
    for (const [a, x] of [
      [1.4, 0.3],
      [1.4, 2.5],
      [2, 1.7],
      [7.5, 9],
      [11, 4],
    ] as const) {
      const n = 20_000;
      const density = (t: number) => (t === 0 ? 0 : Math.exp((a - 1) * Math.log(t) - t - logGamma(a)));
      // t = s³ takes the kink of t^0.4 out of the origin.
      const inner = (s: number) => density(s ** 3) * 3 * s * s;
      const h = Math.cbrt(x) / n;
      let sum = inner(0) + inner(Math.cbrt(x));
      for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * inner(i * h);
      expect(Math.abs(regularizedLowerGamma(a, x) - (sum * h) / 3)).toBeLessThan(1e-12);
    }
  });

  it("never falls with x and stays within 0..1", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), anyX, anyX, (a, one, other) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)].map((x) =>
          regularizedLowerGamma(a, x),
        );
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1 + 1e-11);
        expect(high! - low!).toBeGreaterThanOrEqual(-1e-11);
      }),
    );
  });

  it("converges at the far corner of its range", () => {
    // The median of a gamma distribution is about a − 1/3.
    expect(regularizedLowerGamma(1e4, 1e4 - 1 / 3)).toBeCloseTo(0.5, 6);
    expect(regularizedLowerGamma(1e4, 1e4 + 1.0001)).toBeCloseTo(regularizedLowerGamma(1e4, 1e4 + 0.9999), 5);
  });

  it("ends where the distribution ends", () => {
    expect(regularizedLowerGamma(3, 0)).toBe(0);
    expect(regularizedLowerGamma(3, Number.POSITIVE_INFINITY)).toBe(1);
    expect(regularizedLowerGamma(1.5, 1e308)).toBe(1);
  });

  it.each([
    [0, 1],
    [-1, 1],
    [20_000, 1],
    [1, -1],
    [1, Number.NaN],
  ])("throws for a = %s, x = %s", (a, x) => {
    expect(() => regularizedLowerGamma(a, x)).toThrow(RangeError);
  });
});
