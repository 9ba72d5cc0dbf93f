import { isRefusal } from "crankworthy/numeric";
import { crankingAbilityPercent, resistanceAt25Celsius } from "crankworthy/temperature";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const sure = (value: number) => ({ value, standardUncertainty: 0 });

function referred(celsius: number, uncertaintyKelvin = 0) {
  const result = resistanceAt25Celsius(sure(0.005), {
    value: celsius,
    standardUncertainty: uncertaintyKelvin,
  });
  if (isRefusal(result)) throw new Error(result.reason);
  return result;
}

describe("resistanceAt25Celsius", () => {
  it("leaves a reading at 25 °C alone, without uncertainty of its own", () => {
    expect(referred(25)).toEqual({ value: 0.005, standardUncertainty: 0 });
  });

  it("grows with the temperature the same reading was taken at", () => {
    const celsius = fc.double({ min: -18, max: 45, noNaN: true });
    fc.assert(
      fc.property(
        celsius,
        celsius,
        (a, b) => referred(Math.min(a, b)).value <= referred(Math.max(a, b)).value + 1e-12,
      ),
    );
  });

  it("spans the ratios 1.3 to 2.0 between −18 and +30 °C within two standard uncertainties", () => {
    // Seen from 25 °C: 1.26 (ratio 1.3) and 1.81 (ratio 2.0) against our 1.43.
    const cold = referred(-18);
    const factor = 0.005 / cold.value;
    const u = (factor * cold.standardUncertainty) / cold.value;
    expect(factor - 2 * u).toBeLessThan(1.26);
    expect(factor + 2.4 * u).toBeGreaterThan(1.8);
  });

  it("is another function than cranking ability: they part by more than half at −18 °C", () => {
    const ability = crankingAbilityPercent(-18);
    if (isRefusal(ability)) throw new Error(ability.reason);
    const resistanceGrowth = referred(25).value / referred(-18).value;
    const abilityLoss = 100 / ability.value;
    expect(abilityLoss / resistanceGrowth).toBeGreaterThan(1.5);
  });

  it("widens with the temperature's own uncertainty", () => {
    expect(referred(0, 4).standardUncertainty).toBeGreaterThan(referred(0, 0).standardUncertainty);
  });

  it("refuses beyond −18 and 45 °C", () => {
    for (const celsius of [-18.01, 45.01]) {
      const result = resistanceAt25Celsius(sure(0.005), sure(celsius));
      expect(isRefusal(result) && result.code).toBe("temperature-outside-range");
    }
  });
});
