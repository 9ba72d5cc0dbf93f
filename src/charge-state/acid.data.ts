/**
 * Density of sulfuric acid, g/cm³ = c0 + c1 × 1e-6 × kelvin, by mass %. Range 5-50 %, 0-100 °C.
 * Source "carma-sulfate", read. Its entry for 0 % is a placeholder, not water, so it is not here.
 */
export const densityMassPercents = [5, 10, 20, 30, 35, 40, 41, 45, 50] as const;
export const densityConstants = [
  1.17171, 1.22164, 1.3219, 1.42185, 1.4705, 1.51767, 1.52731, 1.56584, 1.61834,
] as const;
export const densityMicroSlopes = [
  -479.481, -531.558, -622.448, -693.492, -718.251, -732.869, -735.755, -744.294, -761.493,
] as const;
/** Against "crc-solutions" at 20 °C: mostly within 0.0006, worst 0.0009 at 24 %. Our choice. */
export const DENSITY_STANDARD_UNCERTAINTY = 0.0005;

/** Water at 25 °C, g/cm³: the reference of relative density 25/25. */
export const WATER_DENSITY_25 = 0.99705;

/** kg/mol of H2SO4. */
export const MOLAR_MASS = 0.098079;

/** Freezing-point depression, K, by mass %. Range 0-34 %. Source "crc-solutions", read; 0 % is water. */
export const freezingMassPercents = [0, 5, 8, 10, 12, 16, 18, 20, 22, 24, 28, 30, 32, 34] as const;
export const freezingDepressions = [
  0, 2.05, 3.49, 4.64, 5.93, 9.26, 11.29, 13.64, 16.48, 19.85, 29.65, 36.21, 44.76, 55.28,
] as const;
/** Service manuals differ from this table by 1-3 K, rms 1.3 K. Our choice. */
export const FREEZING_STANDARD_UNCERTAINTY = 1.5;
/**
 * Up to here (relative density 1.300) service manuals print −59 to −71 °C; beyond the eutectic at 36-38 % (from
 * memory) the freezing point rises again, so nothing is said past it.
 */
export const FREEZING_BOUND_MASS_PERCENT = 39.7;
