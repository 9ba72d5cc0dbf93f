import {
  type CapacityRelation,
  capacityAmpereHours,
  compareToRating,
  convertRating,
  enGridStepAmperes,
  peukertExponent,
  peukertExponentFromTests,
  peukertHours,
  type RatingStandard,
  ratingStandards,
  relationProvenance,
  reserveCapacityMinutes,
  reserveMinutesByRelation,
} from "crankworthy/ratings";
import fc from "fast-check";
import { describe, it } from "vitest";
import { around, either, estimateAround, given, maybe, neverNaN } from "../fuzz/strange-numbers.js";

const standards = either(...(Object.keys(ratingStandards) as RatingStandard[]));
const constructions = either("flooded", "valve-regulated");
const relations = either<CapacityRelation>("flooded", "half-plus-16", "times-1.63");
const amperes = estimateAround(100, 1000);

describe("ratings give no NaN, whatever they are given", () => {
  it("convertRating, and back", () => {
    const input = fc.record({
      amperes,
      from: standards,
      to: standards,
      fromLabelGrid: maybe(fc.boolean()),
      hcaRatio: maybe(estimateAround(1, 3)),
    });
    neverNaN(input, (one) => {
      const there = convertRating(given(one));
      return "value" in there
        ? [there, convertRating({ amperes: there, from: one.to, to: one.from })]
        : there;
    });
  });

  it("compareToRating, grid", () => {
    const input = fc.record({
      measured: fc.record({ amperes, standard: standards }),
      label: fc.record({ amperes: around(100, 1000), standard: standards }),
    });
    neverNaN(input, (one) => compareToRating(one));
    neverNaN(around(0, 1500), enGridStepAmperes);
  });

  it("capacity and reserve capacity", () => {
    neverNaN(fc.record({ capacityAmpereHours: around(10, 250), construction: constructions }), (one) =>
      reserveCapacityMinutes(one),
    );
    neverNaN(fc.record({ reserveCapacityMinutes: around(10, 600), construction: constructions }), (one) =>
      capacityAmpereHours(one),
    );
    neverNaN(fc.tuple(relations, around(10, 250)), ([relation, capacity]) => [
      reserveMinutesByRelation(relation, capacity),
      relationProvenance(relation),
    ]);
  });

  it("Peukert's law", () => {
    const discharge = fc.record({
      capacityAmpereHours: around(20, 240),
      rateHours: around(1, 100),
      exponent: fc.oneof(around(1, 1.6), estimateAround(1, 1.6)),
      amperes: around(0.1, 100),
    });
    neverNaN(discharge, peukertHours);
    const test = fc.record({ amperes: around(1, 100), hours: around(0.1, 100) });
    neverNaN(fc.tuple(test, test), ([first, second]) => peukertExponentFromTests(first, second));
    neverNaN(either("agm", "gel", "flooded"), (kind) => peukertExponent(kind));
  });
});
