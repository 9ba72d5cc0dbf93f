import { acidFills, openCircuitVolts } from "crankworthy/charge-state";
import { type LongRestReading, selfDischargeFromRests } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given } from "../datasets.js";

const chemistry = "flooded-calcium";
const mild = { value: 22, standardUncertainty: 0.5 };

/** Voltage of a battery that loses `perDay` of its charge each day. */
function readings(
  perDay: number,
  days: readonly number[],
  start = 0.98,
  u = 0.001,
  rest = 0,
): LongRestReading[] {
  return days.map((day) => {
    const value = openCircuitVolts({
      stateOfCharge: start - perDay * day,
      acid: acidFills.calcium,
      temperatureCelsius: mild.value,
    });
    return {
      days: day,
      volts: { value: Number(value), standardUncertainty: u },
      temperatureCelsius: mild,
      rest,
    };
  });
}

describe("selfDischargeFromRests", () => {
  it("recovers the rate, from one rest or several that start at other charges", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.006, noNaN: true }),
        fc.double({ min: 0.6, max: 1, noNaN: true }),
        (rate, start) => {
          const alone = given(selfDischargeFromRests(readings(rate, [2, 20, 40, 60], start), { chemistry }));
          expect(alone.chargePerDay.value / rate).toBeCloseTo(1, 3);
          expect(alone.chargePerMonth.value).toBeCloseTo(30 * alone.chargePerDay.value, 12);
          const several = [...readings(rate, [2, 30], start), ...readings(rate, [3, 40, 50], 0.7, 0.001, 1)];
          const both = given(selfDischargeFromRests(several, { chemistry }));
          expect(both.chargePerDay.value / rate).toBeCloseTo(1, 3);
          expect(both.readingsUsed).toBe(5);
        },
      ),
    );
  });

  it("is as uncertain as its readings, and as the span of the acid", () => {
    const days = [2, 30, 60];
    const fine = given(selfDischargeFromRests(readings(0.002, days, 0.98, 0.0001), { chemistry }));
    const coarse = given(selfDischargeFromRests(readings(0.002, days, 0.98, 0.005), { chemistry }));
    // Of the span alone: hypot(0.01, 0.02)/0.15 = 15 %.
    expect(fine.chargePerDay.standardUncertainty / fine.chargePerDay.value).toBeGreaterThan(0.149);
    // Two-point form, ±5 mV (and 0.6 mV, 1.5 mV of temperature) 58 days apart over some 0.84 V.
    const expected = (Math.SQRT2 * Math.hypot(0.005, 0.0006, 0.0015)) / 58 / 0.84;
    const ofReadings = Math.sqrt(coarse.chargePerDay.standardUncertainty ** 2 - (0.149 * 0.002) ** 2);
    expect(ofReadings / expected).toBeGreaterThan(0.9);
    expect(ofReadings / expected).toBeLessThan(1.1);
  });

  it("refuses a drop within its uncertainty and gives the upper limit", () => {
    const small = selfDischargeFromRests(readings(0.0005, [2, 12], 0.9, 0.005), { chemistry });
    expect(small).toMatchObject({ code: "drop-within-uncertainty" });
    if (!("atMostPerMonth" in small)) throw new Error("expected a limit");
    expect(small.atMostPerMonth).toBeGreaterThan(30 * 0.0005);
    // Without a temperature the same drop that would show does not.
    const shown = readings(0.0013, [2, 16]);
    expect(given(selfDischargeFromRests(shown, { chemistry })).chargePerDay.value).toBeCloseTo(0.0013, 4);
    const blind = shown.map(({ days, volts }) => ({ days, volts }));
    expect(selfDischargeFromRests(blind, { chemistry })).toMatchObject({ code: "drop-within-uncertainty" });
  });

  it("refuses what still relaxes: early readings, above full, fast first and slow later", () => {
    const early = readings(0.002, [0.1, 0.5, 20]);
    expect(selfDischargeFromRests(early, { chemistry })).toMatchObject({ code: "too-few-readings" });
    const charged = readings(0.002, [2, 20]).map((one) => ({ ...one, volts: { ...one.volts, value: 13.1 } }));
    expect(selfDischargeFromRests(charged, { chemistry })).toMatchObject({ code: "still-relaxing" });
    const bent = readings(0.001, [1, 2, 4, 20, 30, 40]).map((one) => ({
      ...one,
      volts: { ...one.volts, value: one.volts.value + 0.1 * Math.exp(-one.days / 3) },
    }));
    expect(selfDischargeFromRests(bent, { chemistry })).toMatchObject({ code: "still-relaxing" });
    expect(given(selfDischargeFromRests(bent, { chemistry, settleDays: 15 })).readingsLeftOut).toBe(3);
  });

  it("refuses too short a rest, a rising voltage, a voltage no acid gives", () => {
    expect(selfDischargeFromRests([], { chemistry })).toMatchObject({ code: "too-few-readings" });
    expect(selfDischargeFromRests(readings(0.01, [2, 5]), { chemistry })).toMatchObject({
      code: "rest-too-short",
    });
    const single = [...readings(0.01, [2]), ...readings(0.01, [30], 0.9, 0.001, 1)];
    expect(selfDischargeFromRests(single, { chemistry })).toMatchObject({ code: "too-few-readings" });
    expect(selfDischargeFromRests(readings(-0.004, [2, 30], 0.5), { chemistry })).toMatchObject({
      code: "voltage-rises",
    });
    const six = readings(0.002, [2, 20]).map((one) => ({ ...one, volts: { ...one.volts, value: 6.1 } }));
    expect(selfDischargeFromRests(six, { chemistry })).toMatchObject({ code: "voltage-below-acid-range" });
  });

  it("throws for arguments that are none", () => {
    const [first] = readings(0.002, [2]);
    expect(() => selfDischargeFromRests([{ ...first!, days: -1 }], { chemistry })).toThrow("rests[0].days");
    expect(() =>
      selfDischargeFromRests([{ ...first!, volts: { value: 12.6, standardUncertainty: 0 } }], { chemistry }),
    ).toThrow("standardUncertainty");
    expect(() => selfDischargeFromRests([], { chemistry: "foo" as never })).toThrow("chemistry");
  });
});
