import { estimateLag, type LogSeries } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given, present, ROBOT, readRobot, SKIPPED } from "../datasets.js";
import { randomNumbers } from "./made-log.js";

/** A changing load that is a smooth function of time, so that a delay need not be whole rows. */
function load(seed: number): (seconds: number) => number {
  const random = randomNumbers(seed * 104_729 + 17);
  const waves = Array.from(
    { length: 12 },
    () => [0.2 + 4 * random(), 6.3 * random(), 5 + 10 * random()] as const,
  );
  return (t) =>
    -60 + waves.reduce((sum, [speed, phase, size]) => sum + size * Math.sin(speed * t + phase), 0);
}

function series(seed: number, lagSeconds: number, noise: number, rows = 4000, step = 0.02): LogSeries {
  const at = load(seed);
  const random = randomNumbers(seed * 7919 + 5);
  const seconds = Float64Array.from({ length: rows }, (_, i) => i * step);
  return {
    seconds,
    volts: seconds.map(
      (t) => 12.5 + 0.015 * at(t) - 1e-4 * t + noise * (random() + random() + random() - 1.5),
    ),
    amperes: seconds.map((t) => at(t - lagSeconds)),
  };
}

describe("lag between current and voltage", () => {
  it("is recovered between the rows: nearer than a fifth of a row without noise", () => {
    fc.assert(
      fc.property(fc.nat(1000), fc.double({ min: -0.06, max: 0.4, noNaN: true }), (seed, lag) => {
        const { lagSeconds, rSquared } = given(estimateLag(series(seed, lag, 0)));
        expect(Math.abs(lagSeconds.value - lag)).toBeLessThan(0.2 * 0.02);
        expect(rSquared).toBeGreaterThan(0.99);
      }),
      { numRuns: 60 },
    );
  });

  it("lies within two of its uncertainties in at least 93 of 100 noisy logs", () => {
    let inside = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const lag = 0.013 + 0.001 * (seed % 100);
      const { value, standardUncertainty } = given(estimateLag(series(seed, lag, 0.8))).lagSeconds;
      if (Math.abs(value - lag) <= 2 * standardUncertainty) inside++;
    }
    expect(inside).toBeGreaterThanOrEqual(186);
  });

  it("is less certain with more noise", () => {
    const u = (noise: number) => given(estimateLag(series(3, 0.1, noise))).lagSeconds.standardUncertainty;
    expect(u(0)).toBeGreaterThanOrEqual(0.02 / Math.sqrt(12));
    expect(u(1.5)).toBeGreaterThan(1.5 * u(0));
  });

  it("does not depend on the sign of the current", () => {
    const one = series(4, 0.1, 0.2);
    expect(estimateLag({ ...one, amperes: one.amperes.map((i) => -i) })).toEqual(estimateLag(one));
  });

  it("refuses what cannot tell", () => {
    const one = series(5, 0.1, 0);
    const uneven = { ...one, seconds: one.seconds.map((t, i) => t + (i % 2) * 0.012) };
    const unrelated = { ...one, volts: one.volts.map((_, i) => 12 + ((i * 7919) % 101) * 1e-4) };
    expect(estimateLag({ ...one, amperes: one.amperes.map(() => -3.1) })).toMatchObject({
      code: "no-change-of-current",
    });
    expect(estimateLag(uneven)).toMatchObject({ code: "not-evenly-sampled" });
    expect(estimateLag(series(5, 0.1, 0, 90))).toMatchObject({ code: "too-few-rows" });
    expect(estimateLag(unrelated)).toMatchObject({ code: "no-relation" });
    expect(estimateLag(series(5, 0.3, 0), { firstSeconds: 0, lastSeconds: 0.2 })).toMatchObject({
      code: "at-edge",
    });
    expect(estimateLag({ ...one, seconds: one.seconds.map((t) => -t) })).toMatchObject({
      code: "out-of-order",
    });
    expect(() => estimateLag(one, { firstSeconds: 1, lastSeconds: 1 })).toThrow(/lastSeconds/);
  });
});

describe.skipIf(!present(ROBOT))(
  `12 V 18 Ah AGM robot log agm12v18ah_robot_match_20220319.csv, repository orangelight/DSLOG-Reader (${SKIPPED} when absent)`,
  () => {
    it("current is 0.1 s late, within the stated uncertainty of less than half a row", () => {
      const lag = given(estimateLag(readRobot().series));
      const { value, standardUncertainty } = lag.lagSeconds;
      expect(Math.abs(value - 0.1)).toBeLessThan(standardUncertainty);
      expect(standardUncertainty).toBeLessThan(0.01);
      expect(lag.rSquared).toBeGreaterThan(lag.rSquaredWithoutLag + 0.3);
    });

    it("whatever range is tried around it", () => {
      for (const [firstSeconds, lastSeconds] of [
        [0, 0.2],
        [-0.5, 0.5],
        [0.05, 1],
      ] as const) {
        const { value } = given(estimateLag(readRobot().series, { firstSeconds, lastSeconds })).lagSeconds;
        expect(Math.abs(value - 0.1)).toBeLessThan(0.006);
      }
    });
  },
);
