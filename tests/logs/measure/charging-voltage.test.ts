import { type LogSeries, measureChargingVoltage, sliceSeries } from "crankworthy/logs";
import { describe, expect, it } from "vitest";
import { given, present, readVrla, SKIPPED, VRLA } from "../datasets.js";
import { coverage, rounded, seeded } from "./recovery.js";

/** A warm-up from `from` to `to` °C; load and speed move the voltage slowly, the meter adds noise and rounds. */
function drive(seed: number, slope: number, from: number, to: number): LogSeries {
  const random = seeded(seed);
  const rows = 1800;
  const seconds = Float64Array.from({ length: rows }, (_, i) => 2 * i);
  const temperature = (t: number) => to - (to - from) * Math.exp(-t / 1200);
  let load = 0;
  const volts = seconds.map((t) => {
    load += -load / 15 + 0.008 * random.normal();
    return rounded(14.4 + slope * (temperature(t) - 20) + load + 0.01 * random.normal(), 0.01);
  });
  return {
    seconds,
    volts,
    amperes: seconds.map((t) => 30 * Math.exp(-t / 200) + 3),
    // A sensor read every minute.
    temperatureCelsius: seconds.map((t, i) => (i % 30 === 0 ? temperature(t) : Number.NaN)),
  };
}

describe("measureChargingVoltage", () => {
  it("the interval holds the slope with temperature", () => {
    const share = coverage(200, (seed) => {
      const truth = -0.012 + 0.008 * seeded(seed + 5).even();
      return {
        truth,
        got: given(given(measureChargingVoltage(drive(seed, truth, -10, 40))).slopeVoltsPerKelvin),
      };
    });
    expect(share).toBeGreaterThan(0.93);
  });

  it("knows the slope well enough to tell it from none", () => {
    const slope = given(given(measureChargingVoltage(drive(1, -0.01, -10, 40))).slopeVoltsPerKelvin);
    expect(slope.standardUncertainty).toBeLessThan(0.002);
  });

  it("passes over rows with too much current, and over discharge", () => {
    const series = drive(2, 0, 10, 30);
    const got = given(measureChargingVoltage(series));
    // 30·exp(−t/200) + 3 falls to 10 A at 291 s, 146 rows.
    expect(got.rowsPassedOver).toBe(146);
    const discharging = { ...series, amperes: series.amperes.map((I) => -I) };
    expect(measureChargingVoltage(discharging)).toMatchObject({ code: "not-regulated" });
  });

  it("overcharge at more than the limit all the time is a lower bound", () => {
    const { normal } = seeded(3);
    const seconds = Float64Array.from({ length: 600 }, (_, i) => i);
    const volts = seconds.map(() => rounded(15.8 + 0.01 * normal(), 0.01));
    const got = given(measureChargingVoltage({ seconds, volts, amperes: seconds.map(() => 25) }));
    expect(got.bound).toBe("lower");
    expect(got.regulatedVolts.value).toBeCloseTo(15.8, 2);
    expect(got.meanAmperes).toBe(25);
    expect(got).toMatchObject({ rows: 600, rowsPassedOver: 0, passedOverShare: 0, doubts: [] });
    // A voltage that climbs is no plateau, whatever the current.
    const climbing = seconds.map((t) => 13.2 + t / 600);
    expect(
      measureChargingVoltage({ seconds, volts: climbing, amperes: seconds.map(() => 25) }),
    ).toMatchObject({ code: "not-regulated" });
    expect(given(measureChargingVoltage(drive(2, 0, 10, 30))).bound).toBe("two-sided");
  });

  it("says when the voltage is regulated only part of the time", () => {
    const seconds = Float64Array.from({ length: 600 }, (_, i) => i);
    const on = (t: number, from: number) => t < from || Math.floor(t / 10) % 2 === 0;
    const flapping = (from: number): LogSeries => ({
      seconds,
      volts: seconds.map((t) => (on(t, from) ? 14.2 : 12.5)),
      amperes: seconds.map((t) => (on(t, from) ? 8 : -12)),
    });
    const got = given(measureChargingVoltage(flapping(0)));
    expect(got.regulatedVolts.value).toBeCloseTo(14.2, 6);
    expect(got.passedOverShare).toBe(0.5);
    expect(got.doubts).toEqual(["not-regulated-all-the-time"]);
    expect(got.meanAmperes).toBe(8);
    expect(got.meanAmperesOfAll).toBe(-2);
    // Flapping in the last eighth alone: half of that is under a tenth of all.
    expect(given(measureChargingVoltage(flapping(525))).doubts).toEqual([]);
    // The first minute after a start does not count, nor does a current that is still above the limit.
    const start = {
      seconds,
      volts: seconds.map((t) => (t < 59 ? 12.4 : 14.2)),
      amperes: seconds.map((t) => (t < 59 ? -20 : t < 300 ? 30 : 6)),
    };
    const started = given(measureChargingVoltage(start));
    expect(started.doubts).toEqual([]);
    expect(started.passedOverShare).toBe(0.5);
  });

  it("refuses a slope from too little change of temperature, and without temperature", () => {
    expect(given(measureChargingVoltage(drive(3, -0.01, 20, 26))).slopeVoltsPerKelvin).toMatchObject({
      code: "temperature-range-too-small",
    });
    const { temperatureCelsius, ...without } = drive(3, -0.01, -10, 40);
    expect(given(measureChargingVoltage(without)).slopeVoltsPerKelvin).toMatchObject({
      code: "no-temperature",
    });
    expect(temperatureCelsius).toBeDefined();
  });
});

describe.skipIf(!present(VRLA))(
  `cycles_A_10days_with_charging.csv, repository valentinsulzer/faster-lead-acid (${SKIPPED} when absent)`,
  () => {
    const hours = (from: number, to: number): LogSeries => {
      const { series } = readVrla("cycles_A_10days_with_charging.csv");
      return sliceSeries(series, series.seconds[0]! + from * 3600, series.seconds[0]! + to * 3600);
    };

    it("second recharge, hours 42 to 44.6: held at 14.36-14.43 V; a range of 3 K gives no slope", () => {
      const got = given(measureChargingVoltage(hours(42, 44.6)));
      expect(got.regulatedVolts.value).toBeGreaterThan(14.36);
      expect(got.regulatedVolts.value).toBeLessThan(14.43);
      expect(got.slopeVoltsPerKelvin).toMatchObject({ code: "temperature-range-too-small" });
    });

    it("the current-limited part of a recharge is no plateau", () => {
      expect(measureChargingVoltage(hours(34, 41))).toMatchObject({ code: "not-regulated" });
    });
  },
);
