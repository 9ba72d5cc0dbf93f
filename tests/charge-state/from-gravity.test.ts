import {
  acidFills,
  type CellGravities,
  chargeFromGravity,
  correctedGravity,
  hydrometerCorrections,
} from "crankworthy/charge-state";
import { isRefusal } from "crankworthy/numeric";
import { bibliography, type Derivation } from "crankworthy/sources";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const base: CellGravities = {
  cellReadings: [1.25, 1.25, 1.25, 1.25, 1.25, 1.25],
  chemistry: "flooded",
  temperatureCelsius: 80 / 3,
};

function read(change: Partial<CellGravities> = {}, derivation?: Derivation) {
  const reading = chargeFromGravity({ ...base, ...change }, derivation);
  if (isRefusal(reading)) throw new Error(`refused: ${reading.code}`);
  return reading;
}

const cells = fc.array(fc.double({ min: 1.05, max: 1.3, noNaN: true }), { minLength: 1, maxLength: 6 });

describe("charge from gravity", () => {
  it("mean, weakest cell and spread do not depend on the order of the cells", () => {
    fc.assert(
      fc.property(cells, (cellReadings) => {
        const reading = read({ cellReadings });
        const turned = read({ cellReadings: [...cellReadings].reverse() });
        expect(turned.stateOfCharge.value).toBeCloseTo(reading.stateOfCharge.value, 12);
        expect(turned.spread).toBe(reading.spread);
        expect(turned.weakestStateOfCharge).toEqual(reading.weakestStateOfCharge);
        expect(reading.cells[reading.weakestIndex]!.value).toBe(
          Math.min(...reading.cells.map((c) => c.value)),
        );
        expect(reading.weakestStateOfCharge.value).toBeLessThanOrEqual(reading.stateOfCharge.value + 1e-12);
        expect(reading.spread).toBeCloseTo(Math.max(...cellReadings) - Math.min(...cellReadings), 12);
      }),
    );
  });

  it("is linear in gravity between the two ends of the fill, and not clamped past them", () => {
    const charge = (gravity: number) => read({ cellReadings: [gravity] }).stateOfCharge.value;
    const { fullGravity, emptyGravity } = acidFills.temperate;
    expect(charge(fullGravity)).toBeCloseTo(1, 9);
    expect(charge(emptyGravity)).toBeCloseTo(0, 9);
    expect(charge((fullGravity + emptyGravity) / 2)).toBeCloseTo(0.5, 9);
    expect(charge(1.3)).toBeGreaterThan(1.2);
    expect(charge(1.08)).toBeLessThan(-0.2);
    expect(read({ cellReadings: [1.08] }).notes).toContain("below-empty");
  });

  it("cold acid reads high, for every published convention", () => {
    for (const [, correction] of Object.entries(hydrometerCorrections)) {
      expect(Object.keys(bibliography)).toContain(correction.source);
      const cold = Number(correctedGravity({ reading: 1.25, temperatureCelsius: -10, correction }));
      const hot = Number(correctedGravity({ reading: 1.25, temperatureCelsius: 45, correction }));
      expect(cold).toBeLessThan(1.25);
      expect(hot).toBeGreaterThan(1.25);
      expect(
        correctedGravity({ reading: 1.25, temperatureCelsius: correction.referenceCelsius, correction }),
      ).toBe(1.25);
    }
  });

  it("knows empty less well than full, cold less well than warm, an unknown type less well than a known one", () => {
    const uncertainty = (change: Partial<CellGravities>) => read(change).stateOfCharge.standardUncertainty;
    expect(uncertainty({ cellReadings: [1.12] })).toBeGreaterThan(uncertainty({ cellReadings: [1.265] }));
    expect(uncertainty({ cellReadings: [1.12], temperatureCelsius: -10 })).toBeGreaterThan(
      uncertainty({ cellReadings: [1.12 - 0.0264] }) * 0.9,
    );
    expect(uncertainty({ chemistry: "unknown" })).toBeGreaterThan(uncertainty({ chemistry: "efb" }));
    const { temperatureCelsius: _, ...rest } = base;
    const assumed = chargeFromGravity(rest);
    expect(assumed).toMatchObject({ notes: ["temperature-assumed"] });
  });

  it("says when cells are missing", () => {
    expect(read({ cellReadings: [1.25] }).notes).toEqual(["not-all-cells-measured"]);
    expect(read().notes).toEqual([]);
  });

  it("refuses sealed cells, absurd gravities and temperatures beyond the printed tables", () => {
    for (const chemistry of ["agm", "gel"] as const) {
      expect(chargeFromGravity({ ...base, chemistry })).toMatchObject({ code: "no-free-electrolyte" });
    }
    for (const reading of [0.9, 1.4, 1265]) {
      expect(chargeFromGravity({ ...base, cellReadings: [1.25, reading] })).toMatchObject({
        code: "gravity-outside-range",
      });
    }
    for (const temperatureCelsius of [-18, 72]) {
      expect(chargeFromGravity({ ...base, temperatureCelsius })).toMatchObject({
        code: "temperature-outside-range",
      });
    }
  });

  it("keeps a dead cell that the cold correction takes below water", () => {
    const reading = read({ cellReadings: [1.26, 1.26, 1.26, 1.26, 1.26, 1.003], temperatureCelsius: 10 });
    expect(reading.weakestIndex).toBe(5);
    expect(reading.cells[5]!.value).toBeCloseTo(1.003 - 0.00072 * (80 / 3 - 10), 9);
    expect(reading.cells[5]!.value).toBeLessThan(1);
    expect(reading.spread).toBeCloseTo(0.257, 9);
    expect(chargeFromGravity({ ...base, cellReadings: [0.984] })).toMatchObject({
      code: "gravity-outside-range",
    });
  });

  it("throws for an acid that is empty before it is full", () => {
    expect(() => read({ acid: { fullGravity: 1.12, emptyGravity: 1.265 } })).toThrow(/acid.emptyGravity/);
  });

  it("derives every cell, the spread and the weakest cell", () => {
    const steps: Derivation = [];
    const reading = read({ cellReadings: [1.25, 1.2, 1.26] }, steps);
    const results = steps.map((step) => step.result);
    for (const { value } of reading.cells) expect(results).toContain(value);
    expect(results).toContain(reading.spread);
    expect(results).toContain(reading.weakestStateOfCharge.value);
    expect(results).toContain(reading.relativeDensity25);
  });

  it("throws for no, seven or non-finite readings", () => {
    expect(() => chargeFromGravity({ ...base, cellReadings: [] })).toThrow(/received 0/);
    expect(() => chargeFromGravity({ ...base, cellReadings: Array(7).fill(1.2) })).toThrow(RangeError);
    expect(() => chargeFromGravity({ ...base, cellReadings: [Number.NaN] })).toThrow(/received NaN/);
  });

  it("derivation ends at the result and changes nothing", () => {
    const steps: Derivation = [];
    const reading = read({}, steps);
    expect(reading).toEqual(read());
    expect(steps.at(-1)).toMatchObject({ result: reading.stateOfCharge.value });
    for (const step of steps) expect(Object.keys(bibliography)).toContain(step.source);
  });
});
