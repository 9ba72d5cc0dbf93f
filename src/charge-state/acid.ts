import { type Estimate, estimate } from "../numeric/estimate.js";
import { pchip } from "../numeric/pchip.js";
import type { Derivation } from "../sources/source.js";
import {
  DENSITY_STANDARD_UNCERTAINTY,
  densityConstants,
  densityMassPercents,
  densityMicroSlopes,
  MOLAR_MASS,
  WATER_DENSITY_25,
} from "./acid.data.js";
import { step } from "./derive.js";
import { type OutsideRange, outside } from "./outside.js";

/**
 * How strong an acid is, with the definition in the name: grams H2SO4 in 100 g acid, density relative to water, both
 * at 25 °C (25/25), or density in g/cm³ at 25 °C. Taking one density for the other costs 20 mV of battery voltage.
 */
export type AcidStrength =
  | { readonly massPercent: number }
  | { readonly relativeDensity25: number }
  | { readonly densityGramsPerCubicCentimetre25: number };

const MAX_MASS_PERCENT = 50;

// The column at 25 °C starts at water, whose density is known, so that nearly exhausted acid has a gravity too.
/** Density at 25 °C in g/cm³ of 0-50 %; NaN outside. @internal */
export const density25 = /* @__PURE__ */ (() =>
  pchip(
    [0, ...densityMassPercents],
    [WATER_DENSITY_25, ...densityConstants.map((c0, i) => c0 + densityMicroSlopes[i]! * 298.15e-6)],
  ))();
const microSlope = /* @__PURE__ */ pchip(densityMassPercents, densityMicroSlopes);

/** Mass % of a density at 25 °C in g/cm³; NaN outside water..50 %. @internal */
export function massPercentOfDensity25(density: number): number {
  const top = density25(MAX_MASS_PERCENT);
  if (!(density >= WATER_DENSITY_25 && density <= top)) return Number.NaN;
  // The column is nearly straight, so the secant rule settles in about five steps.
  let before = 0;
  let errorBefore = WATER_DENSITY_25 - density;
  let now = MAX_MASS_PERCENT;
  let error = top - density;
  for (let i = 0; i < 30 && error !== 0 && error !== errorBefore; i++) {
    const step = (error * (now - before)) / (error - errorBefore);
    before = now;
    errorBefore = error;
    now = Math.min(MAX_MASS_PERCENT, Math.max(0, now - step));
    error = density25(now) - density;
    if (Math.abs(step) < 1e-12) break;
  }
  return now;
}

/** Mass % of any {@link AcidStrength}; NaN outside 0-50 %. @internal */
export function massPercentOf(strength: AcidStrength): number {
  if ("massPercent" in strength) {
    return strength.massPercent >= 0 && strength.massPercent <= MAX_MASS_PERCENT
      ? strength.massPercent
      : Number.NaN;
  }
  return massPercentOfDensity25(
    "relativeDensity25" in strength
      ? strength.relativeDensity25 * WATER_DENSITY_25
      : strength.densityGramsPerCubicCentimetre25,
  );
}

/**
 * Mass % of sulfuric acid from its density at 25 °C.
 *
 * @param strength relative density 25/25 (1.000-1.396) or g/cm³ at 25 °C (0.99705-1.391)
 * @returns mass % (0-50), standard uncertainty about 0.06; or a refusal outside
 *
 * Equation: inverse of the density column at 25 °C, monotone cubic in mass %. Source: sulfate density table of an open aerosol
 * model (`carma-sulfate`, read), from International Critical Tables; water at 0 %.
 * @example
 * ```ts
 * import { massPercent } from "crankworthy/charge-state";
 * massPercent({ relativeDensity25: 1.265 }); // => 35.58
 * massPercent({ densityGramsPerCubicCentimetre25: 1.265 }); // => 36.02
 * ```
 */
export function massPercent(strength: AcidStrength): number | OutsideRange<"acid"> {
  const w = massPercentOf(strength);
  return Number.isNaN(w) ? outside("acid", "0-50 mass %") : w;
}

