import { measureCrank, type VoltageSeries } from "crankworthy/logs";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";
import { given } from "../datasets.js";
import { coverage, rounded, seeded } from "./recovery.js";

interface Crank {
  readonly rest: number;
  /** Deepest voltage of the inrush, reached `fallSeconds` after the start. */
  readonly lowest: number;
  readonly fallSeconds: number;
  readonly recoverySeconds: number;
  readonly turning: number;
  readonly swing: number;
  readonly seconds: number;
  readonly after: number;
}

const CRANK: Crank = {
  rest: 12.6,
  lowest: 7.6,
  fallSeconds: 0.012,
  recoverySeconds: 0.06,
  turning: 10.2,
  swing: 0.4,
  seconds: 1.2,
  after: 12.5,
};

/** The true curve: steep fall, exponential recovery, compression strokes at 7 Hz that set in after the inrush, quick return. */
function curve(crank: Crank, t: number): number {
  const { rest, lowest, fallSeconds, recoverySeconds, turning, swing, seconds, after } = crank;
  if (t < 0) return rest;
  if (t < fallSeconds) return rest - ((rest - lowest) * t) / fallSeconds;
  if (t < seconds) {
    const since = t - fallSeconds;
    return (
      turning -
      (turning - lowest) * Math.exp(-since / recoverySeconds) +
      (since > 0.3 ? swing * Math.sin(2 * Math.PI * 7 * (since - 0.3)) : 0)
    );
  }
  return after - (after - turning) * Math.exp(-(t - seconds) / 0.02);
}

function log(crank: Crank, hertz: number, seed: number, noise = 0.01, current = false): VoltageSeries {
  const random = seeded(seed);
  const phase = random.even() / hertz;
  const seconds = Float64Array.from({ length: Math.round(4 * hertz) }, (_, i) => i / hertz);
  const true_ = seconds.map((t) => curve(crank, t - 1 - phase));
  const amperes = true_.map((V) => (V - crank.rest) / 0.008);
  return {
    seconds,
    volts: true_.map((V) => rounded(V + noise * random.normal(), 0.005)),
    ...(current ? { amperes } : {}),
  };
}

function randomCrank(seed: number): Crank {
  const random = seeded(seed + 11);
  const lowest = 7 + 2 * random.even();
  return {
    ...CRANK,
    lowest,
    turning: lowest + 1 + 1.2 * random.even(),
    fallSeconds: 0.004 + 0.016 * random.even(),
    recoverySeconds: 0.03 + 0.1 * random.even(),
    swing: 0.1 + 0.3 * random.even(),
    seconds: 0.7 + 2 * random.even(),
  };
}

