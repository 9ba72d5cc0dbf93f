import { isRefusal } from "crankworthy/numeric";
import { bibliography } from "crankworthy/sources";
import {
  type CapacityProfile,
  capacityAt25Celsius,
  capacityPercent,
  capacityProfiles,
} from "crankworthy/temperature";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const profiles = Object.keys(capacityProfiles) as CapacityProfile[];

describe("capacity against temperature", () => {
  it.each(profiles)("%s: 100 % without uncertainty at 25 °C", (profile) => {
    const result = capacityPercent(25, profile);
    expect("value" in result && result.value).toBeCloseTo(100, 9);
    expect(bibliography).toHaveProperty([capacityProfiles[profile].source]);
    expect("value" in result && result.standardUncertainty).toBeCloseTo(0, 9);
  });

  it.each(profiles)("%s: there and back gives the same capacity", (profile) => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), (celsius) => {
        const percent = capacityPercent(celsius, profile);
        if (isRefusal(percent)) return false;
        const back = capacityAt25Celsius(
          { value: (60 * percent.value) / 100, standardUncertainty: 0 },
          celsius,
          profile,
        );
        return "value" in back && Math.abs(back.value - 60) < 1e-9;
      }),
    );
  });

  it("a faster discharge loses more in the cold", () => {
    const at = (profile: CapacityProfile) => {
      const result = capacityPercent(2, profile);
      return isRefusal(result) ? Number.NaN : result.value;
    };
    expect(at("maker-under-30-min")).toBeLessThan(at("maker-30-to-60-min"));
    expect(at("maker-30-to-60-min")).toBeLessThan(at("maker-over-60-min"));
    expect(at("coefficient-fast")).toBeLessThan(at("coefficient-slow"));
  });

  it("refuses outside the profile", () => {
    const result = capacityAt25Celsius({ value: 60, standardUncertainty: 1 }, -5, "coefficient-slow");
    expect(isRefusal(result) && result.code).toBe("temperature-outside-table");
  });
});
