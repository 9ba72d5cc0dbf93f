import { alternatorRippleHertz, measureRipple, type VoltageSeries } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given } from "../datasets.js";
import { coverage, rounded, seeded } from "./recovery.js";

interface Made {
  readonly hertz: number;
  readonly rate: number;
  readonly amplitude: number;
  readonly noise?: number;
  readonly seed?: number;
  readonly rows?: number;
}

function ripple({ hertz, rate, amplitude, noise = 0, seed = 1, rows = 4000 }: Made): VoltageSeries {
  const random = seeded(seed);
  const phase = 2 * Math.PI * random.even();
  const seconds = Float64Array.from({ length: rows }, (_, i) => i / rate);
  return {
    seconds,
    // A slow change beside it, far larger than the ripple.
    volts: seconds.map((t) =>
      rounded(
        14.2 + 5 * t + amplitude * Math.sin(2 * Math.PI * hertz * t + phase) + noise * random.normal(),
        0.001,
      ),
    ),
  };
}

describe("measureRipple", () => {
  it("the intervals hold root mean square and peak to peak of a sine, though its frequency is known only roughly", () => {
    const make = (seed: number) => {
      const random = seeded(seed + 9);
      const hertz = 900 + 400 * random.even();
      const amplitude = 0.02 + 0.2 * random.even();
      const series = ripple({ hertz, rate: 15_000 + 30_000 * random.even(), amplitude, noise: 0.002, seed });
      return { amplitude, got: given(measureRipple(series, { rippleHertz: 1100, meterNoiseVolts: 0.002 })) };
    };
    expect(
      coverage(200, (seed) => {
        const { amplitude, got } = make(seed);
        return { truth: amplitude / Math.SQRT2, got: got.rmsVolts };
      }),
    ).toBeGreaterThan(0.93);
    // Noise makes the peaks higher: with it given, and without any, the interval of the peaks holds too.
    expect(
      coverage(200, (seed) => {
        const { amplitude, got } = make(seed);
        return { truth: 2 * amplitude, got: got.peakToPeakVolts };
      }),
    ).toBeGreaterThan(0.93);
    expect(
      coverage(200, (seed) => {
        const random = seeded(seed + 9);
        const amplitude = 0.02 + 0.2 * random.even();
        const series = ripple({ hertz: 1000, rate: 11_000 + 30_000 * random.even(), amplitude, seed });
        return {
          truth: 2 * amplitude,
          got: given(measureRipple(series, { rippleHertz: 1000 })).peakToPeakVolts,
        };
      }),
    ).toBeGreaterThan(0.93);
  });

  it("takes off the peaks what noise adds to them, and says so in the uncertainty", () => {
    const series = ripple({ hertz: 1000, rate: 20_300, amplitude: 0.1, noise: 0.01, rows: 20_000 });
    const raw = given(measureRipple(series, { rippleHertz: 1000 })).peakToPeakVolts;
    const got = given(measureRipple(series, { rippleHertz: 1000, meterNoiseVolts: 0.01 })).peakToPeakVolts;
    expect(raw.value).toBeGreaterThan(0.22);
    expect(Math.abs(got.value - 0.2)).toBeLessThan(0.003);
    expect(got.standardUncertainty).toBeGreaterThan((raw.value - got.value) / 2);
  });

  it("refuses at and below twice the ripple frequency", () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 2000, noNaN: true }), (rate) => {
        const series = ripple({ hertz: 1000, rate, amplitude: 0.1 });
        expect(measureRipple(series, { rippleHertz: 1000 })).toMatchObject({ code: "sampling-too-slow" });
      }),
    );
  });

  it("few samples a period: peaks are a lower bound and aliasing is possible", () => {
    const slow = given(
      measureRipple(ripple({ hertz: 1000, rate: 2500, amplitude: 0.1 }), { rippleHertz: 1000 }),
    );
    expect(slow.peakToPeakBound).toBe("lower");
    expect(slow.doubts).toEqual(["aliasing-possible", "energy-near-nyquist"]);
    expect(slow.nyquistHertz).toBeCloseTo(1250, 6);
    const fast = given(
      measureRipple(ripple({ hertz: 1000, rate: 20_000, amplitude: 0.1 }), { rippleHertz: 1000 }),
    );
    expect(fast.peakToPeakBound).toBe("two-sided");
    expect(fast.doubts).toEqual([]);
  });

  it("refuses uneven rows, a short log, and what the meter's noise hides", () => {
    const series = ripple({ hertz: 1000, rate: 20_000, amplitude: 0.1 });
    const uneven = { ...series, seconds: series.seconds.map((t, i) => t + (i % 3 === 0 ? 1e-5 : 0)) };
    expect(measureRipple(uneven, { rippleHertz: 1000 })).toMatchObject({ code: "uneven-sampling" });
    expect(measureRipple(series, { rippleHertz: 10 })).toMatchObject({ code: "too-few-rows" });
    expect(measureRipple(series, { rippleHertz: 1000, meterNoiseVolts: 1 })).toMatchObject({
      code: "below-meter-noise",
    });
  });

  it("an alternator of 6 pole pairs ripples at 36 times its own speed", () => {
    expect(alternatorRippleHertz({ engineRevolutionsPerMinute: 60, pulleyRatio: 1, polePairs: 6 })).toBe(36);
  });
});
