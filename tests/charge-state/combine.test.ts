import {
  type Chemistry,
  chargeFromGravity,
  chargeFromRestVoltage,
  combineCharge,
  gravityFromVolts,
  type RestHistory,
} from "crankworthy/charge-state";
import { isRefusal } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

function voltage(
  volts: number,
  rest: RestHistory = { lastEvent: "charge", hoursAtRest: 24 },
  chemistry: Chemistry = "flooded",
) {
  const reading = chargeFromRestVoltage({
    volts,
    voltsStandardUncertainty: 0.005,
    chemistry,
    temperatureCelsius: 25,
    rest,
  });
  if (isRefusal(reading)) throw new Error(reading.code);
  return reading;
}

function gravity(reading: number, chemistry: Chemistry = "flooded") {
  const result = chargeFromGravity({
    cellReadings: [reading],
    chemistry,
    temperatureCelsius: 80 / 3,
  });
  if (isRefusal(result)) throw new Error(result.code);
  return result;
}

const volts = fc.double({ min: 11.7, max: 12.7, noNaN: true });
const gravities = fc.double({ min: 1.1, max: 1.28, noNaN: true });

describe("voltage and gravity together", () => {
  it("lie between the two, no worse than the better one when they agree", () => {
    fc.assert(
      fc.property(volts, gravities, (v, g) => {
        const [a, b] = [voltage(v), gravity(g)];
        const both = combineCharge(a, b);
        const ends = [a.stateOfCharge.value, b.stateOfCharge.value];
        expect(both.stateOfCharge.value).toBeGreaterThanOrEqual(Math.min(...ends) - 1e-12);
        expect(both.stateOfCharge.value).toBeLessThanOrEqual(Math.max(...ends) + 1e-12);
        if (Math.abs(both.normalisedDifference) < 0.5) {
          const better = Math.min(a.stateOfCharge.standardUncertainty, b.stateOfCharge.standardUncertainty);
          expect(both.stateOfCharge.standardUncertainty).toBeLessThanOrEqual(better + 1e-12);
        }
      }),
    );
  });

  it("the shared acid does not average out: never better than it", () => {
    fc.assert(
      fc.property(volts, gravities, (v, g) => {
        const [a, b] = [voltage(v), gravity(g)];
        const shared = Math.min(a.acidStandardUncertainty, b.acidStandardUncertainty);
        expect(combineCharge(a, b).stateOfCharge.standardUncertainty).toBeGreaterThanOrEqual(shared);
      }),
    );
  });

  it("agree when both tell of the same acid", () => {
    fc.assert(
      fc.property(volts, (v) => {
        const both = combineCharge(voltage(v), gravity(Number(gravityFromVolts(v))));
        expect(both.consistent).toBe(true);
        expect(both.agreement).toBe("agree");
        expect(Math.abs(both.normalisedDifference)).toBeLessThan(0.05);
      }),
    );
  });

  it("disagree by name, and a disagreement widens the result", () => {
    const high = combineCharge(voltage(12.66), gravity(1.19));
    expect(high).toMatchObject({ consistent: false, agreement: "voltage-above-gravity" });
    const low = combineCharge(voltage(12.0), gravity(1.265));
    expect(low).toMatchObject({ consistent: false, agreement: "voltage-below-gravity" });
    const agreeing = combineCharge(voltage(12.66), gravity(1.265));
    expect(high.stateOfCharge.standardUncertainty).toBeGreaterThan(
      1.5 * agreeing.stateOfCharge.standardUncertainty,
    );
  });

  it("an upper bound lends nothing but its limit", () => {
    const bound = voltage(12.6, { lastEvent: "drive", hoursAtRest: 0.1 });
    const weak = gravity(1.18);
    expect(combineCharge(bound, weak)).toMatchObject({
      agreement: "voltage-only-bounds",
      consistent: true,
      stateOfCharge: weak.stateOfCharge,
    });
    const tooLow = voltage(12.0, { lastEvent: "drive", hoursAtRest: 0.1 });
    expect(combineCharge(tooLow, gravity(1.265))).toMatchObject({
      agreement: "voltage-below-gravity",
      consistent: false,
    });
  });

  it("refuses to mix two acids", () => {
    expect(() => combineCharge(voltage(12.5), gravity(1.25, "efb"))).toThrow(/gravity.acid/);
  });
});
