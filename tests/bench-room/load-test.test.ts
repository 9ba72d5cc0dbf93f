import { judgeLoadTest, type LoadTestInput, type LoadTestOutcome } from "crankworthy/bench";
import { isRefusal } from "crankworthy/numeric";
import type { Derivation } from "crankworthy/sources";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const base: LoadTestInput = {
  volts: 9.8,
  voltsStandardUncertainty: 0.02,
  loadAmperes: 260,
  seconds: 15,
  temperatureCelsius: { value: 22, standardUncertainty: 1 },
  stateOfCharge: { value: 0.95, standardUncertainty: 0.09 },
  ratedCrankingAmperes: 520,
};

function judge(
  change: Partial<LoadTestInput> = {},
  without: readonly (keyof LoadTestInput)[] = [],
): LoadTestOutcome {
  const input = { ...base, ...change };
  for (const key of without) delete (input as Partial<Record<keyof LoadTestInput, unknown>>)[key];
  const result = judgeLoadTest(input);
  if (isRefusal(result)) throw new Error(result.reason);
  return result;
}

describe("judgeLoadTest", () => {
  it("is valid in standard conditions, whatever comes out", () => {
    for (const volts of [9.8, 8]) {
      expect(judge({ volts })).toMatchObject({
        valid: true,
        passStands: true,
        failStands: true,
        invalidReasons: [],
      });
    }
  });

  it("gives half at the limit and rises with the voltage", () => {
    expect(judge({ volts: 9.6 }).passProbability).toBeCloseTo(0.5, 6);
    const volts = fc.double({ min: 0, max: 14, noNaN: true });
    fc.assert(
      fc.property(volts, volts, (a, b) => {
        const [low, high] = [judge({ volts: Math.min(a, b) }), judge({ volts: Math.max(a, b) })];
        return low.passProbability <= high.passProbability && low.marginVolts.value <= high.marginVolts.value;
      }),
    );
  });

  it("is less sure of the same margin in the cold", () => {
    const warm = judge({ volts: 9.8, temperatureCelsius: { value: 35, standardUncertainty: 1 } });
    const cold = judge({ volts: 8.7, temperatureCelsius: { value: -17.7778, standardUncertainty: 1 } });
    expect(warm.marginVolts.value).toBeCloseTo(cold.marginVolts.value, 3);
    expect(cold.passProbability).toBeLessThan(warm.passProbability - 0.1);
  });

  it("low charge spares a pass and voids a failure", () => {
    const low = judge({ stateOfCharge: { value: 0.5, standardUncertainty: 0.09 } });
    expect(low).toMatchObject({ valid: false, passStands: true, failStands: false });
    expect(low.invalidReasons).toEqual(["charge-below-75-percent"]);
    expect(low.chargeSufficientProbability).toBeLessThan(0.01);
  });

  it("notes charge that is only probably enough", () => {
    expect(judge({ stateOfCharge: { value: 0.8, standardUncertainty: 0.09 } })).toMatchObject({
      valid: true,
      notes: ["charge-uncertain"],
    });
    expect(judge({}, ["stateOfCharge"]).invalidReasons).toEqual(["charge-unknown"]);
  });

  it("too short or too light spares a failure and voids a pass", () => {
    expect(judge({ seconds: 10 })).toMatchObject({
      invalidReasons: ["duration-too-short"],
      passStands: false,
      failStands: true,
    });
    expect(judge({ loadAmperes: 200 })).toMatchObject({
      invalidReasons: ["load-too-low"],
      passStands: false,
      failStands: true,
    });
  });

  it("too long or too heavy does the reverse; both kinds together leave nothing", () => {
    expect(judge({ seconds: 30 })).toMatchObject({ passStands: true, failStands: false });
    expect(judge({ loadAmperes: 300 })).toMatchObject({ passStands: true, failStands: false });
    expect(judge({ loadAmperes: 200, seconds: 30 })).toMatchObject({ passStands: false, failStands: false });
  });

  it("notes a load that follows the other rule, and judges by capacity when no rating is known", () => {
    const other = judge({ loadAmperes: 195, capacityAmpereHours: 65 });
    expect(other.invalidReasons).toEqual(["load-too-low"]);
    expect(other.notes).toEqual(["load-fits-three-times-capacity"]);
    const byCapacity = judge({ loadAmperes: 195, capacityAmpereHours: 65 }, ["ratedCrankingAmperes"]);
    expect(byCapacity).toMatchObject({ valid: true, rule: "three-times-capacity" });
    const neither = judge({}, ["ratedCrankingAmperes"]);
    expect(neither).toMatchObject({
      invalidReasons: ["load-basis-unknown"],
      passStands: false,
      failStands: false,
    });
    expect(judge({ loadAmperes: 260 * 1.07 }).notes).toEqual(["load-off-nominal"]);
  });

  it("without temperature uses the highest limit, where only a pass counts", () => {
    const unknown = judge({}, ["temperatureCelsius"]);
    expect(unknown.limitVolts.value).toBeCloseTo(9.6, 9);
    expect(unknown).toMatchObject({ passStands: true, failStands: false, notes: ["strictest-limit"] });
  });

  it("refuses below the table", () => {
    const result = judgeLoadTest({ ...base, temperatureCelsius: { value: -25, standardUncertainty: 1 } });
    expect(isRefusal(result) && result.code).toBe("temperature-outside-table");
  });

  it("halves for 6 V by its own column", () => {
    expect(judge({ nominalVolts: 6, volts: 4.9 }).marginVolts.value).toBeCloseTo(0.1, 9);
  });

  it("derives every number of its outcome", () => {
    const derivation: Derivation = [];
    const outcome = judgeLoadTest(base, derivation);
    if (isRefusal(outcome)) throw new Error(outcome.reason);
    const results = derivation.map((step) => step.result);
    expect(results).toContain(outcome.limitVolts.value);
    expect(results).toContain(outcome.marginVolts.value);
    expect(results).toContain(outcome.passProbability);
    expect(results).toContain(outcome.chargeSufficientProbability);
    const byNormalModel = derivation.filter((step) => step.formula === "Φ(margin / u)");
    expect(byNormalModel.map((step) => step.source)).toEqual(["jcgm-106", "jcgm-106"]);
  });

  it("a pass minutes after a charge proves nothing, a failure does", () => {
    expect(judge({ hoursSinceCharge: 0.2 })).toMatchObject({
      valid: false,
      invalidReasons: ["just-charged"],
      passStands: false,
      failStands: true,
    });
    for (const spared of [
      judge({ hoursSinceCharge: 1 }),
      judge({ hoursSinceCharge: 0.2, surfaceChargeRemoved: true }),
      judge(),
    ])
      expect(spared.invalidReasons).toEqual([]);
    expect(() => judge({ hoursSinceCharge: -1 })).toThrow(/hoursSinceCharge/);
  });

  it("throws on NaN, naming the argument", () => {
    expect(() => judge({ volts: Number.NaN })).toThrow(/volts/);
    expect(() => judge({ seconds: -1 })).toThrow(/seconds/);
  });
});
