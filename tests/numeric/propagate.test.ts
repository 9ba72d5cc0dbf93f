import { chargeFromRestVoltage } from "crankworthy/charge-state";
import { fitLine, isRefusal, monteCarlo, propagate } from "crankworthy/numeric";
import { resistanceAt25Celsius } from "crankworthy/temperature";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("first-order propagation", () => {
  it("is exact for sums, with full correlation linear instead of quadratic", () => {
    const inputs = [
      { value: 1, standardUncertainty: 3 },
      { value: 2, standardUncertainty: 4 },
    ];
    const sum = (values: number[]) => values[0]! + values[1]!;
    expect(propagate(sum, inputs).standardUncertainty).toBeCloseTo(5, 12);
    expect(propagate(sum, inputs, () => 1).standardUncertainty).toBeCloseTo(7, 12);
    expect(propagate(sum, inputs, () => -1).standardUncertainty).toBeCloseTo(1, 12);
  });

  it("agrees with drawing where the function is nearly straight", () => {
    const inputs = [
      { value: 480, standardUncertainty: 20 },
      { value: 600, standardUncertainty: 12 },
    ];
    const ratio = ([measured, rated]: number[]) => measured! / rated!;
    const first = propagate(ratio, inputs);
    const drawn = monteCarlo(ratio, inputs, 50_000, 7);
    expect(drawn.value).toBeCloseTo(first.value, 3);
    expect(drawn.standardUncertainty / first.standardUncertainty).toBeCloseTo(1, 1);
  });

  it("is told apart from drawing where it bends: a squared normal about zero has no first-order uncertainty", () => {
    const square = ([x]: number[]) => x! * x!;
    const inputs = [{ value: 0, standardUncertainty: 1 }];
    expect(propagate(square, inputs).standardUncertainty).toBe(0);
    expect(monteCarlo(square, inputs).standardUncertainty).toBeGreaterThan(1.2);
  });
});

describe("the library's own uncertainties against drawing", () => {
  it("settled voltage to state of charge: the curve bends less than 3 % of the uncertainty", () => {
    const state = (volts: number) => {
      const reading = chargeFromRestVoltage({
        volts,
        voltsStandardUncertainty: 0,
        chemistry: "flooded",
        temperatureCelsius: 25,
        rest: { lastEvent: "discharge", hoursAtRest: 24 },
      });
      if (isRefusal(reading)) throw new Error(reading.code);
      return reading.stateOfCharge;
    };
    for (const volts of [12.0, 12.2, 12.4, 12.6]) {
      const drawn = monteCarlo(
        ([v]) => state(v!).value,
        [{ value: volts, standardUncertainty: 0.05 }],
        20_000,
        3,
      );
      const withMeter = chargeFromRestVoltage({
        volts,
        voltsStandardUncertainty: 0.05,
        chemistry: "flooded",
        temperatureCelsius: 25,
        rest: { lastEvent: "discharge", hoursAtRest: 24 },
      });
      if (isRefusal(withMeter)) throw new Error(withMeter.code);
      const own = Math.sqrt(
        withMeter.stateOfCharge.standardUncertainty ** 2 - state(volts).standardUncertainty ** 2,
      );
      expect(Math.abs(drawn.standardUncertainty / own - 1)).toBeLessThan(0.1);
      expect(Math.abs(drawn.value - withMeter.stateOfCharge.value)).toBeLessThan(
        0.03 * withMeter.stateOfCharge.standardUncertainty,
      );
    }
  });

  it("resistance carried to 25 °C: slope and temperature drawn together", () => {
    const temperature = { value: -10, standardUncertainty: 3 };
    const corrected = resistanceAt25Celsius({ value: 0.006, standardUncertainty: 0.0002 }, temperature);
    if (isRefusal(corrected)) throw new Error(corrected.code);
    const drawn = monteCarlo(
      ([r, t, slope]) => r! / (1 + slope! * (25 - t!)),
      [
        { value: 0.006, standardUncertainty: 0.0002 },
        temperature,
        { value: 0.0099, standardUncertainty: 0.0037 },
      ],
      40_000,
      11,
    );
    expect(corrected.standardUncertainty / drawn.standardUncertainty).toBeCloseTo(1, 1);
  });
});

describe("straight line", () => {
  it("finds an exact line whatever its parameters", () => {
    const parameter = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(parameter, parameter, (intercept, slope) => {
        const xs = [0, 1, 2, 5];
        const line = fitLine(
          xs,
          xs.map((x) => intercept + slope * x),
        );
        expect(line.intercept.value).toBeCloseTo(intercept, 8);
        expect(line.slope.value).toBeCloseTo(slope, 8);
        expect(line.residual).toBeLessThan(1e-9);
      }),
    );
    expect(() => fitLine([1, 1, 1], [1, 2, 3])).toThrow(RangeError);
    expect(() => fitLine([1, 2], [1, 2])).toThrow(RangeError);
  });

  it("draws the same numbers from the same seed", () => {
    const one = [{ value: 0, standardUncertainty: 1 }];
    const same = ([x]: number[]) => x!;
    expect(monteCarlo(same, one, 100, 5)).toEqual(monteCarlo(same, one, 100, 5));
    expect(monteCarlo(same, one, 100, 5)).not.toEqual(monteCarlo(same, one, 100, 6));
  });
});
