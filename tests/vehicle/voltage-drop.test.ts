import {
  DROP_LIMITS,
  type DropLimitName,
  dropLimit,
  judgeVoltageDrop,
  sumOfDropLimits,
} from "crankworthy/vehicle";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { given, plusMinus } from "./given.js";

describe("judgeVoltageDrop", () => {
  it("0.5 V at 150 A is 3.3 mΩ: within 0.5 V in all, beyond 2 mΩ per branch", () => {
    const drop = { dropVolts: plusMinus(0.5, 0.005), amperes: plusMinus(150, 3) };
    const branch = given(judgeVoltageDrop(drop, "any-branch-per-ampere"));
    expect(branch.outcome).toBe("beyond-limit");
    expect(branch.unit).toBe("mΩ");
    expect(branch.limit.value).toBeCloseTo(2, 12);
    // Relative: 1 % and 2 % make 2.236 %.
    expect(branch.milliohms!.standardUncertainty).toBeCloseTo(3.3333 * 0.02236, 4);
    expect(given(judgeVoltageDrop(drop, "positive-total")).outcome).toBe("not-established");
  });

  it("the same resistance gives the same judgement at every current", () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 400, noNaN: true }), (amperes) => {
        const at = (milliohms: number) =>
          given(
            judgeVoltageDrop(
              { dropVolts: plusMinus((milliohms * amperes) / 1000), amperes: plusMinus(amperes) },
              "any-branch-per-ampere",
            ),
          ).outcome;
        expect(at(1.9)).toBe("within-limit");
        expect(at(2.1)).toBe("beyond-limit");
      }),
    );
  });

  it("takes 0.0 V per connection as not distinguishable from zero", () => {
    const at = (volts: number) =>
      given(judgeVoltageDrop({ dropVolts: plusMinus(volts, 0.001) }, "connection")).outcome;
    expect(at(0)).toBe("within-limit");
    expect(at(0.002)).toBe("not-established");
    expect(at(0.01)).toBe("beyond-limit");
  });

  it("refuses without a current where the limit needs one, without any current flowing, and exchanged leads", () => {
    const volts = plusMinus(0.1, 0.001);
    expect(judgeVoltageDrop({ dropVolts: volts }, "charging-positive-at-30-a")).toMatchObject({
      code: "current-required",
    });
    expect(judgeVoltageDrop({ dropVolts: volts, amperes: plusMinus(1, 1) }, "solenoid")).toMatchObject({
      code: "no-current",
    });
    expect(judgeVoltageDrop({ dropVolts: plusMinus(-0.2, 0.001) }, "solenoid")).toMatchObject({
      code: "leads-exchanged",
    });
  });

  it("every limit names its source and has its value inside its own spread", () => {
    for (const name of Object.keys(DROP_LIMITS) as DropLimitName[]) {
      const limit = dropLimit(name);
      expect(limit.lower).toBeLessThanOrEqual(limit.value);
      expect(limit.upper).toBeGreaterThanOrEqual(limit.value);
      expect(limit.source).not.toBe("");
    }
  });
});

describe("sumOfDropLimits", () => {
  it("adds the parts of the positive side", () => {
    expect(given(sumOfDropLimits(["cable-3-to-6-ft", "solenoid", "mechanical-switch"])).value).toBeCloseTo(
      0.5,
      12,
    );
  });
  it("does not add a limit per ampere to limits in volts", () => {
    expect(sumOfDropLimits(["solenoid", "any-branch-per-ampere"])).toMatchObject({
      code: "limit-needs-current",
    });
  });
});
