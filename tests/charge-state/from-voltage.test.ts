import {
  acidFills,
  type Chemistry,
  chargeFromRestVoltage,
  fullChargeVolts,
  openCircuitVolts,
  type RestVoltage,
} from "crankworthy/charge-state";
import { isRefusal } from "crankworthy/numeric";
import { bibliography, type Derivation } from "crankworthy/sources";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const chemistries: readonly Chemistry[] = ["flooded", "flooded-calcium", "efb", "agm", "gel", "unknown"];
const base: RestVoltage = {
  volts: 12.4,
  voltsStandardUncertainty: 0.005,
  chemistry: "flooded",
  temperatureCelsius: 25,
  rest: { lastEvent: "charge", hoursAtRest: 24 },
};

function read(change: Partial<RestVoltage> = {}, derivation?: Derivation) {
  const reading = chargeFromRestVoltage({ ...base, ...change }, derivation);
  if (isRefusal(reading)) throw new Error(`refused: ${reading.code}`);
  return reading;
}

describe("charge from rest voltage", () => {
  it("undoes the open-circuit voltage, at any temperature of liquid acid", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: -5, max: 55, noNaN: true }),
        fc.constantFrom(...Object.values(acidFills).filter((fill) => fill.emptyGravity >= 1.1)),
        (stateOfCharge, temperatureCelsius, acid) => {
          const volts = Number(openCircuitVolts({ stateOfCharge, acid, temperatureCelsius }));
          expect(read({ volts, acid, temperatureCelsius }).stateOfCharge.value).toBeCloseTo(stateOfCharge, 8);
        },
      ),
    );
  });

  it("a higher reading never means less charge", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...chemistries),
        fc.double({ min: 11.1, max: 12.85, noNaN: true }),
        fc.double({ min: 0.001, max: 0.1, noNaN: true }),
        fc.constantFrom("charge", "drive", "discharge", "unknown"),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (chemistry, volts, more, lastEvent, hoursAtRest) => {
          const rest = { lastEvent, hoursAtRest } as RestVoltage["rest"];
          const low = read({ chemistry, volts, rest });
          const high = read({ chemistry, volts: volts + more, rest });
          expect(high.stateOfCharge.value).toBeGreaterThan(low.stateOfCharge.value);
        },
      ),
    );
  });

  it("no meter and no rest makes it better than the floor, and each missing fact makes it worse", () => {
    const best = read({ voltsStandardUncertainty: 0 });
    expect(best.stateOfCharge.standardUncertainty).toBeGreaterThan(0.09);
    const worse: Partial<RestVoltage>[] = [
      { chemistry: "unknown" },
      { voltsStandardUncertainty: 0.03 },
      { rest: { lastEvent: "unknown" } },
      { temperatureCelsius: 0 },
      { temperatureStandardUncertaintyKelvin: 15 },
    ];
    for (const change of worse) {
      expect(read(change).stateOfCharge.standardUncertainty).toBeGreaterThan(
        best.stateOfCharge.standardUncertainty,
      );
    }
    // Stated example: rest unknown, flooded: 0.21; 0.05 V: 0.11.
    expect(read({ rest: { lastEvent: "unknown" } }).stateOfCharge.standardUncertainty).toBeCloseTo(0.21, 2);
    expect(read({ voltsStandardUncertainty: 0.05 }).stateOfCharge.standardUncertainty).toBeCloseTo(0.11, 2);
  });

  it("names every assumption", () => {
    const { temperatureCelsius: _, ...withoutTemperature } = base;
    const reading = chargeFromRestVoltage({
      ...withoutTemperature,
      chemistry: "unknown",
      rest: { lastEvent: "unknown" },
    });
    expect(reading).toMatchObject({ notes: ["chemistry-unknown", "temperature-assumed", "rest-unknown"] });
    expect(read().notes).toEqual([]);
    const assumed = chargeFromRestVoltage(withoutTemperature);
    if (isRefusal(assumed)) throw new Error(assumed.code);
    // 10 K rectangular at 1.2 mV/K, and the 10 mV of a settled reading with 5 mV of meter
    expect(assumed.settledVoltsAt25Celsius.standardUncertainty).toBeCloseTo(
      Math.hypot(0.01, 0.005, 0.00693),
      5,
    );
  });

  it("a known acid replaces the guess for an unknown type", () => {
    const known = read({ chemistry: "unknown", acid: acidFills.temperate });
    expect(known.notes).toEqual([]);
    expect(known.stateOfCharge).toEqual(read().stateOfCharge);
  });

  it("cold correction and its uncertainty: 12.5 mV at 0 °C, 46 mV at −18 °C", () => {
    const at = (temperatureCelsius: number) =>
      read({ volts: 12.6, temperatureCelsius }).settledVoltsAt25Celsius;
    const own = (u: number) => Math.sqrt(u * u - 0.01 ** 2 - 0.005 ** 2);
    expect(own(at(0).standardUncertainty)).toBeCloseTo(0.0125, 4);
    expect(own(at(-18).standardUncertainty)).toBeCloseTo(0.0466, 3);
    expect(at(-18).value).toBeCloseTo(12.6516, 4);
  });
});