describe("measureCrank", () => {
  it.each([100, 250, 1000])("at %d Hz the intervals hold minimum and turning level", (hertz) => {
    const share = coverage(200, (seed) => {
      const crank = randomCrank(seed);
      const got = given(measureCrank(log(crank, hertz, seed)));
      return { truth: crank.lowest, got: got.minimumVolts };
    });
    expect(share).toBeGreaterThan(0.93);
    const level = coverage(200, (seed) => {
      const crank = { ...randomCrank(seed), recoverySeconds: 0.05 };
      return { truth: crank.turning, got: given(given(measureCrank(log(crank, hertz, seed))).steadyVolts) };
    });
    expect(level).toBeGreaterThan(0.93);
  });

  it("faster sampling knows the minimum better", () => {
    const at = (hertz: number) =>
      given(measureCrank(log(CRANK, hertz, 3, 0.001))).minimumVolts.standardUncertainty;
    expect(at(1000)).toBeLessThan(at(100) / 4);
  });

  it("the duration is that between fall and return, within the rows at both ends", () => {
    const got = given(measureCrank(log(CRANK, 200, 5)));
    expect(Math.abs(got.durationSeconds.value - CRANK.seconds)).toBeLessThan(0.03);
    expect(got.durationBound).toBe("two-sided");
    expect(got.minimumInInrush).toBe(true);
    expect(got.restVolts.value).toBeCloseTo(12.6, 2);
  });

  it("compression strokes do not end the crank", () => {
    const got = given(measureCrank(log({ ...CRANK, swing: 0.9, turning: 10.8 }, 200, 5)));
    expect(Math.abs(got.durationSeconds.value - CRANK.seconds)).toBeLessThan(0.03);
  });

  it("ends where a weak battery comes back below its rest by more than the starting drop", () => {
    const got = given(measureCrank(log({ ...CRANK, after: 11.9 }, 200, 5)));
    expect(Math.abs(got.durationSeconds.value - CRANK.seconds)).toBeLessThan(0.05);
  });

  it("refuses slow sampling; asked for, the lowest row is an upper bound on the minimum", () => {
    const slow = log(CRANK, 10, 7);
    expect(measureCrank(slow)).toMatchObject({ code: "sampling-too-slow" });
    const got = given(measureCrank(slow, { acceptUpperBound: true }));
    expect(got.bound).toBe("upper");
    expect(got.minimumVolts.value).toBeGreaterThan(CRANK.lowest);
  });

  it("says when the log ends in the crank, and refuses one without rest or crank", () => {
    const whole = log(CRANK, 100, 9);
    const cut = (from: number, to: number) => ({
      seconds: whole.seconds.subarray(from, to),
      volts: whole.volts.subarray(from, to),
    });
    const unfinished = given(measureCrank(cut(0, 180)));
    expect(unfinished.durationBound).toBe("lower");
    expect(measureCrank(cut(0, 90))).toMatchObject({ code: "no-crank" });
    expect(measureCrank(cut(100, 150))).toMatchObject({ code: expect.stringMatching(/no-/) });
    expect(measureCrank(cut(0, 3))).toMatchObject({ code: "too-few-rows" });
  });

  it("where the lowest row is the last under load, the release does not count as recovery", () => {
    // A load test at 100 Hz: 12.6 V, sagging from 10.4 V to 9.9 V in five seconds, released.
    const seconds = Float64Array.from({ length: 800 }, (_, i) => i / 100);
    const volts = seconds.map((t) => (t < 1 || t >= 6 ? 12.6 : 10.4 - 0.1 * (t - 1)));
    const amperes = seconds.map((t) => (t < 1 || t >= 6 ? 0 : -200 - (t - 1)));
    const got = given(measureCrank({ seconds, volts, amperes }));
    expect(got.minimumVolts.value).toBeCloseTo(9.901, 3);
    // A hundredth of a second more of the sag, 1 mV.
    expect(got.minimumVolts.standardUncertainty).toBeLessThan(0.002);
    expect(got.minimumVolts.standardUncertainty).toBeGreaterThan(0.0005);
    expect(got.current!.peakAmperes.standardUncertainty).toBeLessThan(0.02);
  });

  it("a dip of one row is as uncertain as its depth", () => {
    const seconds = Float64Array.from({ length: 100 }, (_, i) => i / 100);
    const volts = seconds.map((_, i) => (i === 50 ? 9.6 : 12.6));
    const got = given(measureCrank({ seconds, volts }));
    expect(got.minimumVolts.standardUncertainty).toBeGreaterThan(1.5);
  });

  it("with current: peak, level and total resistance", () => {
    const got = given(measureCrank(log(CRANK, 500, 2, 0.002, true)));
    const current = got.current!;
    expect(Math.abs(current.peakAmperes.value - (CRANK.lowest - 12.6) / 0.008)).toBeLessThan(40);
    expect(given(current.steadyAmperes).value).toBeLessThan(-250);
    expect(given(current.resistance).resistanceOhms.value).toBeCloseTo(0.008, 4);
    expect(isRefusal(given(measureCrank(log({ ...CRANK, seconds: 0.35 }, 500, 2))).steadyVolts)).toBe(true);
    expect(got).not.toBe(undefined);
    expect(given(measureCrank(log(CRANK, 500, 2))).current).toBeUndefined();
  });
});
