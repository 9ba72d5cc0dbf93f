import { type NoDefectShare, noDefectShare } from "crankworthy/warranty";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

function share(returned: number, withoutDefect: number, confidence?: number): NoDefectShare {
  const result = noDefectShare({ returned, withoutDefect }, confidence);
  if ("refused" in result) throw new Error(result.reason);
  return result;
}
const counts = fc
  .integer({ min: 1, max: 5000 })
  .chain((n) => fc.tuple(fc.constant(n), fc.integer({ min: 0, max: n })));

describe("noDefectShare", () => {
  it("has ends that solve the score equation (p̂ − p)² = z² p (1 − p) / n", () => {
    fc.assert(
      fc.property(counts, ([n, k]) => {
        const { share: observed, interval } = share(n, k);
        for (const end of [interval.lower, interval.upper]) {
          const left = (observed - end) ** 2;
          const right = (1.959963984540054 ** 2 * end * (1 - end)) / n;
          // At none and at all, one end is the closed end of 0..1.
          expect(Math.abs(left - right)).toBeLessThan(1e-12);
        }
      }),
    );
  });

  it("lies within 0..1, around the share, and mirrors", () => {
    fc.assert(
      fc.property(counts, ([n, k]) => {
        const { share: observed, interval } = share(n, k);
        const mirrored = share(n, n - k).interval;
        expect(interval.lower).toBeGreaterThanOrEqual(0);
        expect(interval.upper).toBeLessThanOrEqual(1);
        expect(interval.lower).toBeLessThanOrEqual(observed);
        expect(interval.upper).toBeGreaterThanOrEqual(observed);
        expect(mirrored.lower).toBeCloseTo(1 - interval.upper, 12);
      }),
    );
  });

  it("says something after a single return, and more after many", () => {
    expect(share(1, 0).interval.lower).toBe(0);
    expect(share(1, 0).interval.upper).toBeCloseTo(0.7935, 4);
    expect(share(1000, 0).interval.upper).toBeLessThan(0.004);
    expect(share(1, 1).interval.upper).toBe(1);
  });

  it("holds the true share near 95 times of 100, worked out over the binomial distribution", () => {
    for (const p of [0.1, 0.3, 0.5]) {
      const n = 60;
      let covered = 0;
      let probability = (1 - p) ** n;
      for (let k = 0; k <= n; k++) {
        const { interval } = share(n, k);
        if (interval.lower <= p && p <= interval.upper) covered += probability;
        probability *= ((n - k) / (k + 1)) * (p / (1 - p));
      }
      expect(covered).toBeGreaterThan(0.93);
      expect(covered).toBeLessThan(0.97);
    }
  });

  it("refuses without returns", () => {
    expect(noDefectShare({ returned: 0, withoutDefect: 0 })).toMatchObject({
      refused: true,
      code: "no-returns",
    });
  });

  it.each<[string, number, number, number?]>([
    ["withoutDefect", 5, 6],
    ["withoutDefect", 5, 1.5],
    ["returned", -1, 0],
    ["returned", Number.NaN, 0],
    ["confidence", 5, 1, 95],
  ])("throws naming %s", (name, returned, withoutDefect, confidence) => {
    expect(() => noDefectShare({ returned, withoutDefect }, confidence)).toThrow(new RegExp(`^${name}:`));
  });
});
