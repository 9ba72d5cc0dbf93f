import { isRefusal } from "crankworthy/numeric";
import {
  type CapacityRelation,
  type Construction,
  capacityAmpereHours,
  relationProvenance,
  reserveCapacityMinutes,
  reserveMinutesByRelation,
} from "crankworthy/ratings";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { relationRows } from "../../src/ratings/capacity.data.js";
import { bibliography } from "../../src/sources/index.js";
import type { Derivation } from "../../src/sources/source.js";

const construction = fc.constantFrom<Construction>("flooded", "valve-regulated");
const ampereHours = fc.double({ min: 20, max: 240, noNaN: true });

function minutes(capacity: number, kind: Construction) {
  const result = reserveCapacityMinutes({ capacityAmpereHours: capacity, construction: kind });
  if (isRefusal(result)) throw new Error(result.code);
  return result;
}

describe("reserve capacity and 20 h capacity", () => {
  it("there and back is the same capacity, end points of the range included", () => {
    fc.assert(
      fc.property(construction, fc.oneof(ampereHours, fc.constantFrom(20, 240)), (kind, capacity) => {
        const back = capacityAmpereHours({
          reserveCapacityMinutes: minutes(capacity, kind).value,
          construction: kind,
        });
        expect(!isRefusal(back) && back.value).toBeCloseTo(capacity, 9);
      }),
    );
  });

  it("more ampere hours give more minutes, and more than in proportion", () => {
    fc.assert(
      fc.property(construction, ampereHours, ampereHours, (kind, a, b) => {
        fc.pre(b > a * 1.001);
        expect(minutes(b, kind).value / minutes(a, kind).value).toBeGreaterThan(b / a);
      }),
    );
  });

  it("carries 8 % flooded and 15 % valve-regulated at k = 2, in both directions", () => {
    const flooded = minutes(60, "flooded");
    expect((2 * flooded.standardUncertainty) / flooded.value).toBeCloseTo(0.08, 12);
    const sealed = minutes(60, "valve-regulated");
    expect((2 * sealed.standardUncertainty) / sealed.value).toBeCloseTo(0.15, 12);
    const back = capacityAmpereHours({ reserveCapacityMinutes: 98, construction: "flooded" });
    expect(!isRefusal(back) && (2 * back.standardUncertainty) / back.value).toBeCloseTo(0.08, 12);
  });

  it("refuses capacities outside 20-240 Ah instead of clamping, throws on what is no capacity", () => {
    for (const capacity of [19.9, 240.1]) {
      const result = reserveCapacityMinutes({ capacityAmpereHours: capacity, construction: "flooded" });
      expect(result).toMatchObject({ code: "capacity-out-of-range" });
    }
    for (const reserve of [10, 900]) {
      const result = capacityAmpereHours({ reserveCapacityMinutes: reserve, construction: "flooded" });
      expect(result).toMatchObject({ code: "capacity-out-of-range" });
    }
    expect(() => minutes(Number.NaN, "flooded")).toThrow(RangeError);
    expect(() => minutes(0, "flooded")).toThrow(RangeError);
  });

  it("derives on request", () => {
    const derivation: Derivation = [];
    reserveCapacityMinutes({ capacityAmpereHours: 60, construction: "flooded" }, derivation);
    capacityAmpereHours({ reserveCapacityMinutes: 98, construction: "flooded" }, derivation);
    expect(derivation.map((step) => step.unit)).toEqual(["min", "Ah"]);
  });
});

describe("published relations", () => {
  it("all name a source of the bibliography; only the first two carry an uncertainty", () => {
    for (const relation of Object.keys(relationRows) as CapacityRelation[]) {
      expect(bibliography).toHaveProperty(relationProvenance(relation).source);
    }
    expect(Object.values(relationRows).filter((row) => row.length > 5)).toHaveLength(2);
  });

  it("the charge at 25 A is less than the 20 h capacity, for every other relation", () => {
    // RC × 25/60 inverted: the minutes this charge stands for exceed what any C20 of the same number gives.
    for (const relation of Object.keys(relationRows) as CapacityRelation[]) {
      if (relation === "charge-at-25-amperes") continue;
      expect(reserveMinutesByRelation(relation, 60)).toBeLessThan(
        reserveMinutesByRelation("charge-at-25-amperes", 60),
      );
    }
  });
});
