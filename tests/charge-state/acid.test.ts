import {
  acidDensityGramsPerCubicCentimetre,
  conductivitySiemensPerMetre,
  massPercent,
  molalityMolesPerKilogram,
  molarityMolesPerLitre25,
} from "crankworthy/charge-state";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const density = (w: number, t: number) => {
  const result = acidDensityGramsPerCubicCentimetre({ massPercent: w, temperatureCelsius: t });
  return "value" in result ? result.value : Number.NaN;
};
const massPercents = fc.double({ min: 5, max: 50, noNaN: true });

describe("acid density", () => {
  it("rises with strength and falls with temperature, everywhere in range", () => {
    fc.assert(
      fc.property(massPercents, fc.double({ min: 0, max: 99, noNaN: true }), (w, t) => {
        expect(density(w, t + 1)).toBeLessThan(density(w, t));
        if (w < 49.9) expect(density(w + 0.1, t)).toBeGreaterThan(density(w, t));
      }),
    );
  });

  it.each([
    [4.9, 25, "acid-outside-range"],
    [50.1, 25, "acid-outside-range"],
    [30, -0.1, "temperature-outside-range"],
    [30, 100.1, "temperature-outside-range"],
    [Number.NaN, 25, "acid-outside-range"],
  ])("refuses %d %% at %d °C", (w, t, code) => {
    expect(acidDensityGramsPerCubicCentimetre({ massPercent: w, temperatureCelsius: t })).toMatchObject({
      refused: true,
      code,
    });
  });
});

describe("mass % from density", () => {
  it("is undone by the density at 25 °C", () => {
    fc.assert(
      fc.property(massPercents, (w) => {
        const back = massPercent({ densityGramsPerCubicCentimetre25: density(w, 25) });
        expect(Math.abs(Number(back) - w)).toBeLessThan(1e-9);
      }),
    );
  });

  it("keeps the two definitions of density apart by the density of water", () => {
    fc.assert(
      fc.property(fc.double({ min: 1.01, max: 1.35, noNaN: true }), (gravity) => {
        const relative = massPercent({ relativeDensity25: gravity });
        const absolute = massPercent({ densityGramsPerCubicCentimetre25: gravity * 0.99705 });
        expect(relative).toBe(absolute);
        expect(Number(massPercent({ densityGramsPerCubicCentimetre25: gravity }))).toBeGreaterThan(
          Number(relative),
        );
      }),
    );
  });

  it("knows water and refuses less than water", () => {
    expect(massPercent({ relativeDensity25: 1 })).toBeCloseTo(0, 9);
    expect(massPercent({ relativeDensity25: 0.9999 })).toMatchObject({ code: "acid-outside-range" });
    expect(massPercent({ relativeDensity25: 1.45 })).toMatchObject({ code: "acid-outside-range" });
    expect(massPercent({ massPercent: Number.NaN })).toMatchObject({ code: "acid-outside-range" });
  });
});

describe("concentrations", () => {
  it("molarity stays below molality times density, because the acid takes room", () => {
    fc.assert(
      fc.property(massPercents, (w) => {
        const molality = Number(molalityMolesPerKilogram({ massPercent: w }));
        const molarity = Number(molarityMolesPerLitre25({ massPercent: w }));
        expect(molarity).toBeLessThan(molality * density(w, 25));
        // Both count the same acid: molarity = molality × kg of water in a litre.
        expect(molarity).toBeCloseTo(molality * density(w, 25) * (1 - w / 100), 9);
      }),
    );
  });

  it("refuse what has no density", () => {
    expect(molalityMolesPerKilogram({ massPercent: 51 })).toMatchObject({ code: "acid-outside-range" });
    expect(molarityMolesPerLitre25({ massPercent: -1 })).toMatchObject({ code: "acid-outside-range" });
  });
});

describe("conductivity", () => {
  it("has one maximum, near 4000 mol/m³, and holds only where it was checked", () => {
    const at = (c: number) => {
      const result = conductivitySiemensPerMetre(c);
      return "value" in result ? result.value : Number.NaN;
    };
    for (let c = 1000; c < 3700; c += 50) expect(at(c + 50)).toBeGreaterThan(at(c));
    for (let c = 4100; c < 5600; c += 50) expect(at(c + 50)).toBeLessThan(at(c));
    for (const c of [999, 5651, Number.NaN]) {
      expect(conductivitySiemensPerMetre(c)).toMatchObject({ code: "acid-outside-range" });
    }
  });
});
