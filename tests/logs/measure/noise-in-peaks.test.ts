import { describe, expect, it } from "vitest";
import { noiseInPeaks } from "../../../src/logs/measure/noise-in-peaks.js";
import { seeded } from "./recovery.js";

describe("noise in peaks", () => {
  it("no sine: the mean highest of n normal numbers, as in the tables of normal order statistics", () => {
    // Expected greatest of 2, 5 and 10: 1/√π, 1.16296, 1.53875.
    expect(noiseInPeaks(0, 1, 2)).toBeCloseTo(1 / Math.sqrt(Math.PI), 4);
    expect(noiseInPeaks(0, 1, 10)).toBeCloseTo(1.53875, 4);
    expect(noiseInPeaks(0, 0.01, 10)).toBeCloseTo(0.0153875, 6);
  });

  it("is what simulation gives, from noise far below the ripple to half of it", () => {
    for (const noise of [0.01, 0.1, 0.5]) {
      const { even, normal } = seeded(3);
      const [rows, runs, perPeriod] = [77, 4000, 15.3];
      let sum = 0;
      for (let run = 0; run < runs; run++) {
        const phase = 2 * Math.PI * even();
        let [still, noisy] = [-9, -9];
        for (let i = 0; i < rows; i++) {
          const one = Math.cos(phase + (2 * Math.PI * i) / perPeriod);
          still = Math.max(still, one);
          noisy = Math.max(noisy, one + noise * normal());
        }
        sum += (noisy - still) / runs;
      }
      expect(Math.abs(noiseInPeaks(1, noise, rows) - sum)).toBeLessThan(0.05 * noise);
    }
  });

  it("without noise nothing", () => {
    expect(noiseInPeaks(1, 0, 50)).toBe(0);
  });
});
