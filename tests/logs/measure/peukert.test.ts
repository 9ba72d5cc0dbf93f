import { chargeMoved, fitPeukert, type PeukertRun } from "crankworthy/logs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { studentT } from "../../../src/logs/measure/peukert.js";
import values from "../../outside/reference-values.json" with { type: "json" };
import { given, present, readVrla, SKIPPED, VRLA } from "../datasets.js";

const law = (k: number, amperes: number) => 20 * (100 / (20 * amperes)) ** k;
const runs = (k: number, currents: readonly number[], orders: readonly number[]): PeukertRun[] =>
  currents.map((amperes, i) => ({ amperes, hours: law(k, amperes), order: orders[i]! }));

describe("fitPeukert", () => {
  it("recovers any exponent exactly, also one below 1, and is sure only above 1", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.8, max: 1.6, noNaN: true }), (k) => {
        const fit = given(fitPeukert(runs(k, [3, 10, 5, 20], [1, 2, 3, 4])));
        expect(fit.exponent.value).toBeCloseTo(k, 9);
        if (Math.abs(k - 1) > 1e-6) expect(fit.identifiable).toBe(k > 1);
      }),
    );
  });

  it("says when the rate changed in step with the order, by value or by rank", () => {
    expect(given(fitPeukert(runs(1.2, [20, 10, 5, 3], [1, 2, 3, 4]))).doubts).toEqual([
      "rate-and-order-confounded",
    ]);
    // Rank order perfect, value far from a line.
    const steep = given(fitPeukert(runs(1.2, [2, 2.2, 2.5, 50], [1, 30, 60, 61])));
    expect(Math.abs(steep.correlation)).toBeLessThan(0.9);
    expect(steep.doubts).toEqual(["rate-and-order-confounded"]);
    expect(given(fitPeukert(runs(1.2, [20, 3, 10, 5], [1, 2, 3, 4]))).identifiable).toBe(true);
  });

  it("counts currents within 5 % as one rate", () => {
    const fit = given(fitPeukert(runs(1.2, [5, 5.1, 10, 10.2], [3, 1, 2, 4])));
    expect(fit.distinctRates).toBe(2);
    expect(fit.doubts).toContain("fewer-than-three-rates");
    expect(fitPeukert(runs(1.2, [5, 5.1, 5.2], [1, 2, 3]))).toMatchObject({ code: "same-current" });
    expect(fitPeukert(runs(1.2, [5, 10], [1, 2]))).toMatchObject({ code: "too-few-runs" });
  });

  it("carries the uncertainty of current and time: the closed form for symmetric runs", () => {
    // Currents e⁻¹, 1, e: Σ(ln I − mean)² = 2, weights ∓1/2; u² = 2·¼·(0.02² + (1.2·0.01)²).
    const exact = [Math.exp(-1), 1, Math.E].map((amperes, i) => ({
      amperes: { value: amperes, standardUncertainty: 0.01 * amperes },
      hours: { value: law(1.2, amperes), standardUncertainty: 0.02 * law(1.2, amperes) },
      order: [2, 1, 3][i]!,
    }));
    expect(given(fitPeukert(exact)).exponent.standardUncertainty).toBeCloseTo(
      Math.sqrt(0.5 * (0.02 ** 2 + 0.012 ** 2)),
      9,
    );
  });

  it("throws for currents and times that are none", () => {
    const [first, ...rest] = runs(1.2, [20, 3, 10], [1, 2, 3]);
    expect(() => fitPeukert([{ ...first!, amperes: 0 }, ...rest])).toThrow("runs[0].amperes");
    expect(() => fitPeukert([{ ...first!, hours: -1 }, ...rest])).toThrow("runs[0].hours");
    expect(() => fitPeukert([{ ...first!, order: Number.NaN }, ...rest])).toThrow("runs[0].order");
  });

  it("its factor is Student's, as SciPy gives it", () => {
    const compared = values.student_t_quantile.filter(([share]) => share === 0.975);
    expect(compared.length).toBeGreaterThan(4);
    for (const [, degrees, quantile] of compared)
      expect(Math.abs(studentT(degrees!) - quantile!)).toBeLessThan(1e-4);
  });
});

describe.skipIf(!present(VRLA))(
  `12 V 17 Ah VRLA telemetry, repository valentinsulzer/faster-lead-acid (${SKIPPED} when absent)`,
  () => {
    it("the five discharges give 0.96, reported as not identifiable: rate and order went together", () => {
      const measured = ["3.0A", "2.5A", "1.5A", "1.0A_first", "0.5A"].map((name, order) => {
        const { series: log } = readVrla(`discharge_A_${name}.csv`);
        const loaded = [...log.amperes.keys()].filter((i) => log.amperes[i]! < -0.25);
        const [from, to] = [log.seconds[loaded[0]!]!, log.seconds[loaded.at(-1)!]!];
        const moved = given(chargeMoved(log, { fromSeconds: from, toSeconds: to }));
        const hours = moved.seconds / 3600;
        return { amperes: moved.outAmpereHours.value / hours, hours, order };
      });
      const fit = given(fitPeukert(measured));
      // The description: 3.043 A 6.486 h to 0.531 A 34.827 h, log-log exponent below 1.
      expect(fit.exponent.value).toBeGreaterThan(0.945);
      expect(fit.exponent.value).toBeLessThan(0.965);
      expect(fit.interval.upper).toBeLessThan(1);
      expect(fit.identifiable).toBe(false);
      expect(fit.doubts).toEqual(["rate-and-order-confounded", "interval-reaches-below-one"]);
      expect(fit.rankCorrelation).toBeCloseTo(-1, 9);
    });
  },
);
