import type { SourceId } from "../sources/index.js";
import type { Standing } from "../sources/source.js";

/** Gravity of the acid of a fully charged and of an empty battery, relative density 25/25. */
export interface Acid {
  readonly fullGravity: number;
  readonly emptyGravity: number;
}

/** An {@link Acid} with where it comes from. */
export interface AcidFill extends Acid {
  readonly source: SourceId;
  readonly standing: Standing;
}

function fill(fullGravity: number, emptyGravity: number, source: SourceId, standing: Standing): AcidFill {
  return { fullGravity, emptyGravity, source, standing };
}

/**
 * Acid fills by name. Sources contradict each other on the span (0.120-0.200), so each keeps its own row.
 *
 * - `temperate`: 1.265 → 1.120, TM 5-4210-230-14&P-1 Table 2
 * - `calcium`: 1.280 → 1.130, TM 5-1185 Table II; the usual fill of calcium and enhanced flooded batteries
 * - `tropical`: the tractor manual's 1.225 with the span of `temperate` (the manual's own empty value is 1.045)
 * - `frigid`: 1.280 → 1.080, tractor manual, discharge to exhaustion at a very low rate
 * - `jis`: 1.280 of JIS D 5301 with the 0.150 span of the Japanese manual
 * - `japanese-manual`: 1.260 → 1.110
 * - `valve-regulated`: gravity that a free acid of the same voltage would have; chosen to meet a maker's AGM table
 *   within 45 mV and its gel table within 75 mV
 */
export const acidFills = {
  temperate: /* @__PURE__ */ fill(1.265, 1.12, "tm-5-4210-230", "read"),
  calcium: /* @__PURE__ */ fill(1.28, 1.13, "tm-5-1185", "read"),
  tropical: /* @__PURE__ */ fill(1.225, 1.08, "tractor-manual", "our-choice"),
  frigid: /* @__PURE__ */ fill(1.28, 1.08, "tractor-manual", "read"),
  jis: /* @__PURE__ */ fill(1.28, 1.13, "jis-d-5301", "from-memory"),
  "japanese-manual": /* @__PURE__ */ fill(1.26, 1.11, "japanese-tractor-manual", "read"),
  "valve-regulated": /* @__PURE__ */ fill(1.3, 1.1, "battery-maker-lexicon", "our-choice"),
} as const;

/** Standard uncertainty of the two gravities of a fill. Our choice; half as much again when the type is unknown. */
export const FULL_GRAVITY_UNCERTAINTY = 0.01;
export const EMPTY_GRAVITY_UNCERTAINTY = 0.02;
export const UNKNOWN_TYPE_FACTOR = 1.5;

/**
 * Standard uncertainty of a state of charge from the best rest voltage: what differs between batteries of one type.
 * Our choice: six measured modules at 12.0-12.6 V scatter by 0.06-0.10 about their own mean. Of valve-regulated
 * batteries, and where the type is unknown, the scatter about our curve counts: 0.13 rms in the same modules.
 */
export const CURVE_UNCERTAINTY = 0.09;
export const CURVE_UNCERTAINTY_WIDE = 0.13;

/**
 * Temperature coefficient of a battery's open-circuit voltage, V/K. "harned-hamer-1935" gives 1.2-1.3 mV/K over the
 * working range, a published temperature-resolved table about four times that in the cold: hence the uncertainties,
 * V per K from 25 °C and V per K below 0 °C. Our choice.
 */
export const VOLTS_PER_KELVIN = 0.0012;
export const VOLTS_PER_KELVIN_UNCERTAINTY = 0.0005;
export const COLD_VOLTS_PER_KELVIN_UNCERTAINTY = 0.0023;
/** Hottest electrolyte for which anything is claimed, °C; the cold end is the freezing point. Our choice. */
export const HOTTEST_CELSIUS = 60;
/** End of the freezing-point table, °C: colder, not even charged acid can be said to be liquid. */
export const COLDEST_CELSIUS = -55;

/** Twice the standard uncertainty of the full gravity, in volts: above full charge by more is no settled voltage. */
export const FULL_CHARGE_MARGIN_VOLTS = 0.12;

/** An electrolyte temperature that was not measured is taken as 25 ± 10 °C, rectangular. Our choice. */
export const ASSUMED_CELSIUS = 25;
export const ASSUMED_TEMPERATURE_UNCERTAINTY = 5.7735;
