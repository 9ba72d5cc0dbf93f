import { requireFinite } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";

describe("requireFinite", () => {
  it("lets numbers within the bounds pass, bounds included", () => {
    expect(() => requireFinite("x", 0, 0, 1)).not.toThrow();
    expect(() => requireFinite("x", 1, 0, 1)).not.toThrow();
    expect(() => requireFinite("x", -1e300)).not.toThrow();
  });
  it.each([Number.NaN, Number.POSITIVE_INFINITY, -0.1, 1.1])("names the argument for %s", (value) => {
    expect(() => requireFinite("loadAmperes", value, 0, 1)).toThrow(/loadAmperes.*0\.\.1/);
  });
  it("refuses text that only looks like a number", () => {
    expect(() => requireFinite("volts", "12" as unknown as number)).toThrow(RangeError);
  });
});
