import { isRefusal } from "crankworthy/numeric";
import {
  type ConvertedRating,
  convertRating,
  enGridStepAmperes,
  type RatingStandard,
  ratingStandards,
} from "crankworthy/ratings";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Derivation } from "../../src/sources/source.js";

const all = Object.keys(ratingStandards) as RatingStandard[];
const exact = (value: number) => ({ value, standardUncertainty: 0 });

function converted(from: RatingStandard, to: RatingStandard, value: number, fromLabelGrid = false) {
  const result = convertRating({ amperes: exact(value), from, to, fromLabelGrid });
  if (isRefusal(result)) throw new Error(`refused: ${result.code}`);
  return result;
}

function code(from: RatingStandard, to: RatingStandard): string {
  const result = convertRating({ amperes: exact(500), from, to });
  return isRefusal(result) ? result.code : "converted";
}

/** All pairs that convert, found by asking. */
const pairs = all.flatMap((from) =>
  all.filter((to) => to !== from && code(from, to) === "converted").map((to) => [from, to] as const),
);

describe("convertRating", () => {
  it("converts exactly the pairs with a direct relation, JIS standing in for SAE and EN 2015 for level 1", () => {
    const names = pairs.map(([from, to]) => `${from} > ${to}`);
    // 8 rows; JIS in 5 SAE rows more (DIN, EN, IEC, CA, MCA); EN:2015 in DIN, SAE, JIS and beside level 1.
    expect(names).toHaveLength(2 * (8 + 5 + 4));
    for (const [from, to] of pairs) expect(names).toContain(`${to} > ${from}`);
  });

  it("divides by the centre on the way back, with the same relative uncertainty", () => {
    for (const [from, to] of pairs) {
      const there = converted(from, to, 600);
      const back = converted(to, from, 600);
      expect(there.factor.value * back.factor.value).toBeCloseTo(1, 12);
      expect(back.relativeUncertainty).toBeCloseTo(there.relativeUncertainty, 12);
    }
  });

  it("adds 2 % (k = 2) in quadrature where JIS stands in for SAE", () => {
    expect(2 * converted("din-43539-2", "jis-d-5301:2006", 300).relativeUncertainty).toBeCloseTo(0.0825, 4);
    expect(converted("jis-d-5301:2006", "bci-ca", 600).value).toBeCloseTo(762, 9);
  });

  it("adds the label grid to an EN label number on the grid, and only there", () => {
    const onGrid = converted("en-50342-1:2006-level-1", "sae-j537", 540, true);
    expect(onGrid.value).toBeCloseTo(583.2, 9);
    expect(2 * onGrid.relativeUncertainty).toBeCloseTo(Math.hypot(0.1, (15 * 1.1547) / 540), 5);
    expect(converted("en-50342-1:2006-level-1", "sae-j537", 540).relativeUncertainty).toBeCloseTo(0.05, 12);
    for (const offGrid of [610, 740, 870]) {
      expect(converted("en-50342-1:2015", "sae-j537", offGrid, true).relativeUncertainty).toBeCloseTo(
        0.05,
        12,
      );
    }
    expect(converted("din-43539-2", "sae-j537", 300, true).relativeUncertainty).toBeCloseTo(0.04, 12);
    expect(converted("en-50342-1:2015", "en-50342-1:2006-level-1", 540, true).relativeUncertainty).toBe(0);
  });

  it("carries the uncertainty of the measurement beside that of the factor", () => {
    const result = convertRating({
      amperes: { value: 300, standardUncertainty: 12 },
      from: "din-43539-2",
      to: "sae-j537",
    });
    expect(!isRefusal(result) && result.standardUncertainty).toBeCloseTo(1.7 * Math.hypot(12, 300 * 0.04), 9);
  });

  it("converts 0 A, which is a reading too, and keeps its uncertainty", () => {
    const result = convertRating({
      amperes: { value: 0, standardUncertainty: 5 },
      from: "en-50342-1:2015",
      to: "sae-j537",
      fromLabelGrid: true,
    });
    expect(result).toMatchObject({ value: 0, relativeUncertainty: 0.05 });
    expect(!isRefusal(result) && result.standardUncertainty).toBeCloseTo(5.4, 12);
  });

  it.each<[RatingStandard, RatingStandard, string]>([
    ["en-50342-1:2006-level-2", "sae-j537", "en-level-2"],
    ["din-43539-2", "en-50342-1:2006-level-2", "en-level-2"],
    ["en-50342-1:2006-level-2", "en-50342-1:2006-level-1", "en-level-2"],
    ["en-50342-1:unstated", "sae-j537", "en-level-unstated"],
    ["en-50342-1:unstated", "en-50342-1:2015", "en-level-unstated"],
    ["iec-60095-1:unstated", "sae-j537", "iec-edition-unstated"],
    ["iec-60095-1:unstated", "iec-60095-1:pre-2006", "iec-edition-unstated"],
    ["iec-60095-1:2006", "en-50342-1:2015", "iec-test-not-read"],
    ["sae-j537", "iec-60095-1:2018", "iec-test-not-read"],
    ["hca", "sae-j537", "hca-not-a-rating"],
    ["sae-j537", "hca", "hca-not-a-rating"],
    ["hca", "hca", "hca-not-a-rating"],
    ["unstated", "sae-j537", "standard-unstated"],
    ["unstated", "unstated", "standard-unstated"],
    ["jis-d-5301:pre-2006", "jis-d-5301:2006", "jis-before-2006"],
    ["gost-959-91", "din-43539-2", "test-not-established"],
    ["gb-t-5008-1", "en-50342-1:2015", "test-not-established"],
    ["iec-60095-1:pre-2006", "en-50342-1:2006-level-1", "no-direct-conversion"],
    ["din-43539-2", "bci-ca", "no-direct-conversion"],
    ["bci-ca", "bci-mca", "no-direct-conversion"],
  ])("refuses %s → %s: %s", (from, to, expected) => {
    expect(code(from, to)).toBe(expected);
    const result = convertRating({ amperes: exact(500), from, to });
    expect(isRefusal(result) && result.reason.length > 20 && result.wouldHelp.length > 10).toBe(true);
  });

  it("converts HCA by the caller's ratio, both ways, with the ratio's uncertainty", () => {
    const hcaRatio = { value: 1.5, standardUncertainty: 0.15 };
    const amperes = { value: 600, standardUncertainty: 12 };
    const hot = convertRating({ amperes, from: "sae-j537", to: "hca", hcaRatio });
    if (isRefusal(hot)) throw new Error(hot.code);
    expect(hot).toMatchObject({ value: 900, standard: "hca", source: "hca-note", standing: "computed" });
    expect(hot.standardUncertainty).toBeCloseTo(Math.hypot(1.5 * 12, 600 * 0.15), 9);
    const cold = convertRating({ amperes, from: "hca", to: "sae-j537", hcaRatio });
    if (isRefusal(cold)) throw new Error(cold.code);
    expect(cold.value).toBeCloseTo(400, 9);
    expect(cold.standardUncertainty).toBeCloseTo(400 * Math.hypot(0.02, 0.1), 9);
    // There and back is the original, not the original with the ratio counted twice.
    const back = convertRating({ amperes: hot, from: "hca", to: "sae-j537" });
    expect(back).toMatchObject({ value: 600, standardUncertainty: 12 });
    const again = convertRating({ amperes: cold, from: "sae-j537", to: "hca" });
    expect(again).toMatchObject({ value: 600, standardUncertainty: 12 });
  });

  it("reaches HCA from JIS of 2006 as from SAE, and from nothing else", () => {
    const hcaRatio = { value: 1.5, standardUncertainty: 0 };
    const jis = convertRating({ amperes: exact(600), from: "jis-d-5301:2006", to: "hca", hcaRatio });
    expect(jis).toMatchObject({ value: 900, relativeUncertainty: 0.01 });
    const refusedAs = (from: RatingStandard, to: RatingStandard) => {
      const result = convertRating({ amperes: exact(600), from, to, hcaRatio });
      return isRefusal(result) ? result.code : "none";
    };
    expect(refusedAs("din-43539-2", "hca")).toBe("no-direct-conversion");
    expect(refusedAs("unstated", "hca")).toBe("standard-unstated");
    expect(refusedAs("hca", "en-50342-1:2006-level-2")).toBe("en-level-2");
    // A ratio of HCA has no say between other standards.
    expect(
      convertRating({ amperes: exact(300), from: "din-43539-2", to: "sae-j537", hcaRatio }),
    ).toMatchObject({
      value: 510,
      source: "ratings-choice",
    });
    expect(() =>
      convertRating({
        amperes: exact(600),
        from: "sae-j537",
        to: "hca",
        hcaRatio: { value: 0.5, standardUncertainty: 0 },
      }),
    ).toThrow(/hcaRatio/);
  });

  it("returns the same standard unchanged, level 2 and unstated editions included", () => {
    for (const standard of all.filter((id) => id !== "hca" && id !== "unstated")) {
      const result = convertRating({
        amperes: { value: 480, standardUncertainty: 7 },
        from: standard,
        to: standard,
        fromLabelGrid: true,
      });
      expect(result).toMatchObject({ value: 480, standardUncertainty: 7, relativeUncertainty: 0, standard });
    }
  });

  it("writes a derivation step only when asked", () => {
    const derivation: Derivation = [];
    convertRating({ amperes: exact(300), from: "din-43539-2", to: "sae-j537" }, derivation);
    expect(derivation).toHaveLength(1);
    expect(derivation[0]).toMatchObject({ result: 510, unit: "A", source: "ratings-choice" });
    convertRating({ amperes: exact(300), from: "unstated", to: "sae-j537" }, derivation);
    expect(derivation).toHaveLength(1);
  });

  it("throws on numbers that are none", () => {
    for (const value of [Number.NaN, -1, Number.POSITIVE_INFINITY]) {
      expect(() => converted("din-43539-2", "sae-j537", value)).toThrow(RangeError);
    }
  });
});

