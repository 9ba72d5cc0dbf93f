import { daysUntilNoStart, explainFlatBattery } from "crankworthy/vehicle";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given, plusMinus } from "./given.js";

const parked = (milliamperes: number, charge?: number) => ({
  reserveCapacityMinutes: 100,
  drawAmperes: plusMinus(milliamperes / 1000, 0.001),
  ...(charge === undefined ? {} : { startingCharge: plusMinus(charge, 0.03) }),
});

describe("daysUntilNoStart", () => {
  it("the range is -30/+0 % of the formula for a full battery, and the middle carries it", () => {
    const time = given(daysUntilNoStart({ reserveCapacityMinutes: 90, drawAmperes: plusMinus(0.03) }));
    expect(time.bulletinDays).toBeCloseTo(30, 9);
    expect(time.interval.lower).toBeCloseTo(21, 9);
    expect(time.interval.upper).toBeCloseTo(30, 9);
    expect(time.days.value).toBeCloseTo(25.5, 9);
    expect(time.days.standardUncertainty).toBeCloseTo(9 / Math.sqrt(12), 9);
  });

  it("days fall with draw and rise with charge; the interval holds the estimate", () => {
    const milliamperes = fc.double({ min: 10, max: 2000, noNaN: true });
    const charge = fc.double({ min: 0.05, max: 1, noNaN: true });
    fc.assert(
      fc.property(milliamperes, milliamperes, charge, charge, (a, b, c, d) => {
        const days = (draw: number, s: number) => given(daysUntilNoStart(parked(draw, s)));
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(days(high, c).days.value).toBeLessThanOrEqual(days(low, c).days.value);
        expect(days(a, Math.min(c, d)).days.value).toBeLessThanOrEqual(days(a, Math.max(c, d)).days.value);
        const one = days(a, c);
        expect(one.interval.lower).toBeLessThanOrEqual(one.days.value);
        expect(one.interval.upper).toBeGreaterThanOrEqual(one.days.value);
      }),
    );
  });

  it("a battery parked at 60 % may have no time left at all", () => {
    expect(given(daysUntilNoStart(parked(50, 0.6))).interval.lower).toBeCloseTo(0, 12);
  });

  it("refuses a draw that is not there and a charge out of 0..1", () => {
    expect(daysUntilNoStart({ ...parked(50), drawAmperes: plusMinus(0.001, 0.001) })).toMatchObject({
      code: "draw-not-established",
    });
    expect(daysUntilNoStart(parked(50, 1.2))).toMatchObject({ code: "charge-out-of-range" });
  });
});

describe("explainFlatBattery", () => {
  it("flat after a week on 30 mA: the draw alone does not do it", () => {
    const told = given(explainFlatBattery({ ...parked(30), parkedDays: 7 }));
    expect(told.code).toBe("worn-battery");
    expect(told.drainSufficesProbability).toBeLessThan(0.01);
  });

  it("flat after two months on 30 mA: the draw suffices, which does not prove the battery sound", () => {
    const told = given(explainFlatBattery({ ...parked(30), parkedDays: 60 }));
    expect(told.drainSufficesProbability).toBeGreaterThan(0.99);
    expect(told.code).toBe("undecided");
  });

  it("with the charge found, the time can speak for drain: the lost charge is what the draw took", () => {
    // 0.1 A for 11 d takes 26.4 Ah of 42-60 Ah: a sound battery is left with 37-56 %, a worn one with less.
    const seen = { ...parked(100), parkedDays: 11 };
    const sound = given(explainFlatBattery({ ...seen, chargeFound: plusMinus(0.5, 0.03) }));
    const worn = given(explainFlatBattery({ ...seen, chargeFound: plusMinus(0.05, 0.03) }));
    expect(sound.code).toBe("drain");
    expect(worn.code).toBe("worn-battery");
  });

  it("a full battery that does not start after a day on a normal draw is neither", () => {
    const told = given(
      explainFlatBattery({ ...parked(20), parkedDays: 1, chargeFound: plusMinus(0.98, 0.03) }),
    );
    expect(told.code).toBe("neither");
  });

  it("without the charge found, time never speaks for drain, however long", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 400, noNaN: true }),
        fc.double({ min: 10, max: 1000, noNaN: true }),
        (parkedDays, milliamperes) => {
          const told = given(explainFlatBattery({ ...parked(milliamperes), parkedDays }));
          expect(told.likelihoodRatio).toBeLessThanOrEqual(1 + 1e-9);
          expect(told.code).not.toBe("drain");
        },
      ),
    );
  });
});