/**
 * Density of sulfuric acid.
 *
 * @param acid `massPercent` [%] (5-50), `temperatureCelsius` [°C] (0-100)
 * @returns g/cm³, standard uncertainty 0.0005; or a refusal outside either range
 *
 * Equation: density = c0(w) + c1(w)·T, T in kelvin. Source: `carma-sulfate` (read).
 * @example
 * ```ts
 * import { acidDensityGramsPerCubicCentimetre } from "crankworthy/charge-state";
 * const density = acidDensityGramsPerCubicCentimetre({ massPercent: 35, temperatureCelsius: 20 });
 * "value" in density && density.value; // => 1.2599
 * ```
 */
export function acidDensityGramsPerCubicCentimetre(acid: {
  readonly massPercent: number;
  readonly temperatureCelsius: number;
}): Estimate | OutsideRange<"acid" | "temperature"> {
  const { massPercent: w, temperatureCelsius: t } = acid;
  if (!(w >= 5 && w <= MAX_MASS_PERCENT)) return outside("acid", "5-50 mass %");
  if (!(t >= 0 && t <= 100)) return outside("temperature", "0-100 °C");
  return estimate(density25(w) + microSlope(w) * 1e-6 * (t - 25), DENSITY_STANDARD_UNCERTAINTY);
}

/** mol per kg water of a mass %. @internal */
export function molalityOf(massPercent: number): number {
  return massPercent / (MOLAR_MASS * (100 - massPercent));
}

/** Mass % of mol per kg water, inverse of {@link molalityOf}. @internal */
export function massPercentOfMolality(molality: number): number {
  const acid = molality * MOLAR_MASS;
  return (100 * acid) / (1 + acid);
}

/**
 * Molality: mol H2SO4 per kg water, m = w/(M·(1 − w)) with w the mass fraction and M = 0.098079 kg/mol.
 *
 * @param strength as {@link massPercent}
 * @returns mol/kg, or a refusal outside 0-50 mass %
 * @example
 * ```ts
 * import { molalityMolesPerKilogram } from "crankworthy/charge-state";
 * molalityMolesPerKilogram({ massPercent: 30 }); // => 4.370
 * ```
 */
export function molalityMolesPerKilogram(strength: AcidStrength): number | OutsideRange<"acid"> {
  const w = massPercent(strength);
  return typeof w === "number" ? molalityOf(w) : w;
}

/**
 * Molarity at 25 °C: mol H2SO4 per litre of acid, c = density·w/M.
 *
 * @param strength as {@link massPercent}
 * @returns mol/L at 25 °C, or a refusal outside 0-50 mass %
 * @example
 * ```ts
 * import { molarityMolesPerLitre25 } from "crankworthy/charge-state";
 * molarityMolesPerLitre25({ massPercent: 30 }); // => 3.717
 * ```
 */
export function molarityMolesPerLitre25(strength: AcidStrength): number | OutsideRange<"acid"> {
  const w = massPercent(strength);
  return typeof w === "number" ? (density25(w) * w) / (100 * MOLAR_MASS) : w;
}

/**
 * Electrical conductivity of the acid near 25 °C; the source has no temperature term.
 *
 * @param molesPerCubicMetre concentration [mol/m³] (1000-5650)
 * @param derivation a step is pushed here when given
 * @returns S/m with a standard uncertainty of 2 % (our choice), or a refusal outside the range
 *
 * Equation: κ = 1e-4·c·exp(6.23 − 1.34e-4·c − 1.61e-8·c²). Source: Gu, Wang and Liaw 1997 (secondary).
 * @example
 * ```ts
 * import { conductivitySiemensPerMetre } from "crankworthy/charge-state";
 * const kappa = conductivitySiemensPerMetre(4000);
 * "value" in kappa && kappa.value; // => 91.8
 * ```
 */
export function conductivitySiemensPerMetre(
  molesPerCubicMetre: number,
  derivation?: Derivation,
): Estimate | OutsideRange<"acid"> {
  const c = molesPerCubicMetre;
  if (!(c >= 1000 && c <= 5650)) return outside("acid", "1000-5650 mol/m³");
  const kappa = 1e-4 * c * Math.exp(6.23 - 1.34e-4 * c - 1.61e-8 * c * c);
  const formula = "1e-4*c*exp(6.23 - 1.34e-4*c - 1.61e-8*c²)";
  if (derivation)
    step(
      derivation,
      "conductivity of the acid",
      formula,
      { c },
      kappa,
      "S/m",
      0.02 * kappa,
      "gu-wang-liaw-1997",
      "secondary",
    );
  return estimate(kappa, 0.02 * kappa);
}
