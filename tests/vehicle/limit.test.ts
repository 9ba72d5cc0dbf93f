import { judgeVoltageDrop, type Limit } from "crankworthy/vehicle";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given, plusMinus } from "./given.js";

const LIMIT: Limit = {
  value: 0.3,
  lower: 0.2,
  upper: 0.5,
  source: "vehicle-defaults",
  standing: "our-choice",
};
const judge = (volts: number, u: number, confidence?: number) =>
  given(judgeVoltageDrop({ dropVolts: plusMinus(volts, u) }, LIMIT, confidence ? { confidence } : {}));

describe("judgement against a limit", () => {
  it("JCGM 106 §7.3.3 example 1 (from memory): 0.07 V inside the limit with u = 0.05 V conforms with 0.9192", () => {
    expect(judge(0.23, 0.05).probabilityWithin).toBeCloseTo(0.9192, 4);
  });

  it("decides only when the probability reaches the confidence asked for", () => {
    expect(judge(0.23, 0.05).outcome).toBe("not-established");
    expect(judge(0.23, 0.05, 0.9).outcome).toBe("within-limit");
    expect(judge(0.37, 0.05, 0.9).outcome).toBe("beyond-limit");
  });

  it("says where other figures in use would decide otherwise", () => {
    expect(judge(0.1, 0.01).sourcesAgree).toBe(true);
    expect(judge(0.25, 0.01)).toMatchObject({ outcome: "within-limit", sourcesAgree: false });
    expect(judge(0.4, 0.01)).toMatchObject({ outcome: "beyond-limit", sourcesAgree: false });
    expect(judge(0.6, 0.01).sourcesAgree).toBe(true);
  });

  it("the probability falls as the reading rises, and no NaN comes out at the limit without uncertainty", () => {
    const volts = fc.double({ min: 0, max: 1, noNaN: true });
    const u = fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 1, noNaN: true }));
    fc.assert(
      fc.property(volts, volts, u, (a, b, spread) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(judge(high, spread).probabilityWithin).toBeLessThanOrEqual(
          judge(low, spread).probabilityWithin,
        );
      }),
    );
    expect(judge(0.3, 0)).toMatchObject({ probabilityWithin: 1, outcome: "within-limit" });
  });

  it("throws on readings that are no numbers and on a confidence out of range", () => {
    expect(() => judge(Number.NaN, 0)).toThrow(RangeError);
    expect(() => judge(0.1, -1)).toThrow(/voltage|dropVolts/);
    expect(() => judge(0.1, 0, 1)).toThrow(/confidence/);
  });

  it("throws on a limit that is turned round or no number", () => {
    const drop = { dropVolts: plusMinus(0.1, 0.01) };
    expect(() => judgeVoltageDrop(drop, { ...LIMIT, lower: 1, upper: 0 })).toThrow(/limit: received/);
    expect(() => judgeVoltageDrop(drop, { ...LIMIT, value: Number.NaN })).toThrow(RangeError);
  });

  it("writes its derivation only when one is handed over", () => {
    const steps: import("crankworthy/sources").DerivationStep[] = [];
    judgeVoltageDrop({ dropVolts: plusMinus(0.1, 0.01) }, LIMIT, {}, steps);
    expect(steps).toHaveLength(2);
    expect(steps[1]).toMatchObject({ formula: "Φ(margin / u)", unit: "1", source: "jcgm-106" });
    expect(steps[0]).toMatchObject({ unit: "V", source: "vehicle-defaults", standing: "our-choice" });
    expect(steps[0]!.result).toBeCloseTo(0.2, 12);
  });
});
