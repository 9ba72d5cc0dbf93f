import { judgeChargingRise, judgeChargingVoltage, regulatedBand } from "crankworthy/vehicle";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given, plusMinus } from "./given.js";

const NAMES = ["first-maker", "first-maker-hot-market", "second-maker"] as const;

describe("regulatedBand", () => {
  it("the envelope holds every maker's band at every temperature, and both edges fall with warmth", () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 80, noNaN: true }), (celsius) => {
        const envelope = given(regulatedBand(celsius));
        for (const name of NAMES) {
          const band = given(regulatedBand(celsius, name));
          expect(band.lower.value).toBeGreaterThanOrEqual(envelope.lower.value - 1e-12);
          expect(band.upper.value).toBeLessThanOrEqual(envelope.upper.value + 1e-12);
          expect(band.lowerSlope).toBeLessThan(0);
          expect(band.upperSlope).toBeLessThan(0);
        }
      }),
    );
  });
  it("band centres fall by 10.5, 10 and 7 mV/K from -20 to 80 °C", () => {
    const slope = (name: (typeof NAMES)[number]) => {
      const centre = (celsius: number) => {
        const band = given(regulatedBand(celsius, name));
        return (band.lower.value + band.upper.value) / 2;
      };
      return (centre(80) - centre(-20)) / 100;
    };
    expect(NAMES.map((name) => Math.round(slope(name) * 1e5) / 1e2)).toEqual([-10.5, -10, -7]);
  });
  it("is continuous at the printed temperatures, is read there and computed between, and refuses beyond", () => {
    for (const at of [20, 60]) {
      const before = given(regulatedBand(at - 1e-9, "second-maker"));
      const after = given(regulatedBand(at, "second-maker"));
      expect(before.upper.value).toBeCloseTo(after.upper.value, 9);
      expect(after.upper.standing).toBe("read");
      expect(before.upper.standing).toBe("computed");
    }
    expect(regulatedBand(80.1)).toMatchObject({ code: "outside-table" });
    expect(regulatedBand(-21, "first-maker")).toMatchObject({ code: "outside-table" });
  });
});

describe("judgeChargingVoltage", () => {
  const reading = (volts: number, control: "fixed-regulator" | "computer-controlled" | "unknown") => ({
    chargingVolts: plusMinus(volts, 0.02),
    regulatorCelsius: plusMinus(20, 5),
    control,
  });
  const outcome = (...of: Parameters<typeof reading>) => given(judgeChargingVoltage(reading(...of))).outcome;

  it("judges a fixed regulator by its band", () => {
    expect(outcome(14.2, "fixed-regulator")).toBe("within-band");
    expect(outcome(13.3, "fixed-regulator")).toBe("below-band");
    expect(outcome(15.3, "fixed-regulator")).toBe("above-band");
    expect(outcome(13.7, "fixed-regulator")).toBe("not-established");
  });

  it("does not judge 12.2-15.4 V under computer or unknown control, but does judge clearly outside", () => {
    const volts = fc.double({ min: 12.2, max: 15.4, noNaN: true });
    const control = fc.constantFrom("computer-controlled" as const, "unknown" as const);
    fc.assert(
      fc.property(volts, control, (v, how) => {
        expect(outcome(v, how)).toBe("no-judgement");
      }),
    );
    expect(outcome(16.2, "unknown")).toBe("above-band");
    expect(outcome(11.9, "computer-controlled")).toBe("below-band");
  });

  it("an unsure regulator temperature widens the margin by the slope of the edge", () => {
    const judged = given(judgeChargingVoltage(reading(13.3, "fixed-regulator")));
    // From 20 °C upwards the lower edge falls 12.5 mV/K; 5 K make 62.5 mV.
    expect(judged.lower.margin.standardUncertainty).toBeCloseTo(Math.hypot(0.02, 0.0625), 12);
  });

  it("needs no regulator temperature in range where there is no band to apply", () => {
    const cold = { ...reading(14.8, "unknown"), regulatorCelsius: plusMinus(-30, 5) };
    expect(given(judgeChargingVoltage(cold)).outcome).toBe("no-judgement");
    expect(judgeChargingVoltage({ ...cold, control: "fixed-regulator" })).toMatchObject({
      code: "outside-table",
    });
  });

  it("names its doubts, and refuses at idle where charging has not begun", () => {
    const one = { ...reading(13.8, "fixed-regulator"), chargeAmperes: 25, engineRpm: 2000 };
    expect(given(judgeChargingVoltage(one)).doubts).toEqual([
      "charge-current-above-10-a",
      "engine-below-2500-rpm",
    ]);
    expect(judgeChargingVoltage({ ...one, engineRpm: 800 })).toMatchObject({ code: "charging-not-begun" });
  });
});

describe("judgeChargingRise", () => {
  const off = plusMinus(12.6, 0.02);
  const rise = (volts: number, rule: Parameters<typeof judgeChargingRise>[2]) =>
    judgeChargingRise(off, plusMinus(12.6 + volts, 0.02), rule, "fixed-regulator");

  it("2.3 V unloaded: beyond the limit of 1984, within that of the bulletin, and the default says they differ", () => {
    expect(rise(2.3, "unloaded-at-most-1984")).toMatchObject({ outcome: "beyond-limit" });
    expect(rise(2.3, "unloaded-at-most-bulletin")).toMatchObject({ outcome: "within-limit" });
    expect(rise(2.3, "unloaded-at-most")).toMatchObject({ outcome: "within-limit", sourcesAgree: false });
  });
  it("0.3 V under load is too little", () => {
    expect(rise(0.3, "loaded-at-least")).toMatchObject({ outcome: "beyond-limit" });
  });
  it("makes no statement unless the regulator is known to be fixed", () => {
    for (const control of ["unknown", "computer-controlled"] as const)
      expect(judgeChargingRise(off, off, "loaded-at-least", control)).toMatchObject({
        code: "may-be-computer-controlled",
      });
  });
});
