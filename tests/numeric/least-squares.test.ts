import { type FittedCurve, fitLeastSquares, fitLine, isRefusal } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { agreeingDigits, NIST_NAMES, nistPresent, readNist } from "./nist.js";

function given(result: ReturnType<typeof fitLeastSquares>): FittedCurve {
  if (isRefusal(result)) throw new Error(`refused: ${result.code}`);
  return result;
}

const decay = (x: number, [end, drop, tau]: readonly number[]) => end! - drop! * Math.exp(-x / tau!);
const times = Array.from({ length: 20 }, (_, i) => 0.3 * i);
const rough = times.map((x, i) => decay(x, [12.6, 0.4, 2]) + 0.003 * Math.sin(7 * i));

describe.skipIf(!nistPresent)(
  "NIST StRD nonlinear regression (skipped: ../shared/datasets is not beside this repository)",
  () => {
    const cases = NIST_NAMES.flatMap((name) => [[name, 0] as const, [name, 1] as const]);
    it.each(cases)("%s from start %i: parameters to 6 digits, deviations to 4", (name, which) => {
      const problem = readNist(name);
      const fit = given(fitLeastSquares(problem.model, problem.starts[which], problem));
      expect(problem.certified.length).toBe(problem.starts[which].length);
      for (const [i, { value, deviation }] of problem.certified.entries()) {
        expect(agreeingDigits(fit.parameters[i]!.value, value)).toBeGreaterThan(6);
        expect(agreeingDigits(fit.parameters[i]!.standardUncertainty, deviation)).toBeGreaterThan(4);
      }
      expect(agreeingDigits(fit.residualSumOfSquares, problem.residualSumOfSquares)).toBeGreaterThan(9);
      expect(fit.degreesOfFreedom).toBe(problem.degreesOfFreedom);
    });
  },
);

