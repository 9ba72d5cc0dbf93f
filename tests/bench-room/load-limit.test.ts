import { type loadLimitProfiles, loadTestCurrentAmperes, loadTestLimitVolts } from "crankworthy/bench";
import { isRefusal } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

function limit(celsius: number, uncertaintyKelvin = 0, profile?: keyof typeof loadLimitProfiles) {
  const result = loadTestLimitVolts(
    { value: celsius, standardUncertainty: uncertaintyKelvin },
    profile ? { profile } : {},
  );
  if (isRefusal(result)) throw new Error(result.reason);
  return result;
}

describe("loadTestLimitVolts", () => {
  it("rises with temperature and stays within 8.5 and 9.6 V", () => {
    const celsius = fc.double({ min: -18, max: 60, noNaN: true });
    fc.assert(
      fc.property(celsius, celsius, (a, b) => {
        const cold = limit(Math.min(a, b)).value;
        const warm = limit(Math.max(a, b)).value;
        return cold <= warm + 1e-9 && cold >= 8.5 - 1e-9 && warm <= 9.6 + 1e-9;
      }),
    );
  });

  it("covers ±0.1 V from 10 °F up and the half volt between the editions at 0 °F", () => {
    expect(limit(10).standardUncertainty).toBeCloseTo(0.1 / Math.sqrt(3), 9);
    expect(limit(-17.7778).standardUncertainty).toBeCloseTo(0.5 / Math.sqrt(3), 3);
    expect(limit(-15).standardUncertainty).toBeGreaterThan(limit(-12.2).standardUncertainty);
  });

  it("adds the temperature's uncertainty where the table is steep, and hardly where it is flat", () => {
    const spread = 0.1 / Math.sqrt(3);
    expect(limit(-5, 4).standardUncertainty).toBeCloseTo(Math.hypot(spread, 4 * 0.036), 2);
    expect(limit(40, 4).standardUncertainty).toBeCloseTo(spread, 9);
    // One kelvin above the step the slope still counts.
    expect(limit(22, 4).standardUncertainty).toBeGreaterThan(spread);
  });

  it("refuses below the table, above profiles that end, and 6 V where there is no column", () => {
    const code = (celsius: number, options: Parameters<typeof loadTestLimitVolts>[1]) => {
      const result = loadTestLimitVolts({ value: celsius, standardUncertainty: 0 }, options);
      return isRefusal(result) ? result.code : result.value;
    };
    expect(code(-18.1, {})).toBe("temperature-outside-table");
    expect(code(40, { profile: "linear-to-100-f" })).toBe("temperature-outside-table");
    expect(code(20, { profile: "celsius-2004", nominalVolts: 6 })).toBe("no-six-volt-column");
  });

  it("keeps the 6 V column below half of the 12 V column under 50 °F", () => {
    const six = loadTestLimitVolts({ value: 4.4444, standardUncertainty: 0 }, { nominalVolts: 6 });
    expect("value" in six && six.value).toBeLessThan(limit(4.4444).value / 2 - 0.04);
  });
});

describe("loadTestCurrentAmperes", () => {
  it("takes the capacity only without a rating and refuses without both", () => {
    expect(loadTestCurrentAmperes({ coldCrankingAmperes: 600 })).toEqual({
      amperes: 300,
      rule: "half-cranking-rating",
    });
    expect(loadTestCurrentAmperes({ capacityAmpereHours: 60 })).toEqual({
      amperes: 180,
      rule: "three-times-capacity",
    });
    const nothing = loadTestCurrentAmperes({});
    expect(isRefusal(nothing) && nothing.code).toBe("no-rating");
    expect(() => loadTestCurrentAmperes({ coldCrankingAmperes: -1 })).toThrow(/coldCrankingAmperes/);
  });
});
