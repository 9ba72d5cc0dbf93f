import {
  type ChargeChemistry,
  type ChargePlan,
  type ChargePlanInput,
  chargeHours,
  chargeProfiles,
  chargeStopCriteria,
  planCharge,
} from "crankworthy/bench";
import { isRefusal } from "crankworthy/numeric";
import { bibliography, type Derivation } from "crankworthy/sources";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const base: ChargePlanInput = {
  chemistry: "flooded",
  temperatureCelsius: 20,
  capacityAmpereHours: { value: 60, standardUncertainty: 3 },
  stateOfCharge: { value: 0.5, standardUncertainty: 0.09 },
};

function plan(change: Partial<ChargePlanInput> = {}): ChargePlan {
  const result = planCharge({ ...base, ...change });
  if (isRefusal(result)) throw new Error(result.reason);
  return result;
}

const kinds = Object.keys(chargeProfiles) as ChargeChemistry[];

describe("planCharge", () => {
  it.each(kinds)("%s: the voltage falls with temperature and never passes the ceiling", (chemistry) => {
    const celsius = fc.double({ min: -17.8, max: 50, noNaN: true });
    fc.assert(
      fc.property(celsius, celsius, (a, b) => {
        const cold = plan({ chemistry, temperatureCelsius: Math.min(a, b) });
        const warm = plan({ chemistry, temperatureCelsius: Math.max(a, b) });
        return cold.endVolts.value >= warm.endVolts.value - 1e-9 && cold.endVolts.value <= cold.ceilingVolts;
      }),
    );
  });

  it("stays within the published bands at 25 °C", () => {
    expect(plan({ chemistry: "agm", temperatureCelsius: 25 }).endVolts.value).toBeCloseTo(14.55, 9);
    expect(plan({ chemistry: "gel", temperatureCelsius: 25 }).endVolts.value).toBeCloseTo(14.25, 9);
    expect(plan({ chemistry: "gel", temperatureCelsius: 0 }).endVolts.value).toBe(14.4);
  });

  it("goes slow on a deeply discharged battery and says when to judge it", () => {
    const deep = plan({ openCircuitVolts: 9.2, pace: "standard" });
    expect(deep.pace).toBe("slow");
    expect(deep.judgeAfterHours).toBe(48);
    expect(deep.currentAmperes.upper).toBeLessThan(plan().currentAmperes.lower);
    expect(plan({ openCircuitVolts: 11.5 }).judgeAfterHours).toBeUndefined();
  });

  it("is held to 50 A and says when the charger is too strong", () => {
    const large = plan({ chemistry: "agm", capacityAmpereHours: { value: 240, standardUncertainty: 5 } });
    expect(large.currentAmperes.upper).toBe(50);
    expect(plan({ chargerAmperes: 30 }).chargerTooStrong).toBe(true);
    expect(plan().chargerTooStrong).toBe(false);
  });

  it("refuses with every obstacle named, and outside the temperatures", () => {
    const result = planCharge({ ...base, obstacles: ["frozen", "swollen"] });
    expect(isRefusal(result) && result.code).toBe("charging-forbidden");
    expect(isRefusal(result) && result.reason).toContain("frozen, swollen");
    const hot = planCharge({ ...base, temperatureCelsius: 55 });
    expect(isRefusal(hot) && hot.code).toBe("temperature-outside-range");
  });

  it("derives every number of the plan, each with the source of its own figure", () => {
    const derivation: Derivation = [];
    const made = planCharge({ ...base, chemistry: "gel", openCircuitVolts: 9 }, derivation);
    if (isRefusal(made)) throw new Error(made.reason);
    const results = derivation.map((step) => step.result);
    for (const value of [
      made.endVolts.value,
      made.currentAmperes.lower,
      made.currentAmperes.upper,
      made.hours!.lower,
      made.hours!.upper,
      made.judgeAfterHours,
    ])
      expect(results).toContain(value);
    const of = (quantity: string) => derivation.find((step) => step.quantity === quantity);
    expect(of("charging current, at most")).toMatchObject({ standing: "our-choice" });
    expect(of("charging hours, at least")).toMatchObject({ source: "charger-manual", standing: "read" });
    expect(of("charging hours, at most")).toMatchObject({ source: "charging-logbook", standing: "read" });
    for (const { source } of derivation) expect(bibliography).toHaveProperty([source]);
  });

  it("tells what was read from what was recalled or chosen, current by current", () => {
    expect(chargeProfiles.agm.standardFrom).toEqual(["trade-charge-current", "from-memory"]);
    expect(chargeProfiles.flooded.standardFrom).toEqual(["trade-charge-current", "from-memory"]);
    expect(chargeProfiles.gel.standardFrom).toEqual(["auto-charging-notes", "read"]);
    for (const { slowFrom } of Object.values(chargeProfiles)) expect(slowFrom[1]).toBe("our-choice");
  });

  it("throws on names and numbers that are none", () => {
    expect(() => plan({ chemistry: "lithium" as "agm" })).toThrow(/chemistry: received lithium/);
    expect(() => plan({ pace: "fast" as "slow" })).toThrow(/pace/);
    expect(() => plan({ capacityAmpereHours: { value: 60, standardUncertainty: Number.NaN } })).toThrow(
      /capacityAmpereHours/,
    );
    expect(() => plan({ stateOfCharge: { value: 0.5, standardUncertainty: -1 } })).toThrow(/stateOfCharge/);
  });

  it("names sources that exist", () => {
    for (const { source } of [...chargeStopCriteria, ...Object.values(chargeProfiles)])
      expect(bibliography).toHaveProperty([source]);
    expect(chargeStopCriteria.find(({ code }) => code === "electrolyte-temperature")).toMatchObject({
      value: 50,
      from: 43,
      to: 60,
    });
  });
});

describe("chargeHours", () => {
  it("shrinks with charge and current, and is nothing when full", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const capacity = { value: 60, standardUncertainty: 3 };
    fc.assert(
      fc.property(share, share, (a, b) => {
        const less = chargeHours(capacity, { value: Math.min(a, b), standardUncertainty: 0.09 }, 5);
        const more = chargeHours(capacity, { value: Math.max(a, b), standardUncertainty: 0.09 }, 5);
        const faster = chargeHours(capacity, { value: Math.min(a, b), standardUncertainty: 0.09 }, 10);
        return (
          less.upper >= more.upper &&
          less.lower >= more.lower &&
          less.lower <= less.upper &&
          Math.abs(2 * faster.upper - less.upper) < 1e-9
        );
      }),
    );
    const full = chargeHours(capacity, { value: 1, standardUncertainty: 0 }, 5);
    expect(full).toEqual({ lower: 0, upper: 0 });
  });
});
