import { freezingPointCelsius } from "crankworthy/charge-state";
import type { Derivation } from "crankworthy/sources";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("freezing point", () => {
  it("falls as acid gets stronger, never rises", () => {
    const at = (gravity: number) => {
      const point = freezingPointCelsius({ relativeDensity25: gravity });
      return "celsius" in point ? point.celsius.value : Number.NaN;
    };
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1.249, noNaN: true }), (gravity) => {
        expect(at(gravity + 0.002)).toBeLessThan(at(gravity));
      }),
    );
    expect(at(1)).toBeCloseTo(0, 9);
  });

  it("gives a bound past the table and nothing past the eutectic", () => {
    expect(freezingPointCelsius({ massPercent: 34 })).toMatchObject({ relation: "at" });
    expect(freezingPointCelsius({ massPercent: 34.01 })).toMatchObject({ relation: "below" });
    expect(freezingPointCelsius({ relativeDensity25: 1.3 })).toMatchObject({ relation: "below" });
    expect(freezingPointCelsius({ relativeDensity25: 1.302 })).toMatchObject({ code: "acid-outside-range" });
    expect(freezingPointCelsius({ relativeDensity25: 0.984 })).toMatchObject({ code: "acid-outside-range" });
  });

  it("a dead cell that reads a little below water freezes like water", () => {
    expect(freezingPointCelsius({ relativeDensity25: 0.985 })).toEqual(
      freezingPointCelsius({ massPercent: 0 }),
    );
    expect(freezingPointCelsius({ densityGramsPerCubicCentimetre25: 0.985 })).toMatchObject({
      code: "acid-outside-range",
    });
  });

  it("writes a step that holds the number and its source", () => {
    const steps: Derivation = [];
    const point = freezingPointCelsius({ relativeDensity25: 1.12 }, steps);
    expect(steps).toHaveLength(1);
    expect(steps[0]).toMatchObject({ unit: "°C", standardUncertainty: 1.5, source: "crc-solutions" });
    expect("celsius" in point && point.celsius.value).toBe(steps[0]!.result);
  });
});
