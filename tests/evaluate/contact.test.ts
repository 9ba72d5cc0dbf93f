import { describe, expect, it } from "vitest";
import { contactSpread } from "../../src/evaluate/contact.js";

describe("clamps set anew", () => {
  it("separates what repeats from what setting the clamps changes", () => {
    // Means 500, 520, 510; each placing ± 2: standard deviation within 2√2 of two readings.
    const spread = contactSpread([498, 502, 518, 522, 508, 512], 2);
    expect(spread.between).toBeCloseTo(20 / 510, 12);
    expect(spread.within).toBeCloseTo(Math.sqrt(8) / 510, 12);
    expect(spread.limit).toBeCloseTo((3.5 * Math.sqrt(8)) / 510 / Math.SQRT2, 12);
    // Standard deviation of the means is 10; of their mean 10/√3.
    expect(spread.standardUncertainty).toBeCloseTo(10 / Math.sqrt(3) / 510, 12);
    expect(spread.between).toBeGreaterThan(spread.limit);
  });

  it("finds nothing where all readings are alike, and does not divide by nothing", () => {
    expect(contactSpread([500, 500, 500, 500], 2)).toMatchObject({ between: 0, standardUncertainty: 0 });
  });

  it("scatter that is there within a placing too is not the clamps'", () => {
    const spread = contactSpread([480, 520, 490, 530], 2);
    expect(spread.between).toBeLessThan(spread.limit);
  });
});
