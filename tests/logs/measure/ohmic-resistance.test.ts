import { findOhmicResistance, fitOhmicResistance, type LogSeries } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given, present, ROBOT, readRobot, SKIPPED } from "../datasets.js";

/** Repeatable random numbers in 0..1 (xorshift). */
function randoms(seed: number, count: number): number[] {
  let state = seed;
  return Array.from({ length: count }, () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  });
}

const LOADS = randoms(1, 500).map((one) => -200 * one);
const load = (i: number) => LOADS[i + 50]!;

function series(ohms: number, lag: number, noise = 0, seed = 2): LogSeries {
  const noises = randoms(seed, 400);
  const seconds = Float64Array.from({ length: 400 }, (_, i) => i * 0.02);
  return {
    seconds,
    volts: seconds.map((_, i) => 12.4 + ohms * load(i) + noise * (noises[i]! - 0.5)),
    amperes: seconds.map((_, i) => load(i - lag)),
  };
}

describe("ohmic resistance", () => {
  it("recovers resistance, voltage and lag of a line without noise", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 0.1, noNaN: true }),
        fc.integer({ min: 0, max: 10 }),
        (ohms, lag) => {
          const best = given(findOhmicResistance(series(ohms, lag), { firstLag: -2, lastLag: 12 }));
          expect(best.bestTried.lagRows).toBe(lag);
          expect(best.lagRows).toBeCloseTo(lag, 9);
          expect(best.resistanceOhms.value / ohms).toBeCloseTo(1, 9);
          expect(best.electromotiveVolts.value).toBeCloseTo(12.4, 9);
        },
      ),
      { numRuns: 30 },
    );
  });

  it("its uncertainty is that of the scatter between repeated logs", () => {
    const fits = Array.from({ length: 60 }, (_, i) =>
      given(fitOhmicResistance(series(0.02, 0, 0.5, 7919 * (i + 1)), 0)),
    );
    const errors = fits.map(
      (one) => (one.resistanceOhms.value - 0.02) / one.resistanceOhms.standardUncertainty,
    );
    const meanSquare = errors.reduce((sum, z) => sum + z * z, 0) / errors.length;
    // χ² with 60 degrees: 0.65..1.42 holds 95 %; a little lower for the widening by chance correlation.
    expect(meanSquare).toBeGreaterThan(0.55);
    expect(meanSquare).toBeLessThan(1.5);
  });

  it("leaves out pairs across missing rows", () => {
    const whole = series(0.02, 3);
    const keep = (column: Float64Array) => column.filter((_, i) => i < 100 || i >= 150);
    const holed = { seconds: keep(whole.seconds), volts: keep(whole.volts), amperes: keep(whole.amperes) };
    const one = given(fitOhmicResistance(holed, 3));
    // Three before the hole, three at the end.
    expect(one.rowsLeftOut).toBe(6);
    expect(one.rSquared).toBeCloseTo(1, 9);
  });

  it("a lag in seconds is the lag in rows where it falls on rows, and works on uneven rows", () => {
    const log = series(0.02, 3, 0.1);
    const rows = given(fitOhmicResistance(log, 3));
    const seconds = given(fitOhmicResistance(log, { seconds: 0.06 }));
    expect(seconds.resistanceOhms.value).toBeCloseTo(rows.resistanceOhms.value, 12);
    expect(seconds.lagRows).toBeCloseTo(3, 9);
    const best = given(findOhmicResistance(log, { firstLagSeconds: -0.04, lastLagSeconds: 0.2 }));
    expect(best.bestTried.lagSeconds).toBeCloseTo(0.06, 9);
    expect(Math.abs(best.lagSeconds - 0.06)).toBeLessThan(3 * best.foundLagSeconds.standardUncertainty);
    // Rows at uneven times under a smooth load, current late by 0.05 s: no lag in rows fits.
    const times = Float64Array.from(randoms(9, 400), (one, i) => 0.02 * i + 0.015 * one);
    const smooth = (t: number) => -100 + 80 * Math.sin(5 * t);
    const uneven = {
      seconds: times,
      volts: times.map((t) => 12.4 + 0.02 * smooth(t)),
      amperes: times.map((t) => smooth(t - 0.05)),
    };
    const range = { firstLagSeconds: 0, lastLagSeconds: 0.1, stepSeconds: 0.01 };
    const found = given(findOhmicResistance(uneven, range));
    expect(found.bestTried.lagSeconds).toBeCloseTo(0.05, 9);
    expect(found.lagSeconds).toBeCloseTo(0.05, 3);
    // Chords of the sine between rows 0.02 s apart fall short by about ω²·Δt²/12.
    expect(Math.abs(found.resistanceOhms.value / 0.02 - 1)).toBeLessThan(0.002);
  });

  /** A load that jumps every 0.237 s, current late by 0.05 s: two and a half rows. */
  const jumping = (t: number) => load(Math.floor(t / 0.237));
  const times = Float64Array.from({ length: 2000 }, (_, i) => i * 0.02);
  const betweenRows = {
    seconds: times,
    volts: times.map((t) => 12.4 + 0.02 * jumping(t)),
    amperes: times.map((t) => jumping(t - 0.05)),
  };

  it("finds a lag between rows, where whole rows read low by half a row over the time between jumps", () => {
    const found = given(findOhmicResistance(betweenRows));
    const { value, standardUncertainty } = found.resistanceOhms;
    expect(Math.abs(found.lagSeconds - 0.05)).toBeLessThan(3 * found.foundLagSeconds.standardUncertainty);
    expect(Math.abs(found.lagSeconds - 0.05)).toBeLessThan(0.002);
    expect(Math.abs(value - 0.02)).toBeLessThan(2 * standardUncertainty);
    expect(Math.abs(value / 0.02 - 1)).toBeLessThan(0.005);
    const low = found.bestTried.resistanceOhms.value / 0.02 - 1;
    expect(Math.abs(low + (0.5 * 0.02) / 0.237)).toBeLessThan(0.01);
    // Within the range only: its end is as near as it may come.
    const short = given(findOhmicResistance(betweenRows, { firstLag: 0, lastLag: 2 }));
    expect([short.lagRows, short.atEdge]).toEqual([2, true]);
    expect(short.foundLagSeconds.standardUncertainty).toBeGreaterThan(0.005);
  });

  it("a lag with an uncertainty brings in what the lag changes", () => {
    const seconds = 0.05;
    const sure = given(fitOhmicResistance(betweenRows, { seconds }));
    const unsure = given(fitOhmicResistance(betweenRows, { seconds, standardUncertainty: 0.01 }));
    const at = (lag: number) => given(fitOhmicResistance(betweenRows, { seconds: lag })).resistanceOhms.value;
    expect(unsure.resistanceOhms.value).toBe(sure.resistanceOhms.value);
    const change = Math.hypot(at(0.04) - at(0.05), at(0.06) - at(0.05)) / Math.SQRT2;
    expect(change / 0.02).toBeGreaterThan(0.005);
    expect(unsure.resistanceOhms.standardUncertainty).toBeCloseTo(
      Math.hypot(sure.resistanceOhms.standardUncertainty, change),
      12,
    );
    expect(unsure.electromotiveVolts.standardUncertainty).toBeGreaterThan(
      sure.electromotiveVolts.standardUncertainty,
    );
    expect(() => fitOhmicResistance(betweenRows, { seconds, standardUncertainty: -1 })).toThrow(RangeError);
  });

  it("a slow drift under white noise counts though neighbours hardly correlate", () => {
    // 5 mV of drift across the log, 10 mV of noise from row to row: loads of 10 rows meet the drift by chance.
    const errors = Array.from({ length: 200 }, (_, run) => {
      const loads = randoms(31 * (run + 1), 100);
      const noise = randoms(17 * (run + 1), 1000);
      const seconds = Float64Array.from({ length: 1000 }, (__, i) => i * 0.02);
      const amperes = seconds.map((__, i) => -100 * loads[Math.floor(i / 10)]!);
      const volts = amperes.map((I, i) => 12.4 + 0.02 * I + 0.02 * (i / 1000) + 0.02 * (noise[i]! - 0.5));
      const { value, standardUncertainty } = given(
        fitOhmicResistance({ seconds, volts, amperes }, 0),
      ).resistanceOhms;
      return (value - 0.02) / standardUncertainty;
    });
    const covered = errors.filter((one) => Math.abs(one) <= 1.96).length / errors.length;
    expect(covered).toBeGreaterThanOrEqual(0.92);
  });

  it("says when the best lag is the last one tried", () => {
    expect(given(findOhmicResistance(series(0.02, 8), { firstLag: 0, lastLag: 8 })).atEdge).toBe(true);
  });

  it("refuses a steady current, the wrong sign and a short log", () => {
    const log = series(0.02, 0);
    expect(fitOhmicResistance({ ...log, amperes: log.amperes.map(() => -3.1) }, 0)).toMatchObject({
      code: "no-change-of-current",
    });
    expect(
      findOhmicResistance({ ...log, amperes: log.amperes.map((i) => -i) }, { firstLag: 0, lastLag: 0 }),
    ).toMatchObject({
      code: "not-ohmic",
    });
    const short = {
      seconds: Float64Array.of(0, 1),
      volts: Float64Array.of(12, 11),
      amperes: Float64Array.of(0, -1),
    };
    expect(findOhmicResistance(short)).toMatchObject({ code: "too-few-pairs" });
  });
});

