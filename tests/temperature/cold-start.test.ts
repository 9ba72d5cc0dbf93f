import { type Estimate, isRefusal } from "crankworthy/numeric";
import type { Derivation } from "crankworthy/sources";
import { type ColdStart, type ColdStartInput, coldStartMargin } from "crankworthy/temperature";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const estimate = (value: number, standardUncertainty: number): Estimate => ({ value, standardUncertainty });

const base: ColdStartInput = {
  abilityAmperes: estimate(500, 25),
  stateOfCharge: estimate(1, 0.09),
  demandAmperes: estimate(180, 15),
  demandReferenceCelsius: 20,
};

function run(change: Partial<ColdStartInput> = {}): ColdStart {
  const result = coldStartMargin({ ...base, ...change });
  if (isRefusal(result)) throw new Error(result.reason);
  return result;
}

/** A number that orders lowest starts; bounds go to the ends. */
function rank({ lowestStartCelsius: lowest }: ColdStart): number {
  return "value" in lowest ? lowest.value : lowest.bound === "above" ? 1000 : -1000;
}

function morning(change: Partial<ColdStartInput>) {
  const at = run(change).atColdestMorning;
  if (!at || isRefusal(at)) throw new Error("no morning");
  return at;
}

describe("coldStartMargin", () => {
  it("agrees with a calculation by hand", () => {
    // Demand at 20 °C: 100 + 60·(6.7/26.7) = 115.06 %; at −18 °C 230 %.
    const at = morning({ coldestMorningCelsius: -18 });
    expect(at.demandAmperes.value).toBeCloseTo((180 * 230) / (100 + (60 * 6.7) / 26.7), 9);
    expect(at.abilityAmperes.value).toBeCloseTo(500, 9);
    expect(at.marginAmperes.value).toBeCloseTo(at.abilityAmperes.value - at.demandAmperes.value, 12);
  });

  it("at −18 °C carries no uncertainty of the ability table", () => {
    const at = morning({ coldestMorningCelsius: -18, stateOfCharge: estimate(1, 0) });
    expect(at.abilityAmperes.standardUncertainty).toBeCloseTo(25, 9);
    const colder = morning({ coldestMorningCelsius: -25, stateOfCharge: estimate(1, 0) });
    const relative = colder.abilityAmperes.standardUncertainty / colder.abilityAmperes.value;
    expect(relative).toBeGreaterThan(0.06);
  });

  it("puts the margin at the lowest start to zero", () => {
    const lowest = run().lowestStartCelsius;
    if (!("value" in lowest)) throw new Error("bound");
    expect(Math.abs(morning({ coldestMorningCelsius: lowest.value }).marginAmperes.value)).toBeLessThan(1e-6);
    expect(morning({ coldestMorningCelsius: lowest.value }).startProbability).toBeCloseTo(0.5, 6);
  });

  it("puts 2.5 and 97.5 % at the ends of the interval, which holds the value", () => {
    const start = run({ abilityAmperes: estimate(380, 20) });
    const { lower, upper } = start.intervalCelsius;
    expect(lower).toBeLessThan(rank(start));
    expect(upper).toBeGreaterThan(rank(start));
    const change = { abilityAmperes: estimate(380, 20) };
    expect(morning({ ...change, coldestMorningCelsius: upper! }).startProbability).toBeCloseTo(0.975, 4);
    expect(morning({ ...change, coldestMorningCelsius: lower! }).startProbability).toBeCloseTo(0.025, 4);
  });

  it("is monotone in health, charge and demand", () => {
    const amperes = fc.double({ min: 60, max: 1200, noNaN: true });
    const charge = fc.double({ min: 0.3, max: 1.2, noNaN: true });
    fc.assert(
      fc.property(amperes, amperes, charge, charge, (a1, a2, c1, c2) => {
        const worse = run({
          abilityAmperes: estimate(Math.min(a1, a2), 20),
          stateOfCharge: estimate(Math.min(c1, c2), 0.09),
        });
        const better = run({
          abilityAmperes: estimate(Math.max(a1, a2), 20),
          stateOfCharge: estimate(Math.max(c1, c2), 0.09),
        });
        const heavier = run({
          abilityAmperes: estimate(Math.min(a1, a2), 20),
          stateOfCharge: estimate(Math.min(c1, c2), 0.09),
          demandAmperes: estimate(220, 15),
        });
        return rank(better) <= rank(worse) + 1e-9 && rank(heavier) >= rank(worse) - 1e-9;
      }),
    );
  });

  it("starts more surely on a warmer morning", () => {
    const celsius = fc.double({ min: -28.9, max: 26.7, noNaN: true });
    fc.assert(
      fc.property(celsius, celsius, (a, b) => {
        const cold = morning({ coldestMorningCelsius: Math.min(a, b) });
        const warm = morning({ coldestMorningCelsius: Math.max(a, b) });
        return cold.marginAmperes.value <= warm.marginAmperes.value + 1e-6;
      }),
    );
  });

  it("gives bounds, not numbers, beyond the tables", () => {
    expect(run({ abilityAmperes: estimate(1500, 50) }).lowestStartCelsius).toEqual({
      bound: "at-or-below",
      celsius: -28.9,
    });
    const hopeless = run({ abilityAmperes: estimate(60, 5) });
    expect(hopeless.lowestStartCelsius).toEqual({ bound: "above", celsius: 26.7 });
    expect(run({ abilityAmperes: estimate(1500, 50) }).intervalCelsius).toEqual({});
  });

  it("costs ability to hold a higher voltage", () => {
    expect(rank(run({ neededVolts: 8.5 }))).toBeGreaterThan(rank(run()));
    expect(run({ neededVolts: 8.5 }).assumptions).not.toContain("voltage-of-rating");
    expect(run().assumptions).toContain("voltage-of-rating");
  });

  it("says what it assumed about charge", () => {
    const { stateOfCharge: _, ...unknownCharge } = base;
    const result = coldStartMargin(unknownCharge);
    expect(!isRefusal(result) && result.assumptions).toContain("charged");
    expect(run().assumptions).toContain("charge-dependence-illustrative");
  });

  it("refuses what it cannot say", () => {
    const code = (change: Partial<ColdStartInput>) => {
      const result = coldStartMargin({ ...base, ...change });
      return isRefusal(result) ? result.code : "none";
    };
    expect(code({ stateOfCharge: estimate(0.2, 0.09) })).toBe("charge-outside-range");
    expect(code({ demandReferenceCelsius: 90 })).toBe("temperature-outside-table");
    const warmOnly = {
      id: "warm",
      rows: [
        [0, 90, 1],
        [20, 100, 1],
      ],
      source: "mine",
      standing: "our-choice",
    } as const;
    expect(code({ abilityTable: warmOnly })).toBe("temperature-outside-table");
    const at = run({ coldestMorningCelsius: -40 }).atColdestMorning;
    expect(at && isRefusal(at) && at.code).toBe("temperature-outside-table");
  });

  it("throws on what a developer got wrong", () => {
    expect(() => run({ abilityAmperes: estimate(Number.NaN, 1) })).toThrow(/abilityAmperes/);
    expect(() => run({ demandAmperes: estimate(0, 1) })).toThrow(/demandAmperes/);
    expect(() => run({ neededVolts: 5 })).toThrow(/neededVolts/);
    expect(() => run({ abilityAmperes: estimate(500, Number.NaN) })).toThrow(/abilityAmperes/);
    expect(() => run({ stateOfCharge: estimate(1, -0.1) })).toThrow(/stateOfCharge/);
    expect(() => run({ chargeSensitivity: estimate(2, 0) })).toThrow(/chargeSensitivity/);
    const turned = {
      id: "turned",
      rows: [
        [20, 100, 1],
        [-30, 40, 1],
      ],
      source: "mine",
      standing: "our-choice",
    } as const;
    expect(() => run({ abilityTable: turned })).toThrow(/table turned/);
  });

  it("writes a derivation whose result is the value returned", () => {
    const derivation: Derivation = [];
    const result = coldStartMargin(base, derivation);
    const step = derivation.find((one) => one.quantity === "lowest temperature of a start");
    expect(
      !isRefusal(result) && "value" in result.lowestStartCelsius && result.lowestStartCelsius.value,
    ).toBe(step?.result);
  });

  it("derives every number: charge factor, interval, and the morning with its probability", () => {
    const derivation: Derivation = [];
    const start = coldStartMargin({ ...base, neededVolts: 8, coldestMorningCelsius: -20 }, derivation);
    if (isRefusal(start) || !start.atColdestMorning || isRefusal(start.atColdestMorning))
      throw new Error("refused");
    const { abilityAmperes, demandAmperes, marginAmperes, startProbability } = start.atColdestMorning;
    const results = derivation.map((step) => step.result);
    for (const value of [
      ...Object.values(start.intervalCelsius),
      abilityAmperes.value,
      demandAmperes.value,
      marginAmperes.value,
      startProbability,
    ])
      expect(results).toContain(value);
    const of = (quantity: string) => derivation.find((step) => step.quantity === quantity);
    expect(of("charge factor")).toMatchObject({ result: 1, standardUncertainty: 0.65 * 0.09 });
    expect(of("probability of a start on the coldest morning")).toMatchObject({
      formula: "Φ(margin / u)",
      source: "jcgm-106",
    });
    // A reader can redo the ability from the printed inputs.
    const at18 = of("cranking ability at −18 °C")!.result as number;
    const ratio = of("cranking ability on the coldest morning")!.inputs.ratio as number;
    expect(at18 * ratio).toBeCloseTo(abilityAmperes.value, 9);
  });
});
