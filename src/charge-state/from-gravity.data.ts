import type { SourceId } from "../sources/index.js";
import type { Standing } from "../sources/source.js";

/** A hydrometer correction: corrected = reading + perKelvin·(T − referenceCelsius). */
export interface HydrometerCorrection {
  readonly perKelvin: number;
  readonly referenceCelsius: number;
  readonly source: SourceId;
  readonly standing: Standing;
}

function row(perKelvin: number, referenceCelsius: number, source: SourceId): HydrometerCorrection {
  return { perKelvin, referenceCelsius, source, standing: "read" };
}

/**
 * Published hydrometer corrections; they contradict each other, the first is the default. A maker's page with 0.0003
 * per 10 °F is a misprint of 0.003 and left out. Named by reference temperature and change per 10 °F; printed as 0.004
 * per 10 °F, 0.001 per 3 °F, 0.0007 per K and 0.003 per 10 °F. Range 0-160 °F, as the printed tables.
 */
export const hydrometerCorrections = {
  "80F-0.004": /* @__PURE__ */ row(0.00072, 80 / 3, "tm-5-4210-230"),
  "80F-0.0033": /* @__PURE__ */ row(0.0006, 80 / 3, "navedtra-14113"),
  "20C-0.0039": /* @__PURE__ */ row(0.0007, 20, "japanese-tractor-manual"),
  "70F-0.003": /* @__PURE__ */ row(0.00054, 190 / 9, "encyclopedia-americana"),
} as const;

export const COLDEST_HYDROMETER_CELSIUS = -17.8;
export const HOTTEST_HYDROMETER_CELSIUS = 71.2;

/** Standard uncertainty of a hydrometer reading, relative density. Our choice. */
export const READING_UNCERTAINTY = 0.003;
/**
 * The correction is right for charged acid; for empty acid it is 0.0007 per 10 °F too large, computed from
 * "carma-sulfate". Per kelvin.
 */
export const EMPTY_CORRECTION_ERROR_PER_KELVIN = 0.000126;

/**
 * Corrected gravities that can come from battery acid: water less reading error and what the correction for cold acid takes
 * too much off it (a dead cell reads about 1.00), to the end of the EMF model. Our choice.
 */
export const LOWEST_GRAVITY = 0.985;
export const HIGHEST_GRAVITY = 1.35;
