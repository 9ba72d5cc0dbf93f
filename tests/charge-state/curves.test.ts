import {
  acidFills,
  type Chemistry,
  defaultAcid,
  fullChargeVolts,
  gravityFromVolts,
  meanSlopeVolts,
  openCircuitVolts,
} from "crankworthy/charge-state";
import { bibliography } from "crankworthy/sources";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const fills = Object.entries(acidFills);
const volts = (
  stateOfCharge: number,
  acid = acidFills.temperate as { fullGravity: number; emptyGravity: number },
) => Number(openCircuitVolts({ stateOfCharge, acid }));

describe("open-circuit voltage", () => {
  it.each(fills)("%s rises with charge, from empty to full gravity", (_, acid) => {
    for (let charge = -0.1; charge < 1.05; charge += 0.05) {
      expect(volts(charge + 0.05, acid)).toBeGreaterThan(volts(charge, acid));
    }
    expect(gravityFromVolts(volts(1, acid))).toBeCloseTo(acid.fullGravity, 9);
    expect(gravityFromVolts(volts(0, acid))).toBeCloseTo(acid.emptyGravity, 9);
    expect(volts(1, acid)).toBe(fullChargeVolts(acid));
    expect(meanSlopeVolts(acid)).toBeCloseTo(volts(1, acid) - volts(0, acid), 12);
  });

  it("warm electrolyte reads higher, by the same amount everywhere", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (stateOfCharge) => {
        const acid = acidFills.calcium;
        const warm = Number(openCircuitVolts({ stateOfCharge, acid, temperatureCelsius: 45 }));
        expect(warm - volts(stateOfCharge, acid)).toBeCloseTo(0.024, 9);
      }),
    );
  });

  it("refuses frozen or boiling electrolyte and acid that is none", () => {
    const acid = acidFills.temperate;
    expect(openCircuitVolts({ stateOfCharge: 0, acid, temperatureCelsius: -10 })).toBeTypeOf("number");
    expect(openCircuitVolts({ stateOfCharge: 0, acid, temperatureCelsius: -11 })).toMatchObject({
      code: "temperature-outside-range",
    });
    expect(openCircuitVolts({ stateOfCharge: 1, acid, temperatureCelsius: 61 })).toMatchObject({
      code: "temperature-outside-range",
    });
    expect(openCircuitVolts({ stateOfCharge: -1, acid })).toMatchObject({ code: "acid-outside-range" });
  });

  it("throws for an acid that is empty before it is full", () => {
    expect(() => fullChargeVolts({ fullGravity: 1.12, emptyGravity: 1.265 })).toThrow(RangeError);
    expect(() => fullChargeVolts({ fullGravity: 1.265, emptyGravity: 0.9 })).toThrow(/acid: received/);
  });
});

describe("fills", () => {
  it("name a source of the bibliography", () => {
    for (const [, fill] of fills) expect(Object.keys(bibliography)).toContain(fill.source);
  });

  it("every chemistry has one; enhanced and unknown count as calcium, gel as AGM", () => {
    expect(defaultAcid("efb")).toEqual(defaultAcid("flooded-calcium"));
    expect(defaultAcid("unknown")).toEqual(defaultAcid("flooded-calcium"));
    expect(defaultAcid("gel")).toEqual(defaultAcid("agm"));
    expect(() => defaultAcid("lithium" as Chemistry)).toThrow(/chemistry: received lithium/);
  });
});
