import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/evaluate/index.js";
import { abilityPicture } from "../../src/pictures/index.js";
import { worn } from "./evaluations.js";
import { all, descriptionOf, expectSoundPicture, shownTexts } from "./read-svg.js";

const evaluation = evaluate(worn);
// Only the ratio: what the verdict says of another one would contradict the picture.
const { condition, action, decidedBy } = evaluation.verdict;
const withRatio = (value: number, standardUncertainty: number) => ({
  ...evaluation,
  verdict: { condition, action, decidedBy },
  ability: [{ ...evaluation.ability[0]!, ratio: { value, standardUncertainty } }],
});

describe("abilityPicture", () => {
  it("tells reading, both guard bands, both chances and the verdict of the evaluation", () => {
    const told = descriptionOf(expectSoundPicture(abilityPicture(withRatio(0.84, 0.04))));
    // 80 + 1.645·4 and 60 − 1.645·4; Φ(1) = 0.84.
    expect(told).toContain(
      "called serviceable from a reading of 87\u00a0% on, so that it is so in 95 in 100",
    );
    expect(told).toContain("called unserviceable below a reading of 53\u00a0%");
    expect(told).toContain("Chance of 80\u00a0% or more: 84 in 100");
    expect(told).toContain("Chance of less than 60\u00a0%: less than 1 in 1000");
    expect(told).toContain("Condition: not established. Action: charge it, then measure again.");
  });

  it("follows the policy the evaluation was made with", () => {
    const policy = { serviceableFraction: 0.7, unserviceableFraction: 0.5, acceptProbability: 0.9 };
    const told = descriptionOf(expectSoundPicture(abilityPicture(withRatio(0.84, 0.04), { policy })));
    expect(told).toContain(
      "Guard band above 70\u00a0%: called serviceable from a reading of 75\u00a0% on, so that it is so in 90 in 100",
    );
    expect(told).toContain("Chance of less than 50\u00a0%");
    expect(() => abilityPicture(evaluation, { policy: { serviceableFraction: 0.4 } })).toThrow(RangeError);
  });

  it("does not draw another policy than the verdict's", () => {
    const record = {
      identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
      measurements: { cranking: { standard: "sae-j537", amperes: 450, relativeStandardUncertainty: 0.04 } },
    } as const;
    const policy = { serviceableFraction: 0.65, unserviceableFraction: 0.5 };
    const other = evaluate(record, { policy });
    expect(() => abilityPicture(other)).toThrow(/^policy: received limits 0.8 and 0.6/);
    expect(() => abilityPicture(evaluate(record), { policy })).toThrow(/^policy: /);
    expectSoundPicture(abilityPicture(other, { policy }));
  });

  it("tells the two guard bands and the two chances apart by hatch", () => {
    const root = expectSoundPicture(abilityPicture(withRatio(0.7, 0.08)));
    const fills = all(root, "rect")
      .map(({ attributes }) => attributes.fill!)
      .filter((fill) => fill.startsWith("url"));
    // Each guard band and its sample, each chance's sample.
    expect(fills).toHaveLength(6);
    expect(new Set(fills).size).toBe(4);
  });

  it("names every stretch, also where one limit leaves none for worn", () => {
    expect(shownTexts(expectSoundPicture(abilityPicture(evaluation)))).toEqual(
      expect.arrayContaining(["unserviceable", "worn", "serviceable"]),
    );
    const policy = { serviceableFraction: 0.8, unserviceableFraction: 0.8 };
    expect(shownTexts(expectSoundPicture(abilityPicture(withRatio(0.73, 0.03), { policy })))).not.toContain(
      "worn",
    );
  });

  it("refuses without an ability", () => {
    expect(abilityPicture({ ...evaluation, ability: [] })).toMatchObject({
      refused: true,
      code: "no-ability",
    });
  });

  it("is sound for every ability, a certain one included", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 1.6, noNaN: true }),
        fc.oneof(fc.constant(0), fc.double({ min: 0, max: 0.6, noNaN: true })),
        fc.integer({ min: 280, max: 1200 }),
        (value, u, width) => {
          expectSoundPicture(abilityPicture(withRatio(value, u), { width }));
        },
      ),
      { numRuns: 150 },
    );
  });
});