describe("there and back", () => {
  const current = fc.record({
    value: fc.double({ min: 50, max: 1500, noNaN: true }),
    standardUncertainty: fc.double({ min: 0, max: 50, noNaN: true }),
  });

  it("returns the original, its uncertainty neither shrunk nor doubled", () => {
    fc.assert(
      fc.property(fc.constantFrom(...pairs), current, fc.boolean(), ([from, to], amperes, fromLabelGrid) => {
        const there = convertRating({ amperes, from, to, fromLabelGrid }) as ConvertedRating;
        expect(convertRating({ amperes: there, from: to, to: from })).toMatchObject(amperes);
      }),
    );
  });

  it("goes onward from the original: the direct relation, never a chain", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.constantFrom(...all),
        current,
        fc.boolean(),
        ([from, via], to, amperes, fromLabelGrid) => {
          const there = convertRating({ amperes, from, to: via, fromLabelGrid }) as ConvertedRating;
          expect(convertRating({ amperes: there, from: via, to })).toEqual(
            convertRating({ amperes, from, to, fromLabelGrid }),
          );
        },
      ),
    );
  });

  it("survives JSON, and many rounds", () => {
    let step = converted("en-50342-1:2015", "sae-j537", 540, true);
    const first = step;
    for (let round = 0; round < 5; round++) {
      const back = JSON.parse(
        JSON.stringify(convertRating({ amperes: step, from: "sae-j537", to: "en-50342-1:2015" })),
      );
      step = convertRating({ amperes: back, from: "en-50342-1:2015", to: "sae-j537" }) as ConvertedRating;
    }
    expect(step).toEqual(first);
  });

  it("refuses a converted rating under another name by throwing", () => {
    const there = converted("din-43539-2", "sae-j537", 300);
    expect(() => convertRating({ amperes: there, from: "din-43539-2", to: "sae-j537" })).toThrow(/sae-j537/);
  });
});

describe("enGridStepAmperes", () => {
  it.each([
    [0, 10],
    [199, 10],
    [200, 20],
    [299, 20],
    [300, 30],
    [599, 30],
    [600, 40],
    [799, 40],
    [801, 50],
  ])("at %i A the step is %i A", (amperes, step) => expect(enGridStepAmperes(amperes)).toBe(step));

  it("refuses what is no current", () => expect(() => enGridStepAmperes(Number.NaN)).toThrow(RangeError));
});
