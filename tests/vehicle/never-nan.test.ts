import type { Derivation } from "crankworthy/sources";
import {
  crankingTime,
  daysUntilNoStart,
  drawLimits,
  dropLimit,
  explainFlatBattery,
  judgeChargingRise,
  judgeChargingVoltage,
  judgeCrankingCurrent,
  judgeCrankingVoltage,
  judgeDraw,
  judgeRipple,
  judgeVoltageDrop,
  minimumCrankingVolts,
  reasonOnCranking,
  recogniseSystem,
  regulatedBand,
  sumOfDropLimits,
} from "crankworthy/vehicle";
import fc from "fast-check";
import { describe, it } from "vitest";
import { around, either, estimateAround, given, maybe, neverNaN } from "../fuzz/strange-numbers.js";

const options = maybe(fc.record({ confidence: around(0.6, 0.99) }));
const control = either("fixed-regulator", "computer-controlled", "unknown");
const bands = either("envelope", "first-maker", "second-maker");
const drops = either("positive-total", "connection", "any-branch-per-ampere");
const minimums = either("default", "roller");

describe("vehicle gives no NaN, whatever it is given", () => {
  it("charging", () => {
    neverNaN(fc.tuple(around(-25, 85), bands), ([celsius, band]) => regulatedBand(celsius, band));
    const reading = fc.record({
      chargingVolts: estimateAround(11, 16),
      regulatorCelsius: estimateAround(-25, 85),
      control,
      chargeAmperes: maybe(around(0, 60)),
      engineRpm: maybe(around(1000, 3000)),
    });
    neverNaN(fc.tuple(reading, bands, options), ([one, band, option]) => {
      const derivation: Derivation = [];
      return [judgeChargingVoltage(given(one), band, option, derivation), derivation];
    });
    neverNaN(
      fc.tuple(estimateAround(12, 13), estimateAround(12, 16), either("loaded-at-least", "unloaded-at-most")),
      ([off, on, rule]) => judgeChargingRise(off, on, rule, "fixed-regulator"),
    );
    const ripple = fc.record({
      rippleVolts: estimateAround(0, 1),
      place: either("battery-posts", "alternator-output"),
      method: either("meter-on-ac", "true-rms", "peak-to-peak"),
    });
    neverNaN(fc.tuple(ripple, either("default-look-further", "output-250-mv")), ([one, limit]) =>
      judgeRipple(one, limit),
    );
  });

  it("starting", () => {
    neverNaN(fc.tuple(around(-25, 40), minimums), ([celsius, name]) => minimumCrankingVolts(celsius, name));
    const reading = fc.record({
      crankingVolts: estimateAround(6, 12),
      temperatureCelsius: around(-20, 40),
      inrush: either("left-out", "included"),
      sampleIntervalSeconds: maybe(around(0, 0.6)),
    });
    neverNaN(reading, (one) => judgeCrankingVoltage(given(one)));
    const engines = either("4-cylinder-warm", "one-1.9-litre-4-cylinder");
    neverNaN(fc.tuple(estimateAround(50, 400), around(-25, 130), engines), ([amperes, celsius, engine]) =>
      judgeCrankingCurrent(amperes, celsius, engine),
    );
    neverNaN(either("default", "study-guide", "workshop-1983"), (name) => crankingTime(name));
    const seen = fc.record({
      speed: either("normal", "slow", "none"),
      current: either("low", "usual", "high", "not-measured"),
      volts: maybe(around(5, 13)),
    });
    neverNaN(seen, (one) => reasonOnCranking(given(one)));
    const drop = fc.record({ dropVolts: estimateAround(0, 1), amperes: maybe(estimateAround(50, 300)) });
    const own = fc
      .record({ value: around(0, 1), lower: around(0, 1), upper: around(0, 1) })
      .map((limit) => ({ ...limit, source: "vehicle-defaults", standing: "our-choice" }) as const);
    neverNaN(fc.tuple(drop, fc.oneof(drops, own)), ([one, limit]) => judgeVoltageDrop(given(one), limit));
    neverNaN(drops, (name) => [dropLimit(name), sumOfDropLimits([name])]);
  });

  it("standing", () => {
    const reading = fc.record({ drawAmperes: estimateAround(0, 0.5), settledMinutes: around(0, 120) });
    const profiles = either("default", "faq", "bulletin");
    neverNaN(fc.tuple(reading, profiles), ([one, profile]) => [judgeDraw(one, profile), drawLimits(profile)]);
    const parked = {
      reserveCapacityMinutes: around(50, 200),
      drawAmperes: fc.record({ value: around(0.01, 0.2), standardUncertainty: around(0, 0.005) }),
      startingCharge: maybe(estimateAround(0, 1)),
    };
    neverNaN(fc.record(parked), (one) => daysUntilNoStart(given(one)));
    neverNaN(
      fc.record({ ...parked, parkedDays: around(0, 60), chargeFound: maybe(estimateAround(0, 1)) }),
      (one) => explainFlatBattery(given(one)),
    );
  });

  it("system voltage", () => {
    neverNaN(
      fc.tuple(estimateAround(-13, 30), maybe(fc.constantFrom<6 | 12 | 24>(6, 12, 24, 7 as 6))),
      ([volts, label]) => recogniseSystem(volts, label),
    );
  });
});