describe.skipIf(!present(ROBOT))(
  `12 V 18 Ah AGM robot log agm12v18ah_robot_match_20220319.csv, repository orangelight/DSLOG-Reader (${SKIPPED} when absent)`,
  () => {
    it("E = 12.43 V, R = 22.4 mΩ, R² 0.913 at a lag of 5 rows", () => {
      const best = given(findOhmicResistance(readRobot().series));
      expect(best.bestTried.lagRows).toBe(5);
      expect(best.bestTried.resistanceOhms.value / 0.02238).toBeCloseTo(1, 3);
      expect(best.atEdge).toBe(false);
      // Between the rows: 0.03 rows later, 0.2 % more.
      expect(Math.abs(best.lagSeconds - 0.1)).toBeLessThan(0.002);
      for (const one of [best, best.bestTried]) {
        expect(Math.abs(one.resistanceOhms.value / 0.02238 - 1)).toBeLessThan(0.01);
        expect(Math.abs(one.electromotiveVolts.value - 12.429)).toBeLessThan(0.005);
      }
      const at = (lag: number) => best.tried.find((one) => one.lagRows === lag)!.rSquared;
      expect(best.bestTried.rSquared).toBeCloseTo(0.913, 3);
      expect(at(4)).toBeCloseTo(0.9, 3);
      expect(at(6)).toBeCloseTo(0.903, 3);
      expect(best.includes).toBe("polarisation");
      const seconds = given(
        findOhmicResistance(readRobot().series, { firstLagSeconds: 0, lastLagSeconds: 0.2 }),
      );
      expect(seconds.bestTried.lagSeconds).toBeCloseTo(0.1, 9);
      expect(Math.abs(seconds.resistanceOhms.value / 0.02238 - 1)).toBeLessThan(0.01);
    });

    it("without the lag it reads low: 20.36 mΩ, R² 0.755", () => {
      const one = given(fitOhmicResistance(readRobot().series, 0));
      // An independent fit of the same rows gives 20.354, the description prints 20.36.
      expect(Math.abs(one.resistanceOhms.value * 1000 - 20.36)).toBeLessThan(0.01);
      expect(one.rSquared).toBeCloseTo(0.755, 3);
    });
  },
);
