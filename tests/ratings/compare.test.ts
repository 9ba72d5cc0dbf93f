import { isRefusal } from "crankworthy/numeric";
import { compareToRating, convertRating, type RatingStandard, ratingStandards } from "crankworthy/ratings";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Derivation } from "../../src/sources/source.js";

const all = Object.keys(ratingStandards) as RatingStandard[];
const compare = (from: RatingStandard, to: RatingStandard, value = 480, u = 10, label = 600) =>
  compareToRating({
    measured: { amperes: { value, standardUncertainty: u }, standard: from },
    label: { amperes: label, standard: to },
  });

describe("compareToRating", () => {
  it("compares like with like without conversion, except a bare current and HCA", () => {
    for (const standard of all) {
      const result = compare(standard, standard);
      if (standard === "hca" || standard === "unstated") expect(isRefusal(result)).toBe(true);
      else
        expect(result).toMatchObject({
          ratio: { value: 0.8, standardUncertainty: 10 / 600 },
          converted: false,
          measuredInLabelStandard: { value: 480, standardUncertainty: 10 },
        });
    }
  });

  it("flags names that cover several tests", () => {
    const EN = "en-50342-1:unstated";
    expect(compare(EN, EN)).toMatchObject({ caveat: "en-level-unstated" });
    expect(compare(EN, "en-50342-1:2015")).toMatchObject({ caveat: "en-level-unstated", converted: false });
    expect(compare("en-50342-1:2015", EN)).toMatchObject({ caveat: "en-level-unstated", converted: false });
    expect(compare("iec-60095-1:unstated", "iec-60095-1:unstated")).toMatchObject({
      caveat: "iec-edition-unstated",
    });
    expect(compare("sae-j537", "sae-j537")).not.toHaveProperty("caveat");
    expect(compare("sae-j537", "din-43539-2")).not.toHaveProperty("caveat");
  });

  it("refuses an EN name without level beside a stated level", () => {
    for (const level of ["en-50342-1:2006-level-1", "en-50342-1:2006-level-2"] as const) {
      expect(compare("en-50342-1:unstated", level)).toMatchObject({ code: "en-level-unstated" });
    }
  });

  it("treats EN 2015 and level 1 as one test", () => {
    expect(compare("en-50342-1:2015", "en-50342-1:2006-level-1")).toMatchObject({ converted: false });
  });

  it("converts into the label's standard and lets the conversion widen the ratio", () => {
    const result = compare("sae-j537", "en-50342-1:2015", 583.2, 0, 540);
    if (isRefusal(result)) throw new Error(result.code);
    expect(result.converted).toBe(true);
    expect(result.ratio.value).toBeCloseTo(1, 12);
    expect(result.ratio.standardUncertainty).toBeCloseTo(0.05, 12);
  });

  it("agrees with convertRating: same refusals, same amperes", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        fc.constantFrom(...all),
        fc.double({ min: 0, max: 1500, noNaN: true }),
        (from, to, value) => {
          const result = compare(from, to, value);
          if (!isRefusal(result) && !result.converted) return;
          const direct = convertRating({ amperes: { value, standardUncertainty: 10 }, from, to });
          if (isRefusal(direct)) expect(result).toEqual(direct);
          else expect(result).toMatchObject({ measuredInLabelStandard: { value: direct.value } });
        },
      ),
    );
  });

  it("derives the conversion and the ratio", () => {
    const derivation: Derivation = [];
    compareToRating(
      {
        measured: { amperes: { value: 510, standardUncertainty: 5 }, standard: "sae-j537" },
        label: { amperes: 300, standard: "din-43539-2" },
      },
      derivation,
    );
    expect(derivation.map((step) => step.unit)).toEqual(["A", "1"]);
  });

  it("a dead battery reads 0 and still compares; a label of 0 A throws", () => {
    expect(compare("sae-j537", "din-43539-2", 0)).toMatchObject({ ratio: { value: 0 } });
    expect(() => compare("sae-j537", "sae-j537", 480, 10, 0)).toThrow(/label\.amperes/);
  });
});
