import { requireEstimate, requireKey, requirePositive, requirePositiveEstimate } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";

const estimate = (value: number, standardUncertainty: number) => ({ value, standardUncertainty });

describe("requireEstimate", () => {
  it("lets a finite value with an uncertainty of 0 or more pass", () => {
    expect(() => requireEstimate("x", estimate(-3, 0))).not.toThrow();
    expect(() => requireEstimate("x", estimate(0.5, 0.1), 0, 1)).not.toThrow();
  });

  it.each([
    [Number.NaN, 0],
    [Number.POSITIVE_INFINITY, 0],
    [1e13, 0],
    [1, Number.NaN],
    [1, -0.1],
    [1, Number.POSITIVE_INFINITY],
  ])("stops %s ± %s, naming the argument", (value, u) => {
    expect(() => requireEstimate("volts", estimate(value, u))).toThrow(RangeError);
    expect(() => requireEstimate("volts", estimate(value, u))).toThrow(/^volts: received .* expected /);
  });

  it("keeps to its bounds", () => {
    expect(() => requireEstimate("x", estimate(1.5, 0), 0, 1)).toThrow(/0\.\.1/);
    expect(() => requirePositiveEstimate("x", estimate(0, 0))).toThrow(RangeError);
  });
});

describe("requirePositive", () => {
  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY, Number.MIN_VALUE, 1e13])("stops %s", (value) => {
    expect(() => requirePositive("x", value)).toThrow(RangeError);
  });
});

describe("requireKey", () => {
  it("lists what may come, and takes no inherited name", () => {
    expect(() => requireKey("kind", "a", { a: 1, b: 2 })).not.toThrow();
    expect(() => requireKey("kind", "c", { a: 1, b: 2 })).toThrow("kind: received c, expected one of a, b");
    expect(() => requireKey("kind", "constructor", { a: 1 })).toThrow(RangeError);
  });
});
