import { failureShareBy, fitWeibullLife, type LifeData, type WeibullFit } from "crankworthy/warranty";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drawLife, seeded } from "./random.js";

function fitted(data: LifeData, options = {}): WeibullFit {
  const fit = fitWeibullLife(data, options);
  if ("refused" in fit) throw new Error(fit.reason);
  return fit;
}

/** Log-likelihood from the definition: density of failures, survival of the running. */
function logLikelihood(
  { failedAtMonths, runningMonths }: LifeData,
  shape: number,
  scaleMonths: number,
): number {
  const survival = (t: number) => -((t / scaleMonths) ** shape);
  const failed = failedAtMonths.map(
    (t) => Math.log(shape / scaleMonths) + (shape - 1) * Math.log(t / scaleMonths) + survival(t),
  );
  return [...failed, ...runningMonths.map(survival)].reduce((a, b) => a + b, 0);
}

const ages = fc.double({ min: 0.5, max: 120, noNaN: true });
const samples: fc.Arbitrary<LifeData> = fc
  .record({
    failedAtMonths: fc.array(ages, { minLength: 3, maxLength: 20 }),
    runningMonths: fc.array(ages, { maxLength: 20 }),
  })
  .filter(({ failedAtMonths }) => Math.max(...failedAtMonths) > 1.2 * Math.min(...failedAtMonths));

