import { probabilityPositive } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";

describe("probabilityPositive", () => {
  it("lets the sign decide without uncertainty, and never gives NaN", () => {
    expect(probabilityPositive({ value: 1e-9, standardUncertainty: 0 })).toBe(1);
    expect(probabilityPositive({ value: -1e-9, standardUncertainty: 0 })).toBe(0);
    expect(probabilityPositive({ value: 0, standardUncertainty: 0 })).toBe(0.5);
  });
  it("adds to one with its mirror image", () => {
    const up = probabilityPositive({ value: 0.3, standardUncertainty: 0.2 });
    const down = probabilityPositive({ value: -0.3, standardUncertainty: 0.2 });
    expect(up + down).toBeCloseTo(1, 14);
    expect(up).toBeGreaterThan(0.9);
  });
});
