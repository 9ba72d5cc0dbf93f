import {
  divide,
  interval95,
  multiply,
  rectangularUncertainty,
  rootSumSquare,
  weightedMean,
} from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const positive = fc.double({ min: 0.01, max: 1e4, noNaN: true });
const quantity = fc.record({ value: positive, standardUncertainty: positive });

describe("estimates", () => {
  it("the 95 % interval is 1.96 standard uncertainties each way", () => {
    const { lower, upper } = interval95({ value: 10, standardUncertainty: 1 });
    expect(lower).toBeCloseTo(8.04, 4);
    expect(upper).toBeCloseTo(11.96, 4);
  });

  it("independent components add as squares; a full width of 1 is 0.2887", () => {
    expect(rootSumSquare(3, 4)).toBe(5);
    expect(rectangularUncertainty(1)).toBeCloseTo(0.288675, 6);
  });

  it("product and quotient are inverse in value and add relative uncertainties as squares", () => {
    fc.assert(
      fc.property(quantity, quantity, (a, b) => {
        const back = divide(multiply(a, b), b);
        expect(back.value / a.value).toBeCloseTo(1, 9);
        const relative = multiply(a, b).standardUncertainty / (a.value * b.value);
        expect(relative).toBeCloseTo(
          Math.hypot(a.standardUncertainty / a.value, b.standardUncertainty / b.value),
          6,
        );
      }),
    );
  });

  it("the weighted mean lies between, is surer than each, and tells disagreement", () => {
    fc.assert(
      fc.property(fc.array(quantity, { minLength: 2, maxLength: 6 }), (estimates) => {
        const mean = weightedMean(estimates);
        const values = estimates.map((one) => one.value);
        expect(mean.value).toBeGreaterThanOrEqual(Math.min(...values) * (1 - 1e-9));
        expect(mean.value).toBeLessThanOrEqual(Math.max(...values) * (1 + 1e-9));
        for (const one of estimates)
          expect(mean.standardUncertainty).toBeLessThanOrEqual(one.standardUncertainty * (1 + 1e-9));
      }),
    );
    const far = [
      { value: 0, standardUncertainty: 1 },
      { value: 10, standardUncertainty: 1 },
    ];
    expect(weightedMean(far).birgeRatio).toBeCloseTo(Math.sqrt(50), 6);
  });
});
