import { judgeThreeMinuteCharge } from "crankworthy/bench";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";

const base = {
  chemistry: "flooded",
  highestVolts: 15.2,
  voltsStandardUncertainty: 0.03,
  startAmperes: 40,
  seconds: 180,
} as const;

describe("judgeThreeMinuteCharge", () => {
  it("counts voltage above 15.5 V against the plates", () => {
    const low = judgeThreeMinuteCharge(base);
    const high = judgeThreeMinuteCharge({ ...base, highestVolts: 16 });
    expect("valid" in low && low.passProbability).toBeGreaterThan(0.99);
    expect("valid" in high && high.passProbability).toBeLessThan(0.01);
  });

  it.each(["flooded-calcium", "efb", "agm", "gel"] as const)("refuses %s", (chemistry) => {
    const result = judgeThreeMinuteCharge({ ...base, chemistry });
    expect(isRefusal(result) && result.code).toBe("flooded-only");
  });

  it.each([{ startAmperes: 20 }, { startAmperes: 60 }, { seconds: 60 }])("is not valid with %o", (change) => {
    const result = judgeThreeMinuteCharge({ ...base, ...change });
    expect("valid" in result && result.valid).toBe(false);
  });
});