describe("surface charge", () => {
  it("turns an impossible voltage into an upper bound, unless a day of rest proves it settled", () => {
    const volts = fullChargeVolts(acidFills.temperate) + 0.13;
    const rest = { lastEvent: "charge", surfaceChargeRemoval: "lights", minutesSinceRemoval: 5 } as const;
    expect(read({ volts, rest })).toMatchObject({ bound: "upper", notes: ["surface-charge-suspected"] });
    expect(read({ volts: volts - 0.02, rest })).toMatchObject({ bound: "two-sided", notes: [] });
    expect(read({ volts })).toMatchObject({ bound: "two-sided", notes: ["above-full"] });
    expect(read({ volts }).stateOfCharge.value).toBeGreaterThan(1);
  });

  it("an unknown type is suspected only above the strongest fill", () => {
    const rest = { lastEvent: "unknown" } as const;
    expect(read({ volts: 12.95, chemistry: "unknown", rest }).bound).toBe("two-sided");
    expect(read({ volts: 12.95, chemistry: "flooded-calcium", rest }).bound).toBe("upper");
    expect(read({ volts: 13.0, chemistry: "unknown", rest }).bound).toBe("upper");
  });

  it("minutes after driving only bounds, and a charging voltage is refused", () => {
    const rest = { lastEvent: "drive", hoursAtRest: 0.1 } as const;
    expect(read({ volts: 12.6, rest })).toMatchObject({
      bound: "upper",
      notes: ["surface-charge-not-bounded"],
    });
    expect(chargeFromRestVoltage({ ...base, volts: 14.2, rest })).toMatchObject({
      code: "voltage-above-acid-range",
    });
  });
});

describe("limits", () => {
  it("refuses what may be frozen, with enough to decide", () => {
    const refusal = chargeFromRestVoltage({ ...base, volts: 11.8, temperatureCelsius: -18 });
    expect(refusal).toMatchObject({ refused: true, code: "may-be-frozen", temperatureCelsius: -18 });
    if (!("freezingPointCelsius" in refusal)) throw new Error("no freezing point");
    expect(refusal.freezingPointCelsius).toBeGreaterThan(-12);
    expect(refusal.relativeDensity25).toBeCloseTo(1.113, 2);
    expect(read({ volts: 12.6, temperatureCelsius: -18 }).notes).toEqual([]);
    expect(read({ volts: 11.87, temperatureCelsius: -9.5 }).notes).toContain("near-freezing");
  });

  it("refuses electrolyte out of range and voltages of no acid", () => {
    for (const temperatureCelsius of [-56, 61]) {
      expect(chargeFromRestVoltage({ ...base, temperatureCelsius })).toMatchObject({
        code: "temperature-outside-range",
      });
    }
    expect(chargeFromRestVoltage({ ...base, volts: 10.4 })).toMatchObject({
      code: "voltage-below-acid-range",
    });
    expect(chargeFromRestVoltage({ ...base, volts: 0 })).toMatchObject({ code: "voltage-below-acid-range" });
  });

  it.each([
    { volts: Number.NaN },
    { volts: Number.POSITIVE_INFINITY },
    { voltsStandardUncertainty: -0.01 },
    { temperatureCelsius: Number.NaN },
    { temperatureStandardUncertaintyKelvin: Number.NaN },
    { chemistry: "lithium" as Chemistry },
  ])("throws for %o", (change) => {
    expect(() => chargeFromRestVoltage({ ...base, ...change })).toThrow(RangeError);
  });
});

describe("derivation", () => {
  it("ends at the result, cites the bibliography, and changes nothing", () => {
    const steps: Derivation = [];
    const reading = read({ volts: 12.3 }, steps);
    expect(reading).toEqual(read({ volts: 12.3 }));
    expect(steps.map((step) => step.quantity)).toEqual([
      "settled open-circuit voltage",
      "settled open-circuit voltage at 25 °C",
      "equivalent acid",
      "equivalent relative density 25/25",
      "state of charge",
    ]);
    expect(steps.at(-1)).toMatchObject({
      result: reading.stateOfCharge.value,
      standardUncertainty: reading.stateOfCharge.standardUncertainty,
    });
    for (const step of steps) expect(Object.keys(bibliography)).toContain(step.source);
    // A reader can redo the last step with the printed inputs.
    const { gravity, empty, full } = steps.at(-1)!.inputs as Record<string, number>;
    expect((gravity! - empty!) / (full! - empty!)).toBe(reading.stateOfCharge.value);
  });
});
