import { cellEmfVolts, gravityFromVolts } from "crankworthy/charge-state";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("gravity from volts", () => {
  it("is the inverse of the EMF to 1e-9 over the whole model", () => {
    fc.assert(
      fc.property(fc.double({ min: 10.788, max: 13.102, noNaN: true }), (volts) => {
        const gravity = gravityFromVolts(volts);
        const back = 6 * Number(cellEmfVolts({ relativeDensity25: Number(gravity) }));
        expect(Math.abs(back - volts)).toBeLessThan(6e-9);
        expect(Math.abs(Number(gravityFromVolts(back)) - Number(gravity))).toBeLessThan(1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  it("rises with voltage", () => {
    let before = Number(gravityFromVolts(10.79));
    for (let volts = 10.8; volts < 13.1; volts += 0.01) {
      const now = Number(gravityFromVolts(volts));
      expect(now).toBeGreaterThan(before);
      before = now;
    }
  });

  it("says on which side a voltage has no acid", () => {
    for (const volts of [-12.6, 0, 10.5, 10.78]) {
      expect(gravityFromVolts(volts)).toMatchObject({ code: "voltage-below-acid-range" });
    }
    for (const volts of [13.11, 14.4, 25]) {
      expect(gravityFromVolts(volts)).toMatchObject({ code: "voltage-above-acid-range" });
    }
  });
});

describe("cell EMF", () => {
  it("ends where its polynomial ends: 0.1-8 mol/kg", () => {
    expect(cellEmfVolts({ massPercent: 0.98 })).toBeCloseTo(1.798, 3);
    expect(cellEmfVolts({ massPercent: 0.96 })).toMatchObject({ code: "acid-outside-range" });
    expect(cellEmfVolts({ massPercent: 43.9 })).toBeGreaterThan(2.18);
    expect(cellEmfVolts({ massPercent: 44 })).toMatchObject({ code: "acid-outside-range" });
  });
});
