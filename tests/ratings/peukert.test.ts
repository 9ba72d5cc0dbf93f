import { isRefusal } from "crankworthy/numeric";
import { peukertExponent, peukertExponentFromTests, peukertHours } from "crankworthy/ratings";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exponentRows } from "../../src/ratings/capacity.data.js";
import { bibliography } from "../../src/sources/index.js";

const battery = { capacityAmpereHours: 70, rateHours: 20 };

describe("peukertHours", () => {
  it("at the rated current the rated hours, certain whatever the exponent", () => {
    const time = peukertHours({
      ...battery,
      exponent: { value: 1.2, standardUncertainty: 0.05 },
      amperes: 3.5,
    });
    expect(time).toEqual({ value: 20, standardUncertainty: 0 });
  });

  it("two discharges give back the exponent", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1.6, noNaN: true }),
        fc.double({ min: 1, max: 9, noNaN: true }),
        fc.double({ min: 10, max: 140, noNaN: true }),
        (exponent, low, high) => {
          const [first, second] = [low, high].map((amperes) => {
            const hours = peukertHours({ ...battery, exponent, amperes });
            if (isRefusal(hours)) throw new Error(hours.code);
            return { amperes, hours: hours.value };
          });
          expect(peukertExponentFromTests(first!, second!)).toBeCloseTo(exponent, 9);
        },
      ),
    );
  });

  it("the uncertainty follows the exponent, as differences show", () => {
    const at = (k: number, u = 0) => {
      const time = peukertHours({ ...battery, exponent: { value: k, standardUncertainty: u }, amperes: 25 });
      return isRefusal(time) ? Number.NaN : u ? time.standardUncertainty : time.value;
    };
    expect(at(1.2, 0.01)).toBeCloseTo((at(1.19) - at(1.21)) / 2, 4);
  });

  it("is not carried to cranking currents, nor beyond the published exponents", () => {
    expect(peukertHours({ ...battery, exponent: 1.2, amperes: 140 })).toHaveProperty("value");
    expect(peukertHours({ ...battery, exponent: 1.2, amperes: 300 })).toMatchObject({
      code: "current-too-high",
    });
    expect(peukertHours({ ...battery, exponent: 0.99, amperes: 10 })).toMatchObject({
      code: "exponent-out-of-range",
    });
    expect(peukertHours({ ...battery, exponent: Number.NaN, amperes: 10 })).toHaveProperty("code");
    const exponent = { value: 1.2, standardUncertainty: Number.NaN };
    expect(() => peukertHours({ ...battery, exponent, amperes: 10 })).toThrow(RangeError);
    expect(() => peukertHours({ ...battery, exponent: 1.2, amperes: 0 })).toThrow(/amperes/);
  });
});

describe("exponents", () => {
  it("lie inside their ranges and name a source", () => {
    for (const kind of Object.keys(exponentRows) as (keyof typeof exponentRows)[]) {
      const row = peukertExponent(kind);
      expect(row.value).toBeGreaterThanOrEqual(row.lower);
      expect(row.value).toBeLessThanOrEqual(row.upper);
      expect(bibliography).toHaveProperty(row.source);
    }
  });

  it("one current gives no exponent", () => {
    const test = { amperes: 5, hours: 20 };
    expect(peukertExponentFromTests(test, { ...test, hours: 19 })).toMatchObject({ code: "same-current" });
  });
});