describe("fitLeastSquares", () => {
  it("of a straight line gives the closed form, whatever the start", () => {
    const number = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.array(number, { minLength: 4, maxLength: 12 }), number, number, (ys, a, b) => {
        const xs = ys.map((_, i) => i + 1);
        const line = fitLine(xs, ys);
        const gradient = (x: number, _: readonly number[], row: Float64Array) => row.set([1, x]);
        const fit = given(
          fitLeastSquares((x: number, [p, q]) => p! + q! * x, [a, b], { xs, ys }, { gradient }),
        );
        const near = (ours: number, exact: number) =>
          expect(Math.abs(ours - exact)).toBeLessThan(1e-9 * (1 + Math.abs(exact)));
        near(fit.parameters[0]!.value, line.intercept.value);
        near(fit.parameters[1]!.value, line.slope.value);
        near(fit.parameters[0]!.standardUncertainty, line.intercept.standardUncertainty);
        near(fit.parameters[1]!.standardUncertainty, line.slope.standardUncertainty);
        near(
          fit.covariance[0]![1]!,
          line.correlation * line.intercept.standardUncertainty * line.slope.standardUncertainty,
        );
      }),
      { numRuns: 200 },
    );
  });

  it("a gradient given exactly leads to the same curve as differences", () => {
    const data = { xs: times, ys: rough };
    const numeric = given(fitLeastSquares(decay, [10, 1, 1], data));
    const exact = given(
      fitLeastSquares(decay, [10, 1, 1], data, {
        gradient: (x, [, drop, tau], row) => {
          const left = Math.exp(-x / tau!);
          row[0] = 1;
          row[1] = -left;
          row[2] = (-drop! * left * x) / tau! ** 2;
        },
      }),
    );
    for (const [i, one] of exact.parameters.entries()) {
      expect(agreeingDigits(numeric.parameters[i]!.value, one.value)).toBeGreaterThan(7);
      expect(
        agreeingDigits(numeric.parameters[i]!.standardUncertainty, one.standardUncertainty),
      ).toBeGreaterThan(5);
    }
  });

  it("at the minimum the residuals stand square on every slope", () => {
    const { parameters } = given(fitLeastSquares(decay, [10, 1, 1], { xs: times, ys: rough }));
    const at = parameters.map(({ value }) => value);
    const [end, drop, tau] = at;
    const slopes = [
      () => 1,
      (x: number) => -Math.exp(-x / tau!),
      (x: number) => (-drop! * Math.exp(-x / tau!) * x) / tau! ** 2,
    ];
    const residuals = times.map((x, i) => rough[i]! - decay(x, [end!, drop!, tau!]));
    for (const slope of slopes) {
      const product = times.reduce((sum, x, i) => sum + slope(x) * residuals[i]!, 0);
      expect(Math.abs(product) / (Math.hypot(...residuals) * Math.hypot(...times.map(slope)))).toBeLessThan(
        1e-7,
      );
    }
  });

  it("uncertainties weight the points and set the scale of the covariance", () => {
    const xs = [0, 0];
    const mean = (_: number, [p]: readonly number[]) => p!;
    const fit = given(fitLeastSquares(mean, [0], { xs, ys: [1, 4], standardUncertainties: [1, 2] }));
    // Weights 1 and 1/4: (1 + 1)/1.25, u² = 1/1.25; χ² = 0.6² + (2.4/2)².
    expect(fit.parameters[0]!.value).toBeCloseTo(1.6, 9);
    expect(fit.parameters[0]!.standardUncertainty).toBeCloseTo(Math.sqrt(0.8), 9);
    expect(fit.residualSumOfSquares).toBeCloseTo(1.8, 9);
  });

  it("gives the scatter of repeated fits as its uncertainty", () => {
    let state = 7;
    const random = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (state + 0.5) / 2 ** 32;
    };
    const normal = () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
    let squares = 0;
    for (let run = 0; run < 300; run++) {
      const ys = times.map((x) => decay(x, [12.6, 0.4, 2]) + 0.002 * normal());
      const end = given(fitLeastSquares(decay, [12.6, 0.4, 2], { xs: times, ys })).parameters[0]!;
      squares += ((end.value - 12.6) / end.standardUncertainty) ** 2 / 300;
    }
    // Student's t with 17 degrees of freedom has variance 17/15 = 1.13; 300 draws scatter it by 0.1.
    expect(squares).toBeGreaterThan(0.85);
    expect(squares).toBeLessThan(1.5);
  });

  it("refuses what cannot be fitted", () => {
    const data = { xs: times, ys: rough };
    expect(fitLeastSquares(decay, [1, 1, 1], { xs: [1, 2, 3], ys: [1, 2, 3] })).toMatchObject({
      code: "too-few-points",
    });
    expect(fitLeastSquares((x: number, [p, q]) => (p! + q!) * x, [1, 1], data)).toMatchObject({
      code: "singular",
    });
    expect(fitLeastSquares((x: number, [p]) => p! * x, [1, 1], data)).toMatchObject({ code: "singular" });
    expect(fitLeastSquares(decay, [10, 1, 1], data, { mostIterations: 2 })).toMatchObject({
      code: "not-converged",
    });
    expect(fitLeastSquares(() => Number.NaN, [1], data)).toMatchObject({ code: "not-converged" });
  });

  it("takes back steps to where the model has no value", () => {
    const root = (x: number, [p]: readonly number[]) => Math.sqrt(x - p!);
    const xs = [1, 2, 3, 4];
    const fit = given(fitLeastSquares(root, [-50], { xs, ys: xs.map((x) => root(x, [0.999])) }));
    expect(fit.parameters[0]!.value).toBeCloseTo(0.999, 6);
  });

  it("throws for arguments that are no numbers", () => {
    const data = { xs: [1, 2], ys: [1, 2] };
    expect(() => fitLeastSquares(decay, [Number.NaN], data)).toThrow(RangeError);
    expect(() => fitLeastSquares(decay, [], data)).toThrow(RangeError);
    expect(() => fitLeastSquares(decay, [1], { xs: [1], ys: [1, 2] })).toThrow(RangeError);
    expect(() => fitLeastSquares(decay, [1], { ...data, ys: [1, Infinity] })).toThrow("ys[1]");
    expect(() => fitLeastSquares(decay, [1], { ...data, standardUncertainties: [1, 0] })).toThrow(RangeError);
    expect(() => fitLeastSquares(decay, [1], data, { tolerance: 0 })).toThrow("tolerance");
  });
});