describe("fitWeibullLife", () => {
  it("finds the top of the likelihood: every step away goes down", () => {
    fc.assert(
      fc.property(samples, (data) => {
        const fit = fitWeibullLife(data);
        if ("refused" in fit) return;
        const [b, eta] = [fit.shape.value, fit.scaleMonths.value];
        const top = logLikelihood(data, b, eta);
        expect(fit.logLikelihood).toBeCloseTo(top, 6);
        for (const [x, y] of [
          [1.001, 1],
          [0.999, 1],
          [1, 1.001],
          [1, 0.999],
          [1.001, 1.001],
          [0.999, 1.001],
        ] as const)
          expect(logLikelihood(data, b * x, eta * y)).toBeLessThan(top);
      }),
    );
  });

  it("takes its uncertainty from the curvature there", () => {
    fc.assert(
      fc.property(samples, (data) => {
        const fit = fitWeibullLife(data);
        if ("refused" in fit) return;
        const h = 1e-4;
        const at = (i: number, j: number) =>
          logLikelihood(data, fit.shape.value * Math.exp(i * h), fit.scaleMonths.value * Math.exp(j * h));
        const shape = -(at(1, 0) - 2 * at(0, 0) + at(-1, 0)) / (h * h);
        const scale = -(at(0, 1) - 2 * at(0, 0) + at(0, -1)) / (h * h);
        const between = -(at(1, 1) - at(1, -1) - at(-1, 1) + at(-1, -1)) / (4 * h * h);
        const determinant = shape * scale - between * between;
        const relative = (one: { value: number; standardUncertainty: number }) =>
          one.standardUncertainty / one.value;
        expect(relative(fit.shape) / Math.sqrt(scale / determinant)).toBeCloseTo(1, 3);
        expect(relative(fit.scaleMonths) / Math.sqrt(shape / determinant)).toBeCloseTo(1, 3);
        expect(fit.correlation).toBeCloseTo(-between / Math.sqrt(shape * scale), 3);
      }),
      { numRuns: 60 },
    );
  });

  it("does not depend on the unit of time, nor on the order", () => {
    fc.assert(
      fc.property(samples, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (data, factor) => {
        const fit = fitWeibullLife(data);
        if ("refused" in fit) return;
        const other = fitted({
          failedAtMonths: data.failedAtMonths.map((t) => t * factor).reverse(),
          runningMonths: data.runningMonths.map((t) => t * factor).reverse(),
        });
        expect(other.shape.value / fit.shape.value).toBeCloseTo(1, 9);
        expect(other.scaleMonths.value / fit.scaleMonths.value / factor).toBeCloseTo(1, 9);
      }),
    );
  });

  it("with a known shape of 1 is total time over failures, ± that over √failures", () => {
    fc.assert(
      fc.property(samples, (data) => {
        const { scaleMonths, shape, correlation } = fitted(data, { knownShape: 1 });
        const total = [...data.failedAtMonths, ...data.runningMonths].reduce((a, b) => a + b, 0);
        const failures = data.failedAtMonths.length;
        expect(scaleMonths.value / (total / failures)).toBeCloseTo(1, 12);
        expect(scaleMonths.standardUncertainty / scaleMonths.value).toBeCloseTo(1 / Math.sqrt(failures), 12);
        expect([shape.value, shape.standardUncertainty, correlation]).toEqual([1, 0, 0]);
      }),
    );
  });

  it("holds the truth as often as it says: 2000 samples of 200 batteries, a quarter of them failed", () => {
    const random = seeded(2025);
    const [shape, scaleMonths] = [1.8, 60];
    let inShape = 0;
    let inScale = 0;
    const runs = 2000;
    for (let run = 0; run < runs; run++) {
      const failedAtMonths: number[] = [];
      const runningMonths: number[] = [];
      for (let i = 0; i < 200; i++) {
        const life = drawLife(random, shape, scaleMonths);
        const inUse = 48 * (0.3 + 0.7 * random());
        if (life < inUse) failedAtMonths.push(life);
        else runningMonths.push(inUse);
      }
      const { shapeInterval: b, scaleMonthsInterval: eta } = fitted({ failedAtMonths, runningMonths });
      if (b.lower <= shape && shape <= b.upper) inShape++;
      if (eta.lower <= scaleMonths && scaleMonths <= eta.upper) inScale++;
    }
    // 95 % is meant; three standard errors of 2000 runs are 1.5 %.
    for (const inside of [inShape, inScale]) {
      expect(inside / runs).toBeGreaterThan(0.93);
      expect(inside / runs).toBeLessThan(0.97);
    }
  });

  it("would be deceived without the running ones", () => {
    const random = seeded(3);
    const lives = Array.from({ length: 400 }, () => drawLife(random, 2, 60));
    const failedAtMonths = lives.filter((life) => life < 30);
    const runningMonths = lives.filter((life) => life >= 30).map(() => 30);
    const honest = fitted({ failedAtMonths, runningMonths });
    const deceived = fitted({ failedAtMonths, runningMonths: [] });
    const share = (fit: WeibullFit) =>
      failureShareBy({ shape: fit.shape.value, scaleMonths: fit.scaleMonths.value }, 30);
    expect(share(honest)).toBeCloseTo(failedAtMonths.length / 400, 2);
    expect(share(deceived)).toBeGreaterThan(0.85);
  });

  it("widens its limits with the confidence asked for", () => {
    const data = { failedAtMonths: [10, 20, 30], runningMonths: [40] };
    const [narrow, wide] = [0.8, 0.99].map((confidence) => fitted(data, { confidence }));
    expect(wide!.shapeInterval.lower).toBeLessThan(narrow!.shapeInterval.lower);
    expect(wide!.scaleMonthsInterval.upper).toBeGreaterThan(narrow!.scaleMonthsInterval.upper);
    expect(wide!.shape).toEqual(narrow!.shape);
  });

  it("a running battery of age 0 changes nothing but the count", () => {
    const data = { failedAtMonths: [10, 20, 30], runningMonths: [40] };
    const { running, ...fit } = fitted({ ...data, runningMonths: [0, 40] });
    const { running: _, ...without } = fitted(data);
    expect(fit).toEqual(without);
    expect(running).toBe(2);
  });

  it.each<[string, LifeData, { knownShape?: number }]>([
    ["too-few-failures", { failedAtMonths: [], runningMonths: [10, 20] }, {}],
    ["too-few-failures", { failedAtMonths: [12], runningMonths: [10, 20] }, {}],
    ["too-few-failures", { failedAtMonths: [], runningMonths: [10] }, { knownShape: 2 }],
    ["one-failure-age", { failedAtMonths: [12, 12, 12], runningMonths: [40] }, {}],
    ["age-not-positive", { failedAtMonths: [0, 12], runningMonths: [40] }, {}],
    ["shape-outside-range", { failedAtMonths: [12, 12.001], runningMonths: [] }, {}],
    ["shape-outside-range", { failedAtMonths: [1e-30, 1e-25, 12], runningMonths: [] }, {}],
  ])("refuses: %s", (code, data, options) => {
    expect(fitWeibullLife(data, options)).toMatchObject({ refused: true, code });
  });

  it.each<[string, LifeData, object]>([
    ["failedAtMonths[1]", { failedAtMonths: [1, -2], runningMonths: [] }, {}],
    ["runningMonths[0]", { failedAtMonths: [1, 2], runningMonths: [Number.NaN] }, {}],
    ["confidence", { failedAtMonths: [1, 2], runningMonths: [] }, { confidence: 95 }],
    ["knownShape", { failedAtMonths: [1, 2], runningMonths: [] }, { knownShape: 0 }],
  ])("throws naming %s", (name, data, options) => {
    expect(() => fitWeibullLife(data, options)).toThrow(name);
  });
});
