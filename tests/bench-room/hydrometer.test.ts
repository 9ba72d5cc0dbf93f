import { type CellGravityInput, judgeCellGravities } from "crankworthy/bench";
import { isRefusal } from "crankworthy/numeric";
import type { Derivation } from "crankworthy/sources";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

function judge(gravities: readonly number[], change: Partial<CellGravityInput> = {}) {
  const result = judgeCellGravities({ gravities, afterFullCharge: true, ...change });
  if (isRefusal(result)) throw new Error(result.reason);
  return result;
}

describe("judgeCellGravities", () => {
  it("does not depend on the order of the cells, except for the number of the weakest", () => {
    const cells = fc.array(fc.double({ min: 1.05, max: 1.3, noNaN: true }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(cells, (gravities) => {
        const there = judge(gravities);
        const back = judge([...gravities].reverse());
        return (
          there.spread.value === back.spread.value &&
          Math.abs(there.meanGravity - back.meanGravity) < 1e-12 &&
          gravities[there.weakestCell - 1] === there.lowestGravity
        );
      }),
    );
  });

  it("is shifted, not spread, by a correction", () => {
    const plain = judge([1.25, 1.2]);
    const corrected = judge([1.25, 1.2], { correction: 0.012 });
    expect(corrected.spread.value).toBeCloseTo(plain.spread.value, 12);
    expect(corrected.lowestGravity).toBeCloseTo(1.212, 12);
  });

  it("gives half on the limit and more under a stricter one", () => {
    const gravities = [1.265, 1.235];
    expect(judge(gravities, { limit: "marine" }).exceedProbability).toBeCloseTo(0.5, 6);
    expect(judge(gravities, { limit: "strict" }).exceedProbability).toBeGreaterThan(0.75);
    expect(judge(gravities).exceedProbability).toBeLessThan(0.001);
  });

  it("flags low cells and a low mean, the mean only after a full charge", () => {
    expect(judge([1.14, 1.26]).flags).toEqual(["cell-below-1.150", "mean-below-1.225"]);
    expect(judge([1.09, 1.26], { afterFullCharge: false }).flags).toEqual([
      "cell-below-1.100",
      "cell-below-1.150",
    ]);
    expect(judge([1.26, 1.265]).flags).toEqual([]);
  });

  it("is not valid before full charge or with unmixed water", () => {
    expect(judge([1.2, 1.26], { afterFullCharge: false }).invalidReasons).toEqual(["not-fully-charged"]);
    expect(judge([1.2, 1.26], { waterAdded: true })).toMatchObject({
      valid: false,
      invalidReasons: ["water-not-mixed"],
    });
  });

  it("keeps a dead cell that the cold correction takes below water", () => {
    const cells = judge([1.26, 1.26, 1.26, 1.26, 1.26, 1.003], { correction: -0.012 });
    expect(cells).toMatchObject({ weakestCell: 6 });
    expect(cells.lowestGravity).toBeCloseTo(0.991, 9);
    expect(cells.exceedProbability).toBeGreaterThan(0.999);
    const below = judgeCellGravities({ gravities: [1.26, 0.984], afterFullCharge: true });
    expect(isRefusal(below) && below.code).toBe("gravity-out-of-range");
  });

  it("derives the spread and the probability of exceeding its limit", () => {
    const derivation: Derivation = [];
    const result = judgeCellGravities({ gravities: [1.26, 1.2], afterFullCharge: true }, derivation);
    if (isRefusal(result)) throw new Error(result.reason);
    expect(derivation.map((step) => step.result)).toEqual([result.spread.value, result.exceedProbability]);
    expect(derivation[1]).toMatchObject({ formula: "Φ(margin / u)", source: "jcgm-106" });
  });

  it("throws on a limit that has no name here", () => {
    expect(() => judge([1.26, 1.2], { limit: "lenient" as "usual" })).toThrow(/limit: received lenient/);
    expect(() => judge([1.26, 1.2], { correction: Number.NaN })).toThrow(/correction/);
  });

  it("refuses one cell and readings in other units", () => {
    const code = (gravities: number[]) => {
      const result = judgeCellGravities({ gravities, afterFullCharge: true });
      return isRefusal(result) ? result.code : "none";
    };
    expect(code([1.26])).toBe("too-few-cells");
    expect(code([1265, 1260])).toBe("gravity-out-of-range");
    expect(() => code([1.26, Number.NaN])).toThrow(/gravities\[1\]/);
  });
});
