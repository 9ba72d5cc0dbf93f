import { requireFinite, requireKey } from "../numeric/index.js";
import { derive } from "../sources/derive.js";
import type { Derivation, SourceId, Standing } from "../sources/index.js";

const ZERO_CELSIUS_KELVIN = 273.15;

function fourthPower(celsius: number): number {
  return (celsius + ZERO_CELSIUS_KELVIN) ** 4;
}

/** What instruments are set to for opaque plastic [1]; a second appendix prints 0.85 to 0.95. */
const DEFAULT_EMISSIVITY = { value: 0.95, source: "pyrometer-manual", standing: "read" } as const satisfies {
  value: number;
  source: SourceId;
  standing: Standing;
};
const BALANCE = { source: "grey-body-balance", standing: "computed" } as const;
/** Hottest surface that is computed [°C]: far above any battery. */
const HOTTEST = 1000;
/** Smallest emissivity that is computed [1]: polished metal. */
const LOWEST_EMISSIVITY = 0.01;

/** Circumstances of an infrared reading. */
export interface InfraredSetting {
  /** Emissivity of the surface [1] (0.01..1); opaque plastic 0.85 to 0.97, bare metal far below. */
  readonly emissivity: number;
  /** Temperature of what the surface reflects: walls, floor [°C]. */
  readonly surroundingsCelsius: number;
  /** Emissivity set on the instrument [1] (0.01..1), default 0.95. */
  readonly emissivitySetting?: number;
}

function check({
  emissivity,
  surroundingsCelsius,
  emissivitySetting = DEFAULT_EMISSIVITY.value,
}: InfraredSetting): number {
  requireFinite("emissivity", emissivity, LOWEST_EMISSIVITY, 1);
  requireFinite("emissivitySetting", emissivitySetting, LOWEST_EMISSIVITY, 1);
  requireFinite("surroundingsCelsius", surroundingsCelsius, -ZERO_CELSIUS_KELVIN, HOTTEST);
  return emissivitySetting;
}

/**
 * What an infrared thermometer shows for a surface.
 *
 * In scope: opaque grey surface, uniform surroundings, total radiation. Out of scope: the instrument's own error.
 *
 * @param surfaceCelsius true temperature [°C]
 * @param setting emissivities and surroundings
 * @param derivation receives the step when given
 * @returns the reading [°C]; throws RangeError where no radiation is left (impossible readings only)
 *
 * Equation: s·Tm⁴ + (1 − s)·Ts⁴ = ε·T⁴ + (1 − ε)·Ts⁴, in kelvin. Source: Stefan-Boltzmann law (computed).
 * @example
 * ```ts
 * import { infraredReadingCelsius } from "crankworthy/temperature";
 * infraredReadingCelsius(-18, { emissivity: 0.85, surroundingsCelsius: 20 }); // => -13.2
 * ```
 */
export function infraredReadingCelsius(
  surfaceCelsius: number,
  setting: InfraredSetting,
  derivation?: Derivation,
): number {
  const set = check(setting);
  requireFinite("surfaceCelsius", surfaceCelsius, -ZERO_CELSIUS_KELVIN, HOTTEST);
  const { emissivity, surroundingsCelsius: surroundings } = setting;
  const reading = solve(surfaceCelsius, emissivity, set, surroundings);
  const inputs = { surface: surfaceCelsius, emissivity, set, surroundings };
  const formula =
    "set·reading⁴ + (1 − set)·surroundings⁴ = emissivity·surface⁴ + (1 − emissivity)·surroundings⁴ in K";
  derive(derivation, "infrared reading", formula, inputs, reading, "°C", BALANCE);
  return reading;
}

/**
 * True surface temperature behind an infrared reading: the inverse of {@link infraredReadingCelsius}.
 *
 * @param readingCelsius what the instrument shows [°C]
 * @param setting emissivities and surroundings
 * @param derivation receives the step when given
 * @returns surface temperature [°C]
 * @example
 * ```ts
 * import { surfaceCelsiusFromInfrared } from "crankworthy/temperature";
 * surfaceCelsiusFromInfrared(-13.154, { emissivity: 0.85, surroundingsCelsius: 20 }); // => -18.0
 * ```
 */
export function surfaceCelsiusFromInfrared(
  readingCelsius: number,
  setting: InfraredSetting,
  derivation?: Derivation,
): number {
  const set = check(setting);
  requireFinite("readingCelsius", readingCelsius, -ZERO_CELSIUS_KELVIN, HOTTEST);
  const { emissivity, surroundingsCelsius: surroundings } = setting;
  const surface = solve(readingCelsius, set, emissivity, surroundings);
  const inputs = { reading: readingCelsius, emissivity, set, surroundings };
  const formula =
    "emissivity·surface⁴ + (1 − emissivity)·surroundings⁴ = set·reading⁴ + (1 − set)·surroundings⁴ in K";
  derive(derivation, "surface temperature", formula, inputs, surface, "°C", BALANCE);
  return surface;
}

// Moves a temperature from one emissivity to another through the same radiation.
function solve(celsius: number, from: number, to: number, surroundingsCelsius: number): number {
  const surroundings = fourthPower(surroundingsCelsius);
  const radiation = surroundings + (from * (fourthPower(celsius) - surroundings)) / to;
  requireFinite("radiation left after reflection", radiation, 0);
  return radiation ** 0.25 - ZERO_CELSIUS_KELVIN;
}

/** How the temperature of a battery was obtained. */
export type TemperatureMethod = "electrolyte" | "case-contact" | "case-infrared" | "ambient" | "unstated";

/**
 * Standard uncertainty of the electrolyte temperature by the way it was obtained.
 *
 * Our choice throughout: `electrolyte` 1 K, thermometer and layering; `case-contact` 3 K, wall against core;
 * `case-infrared` 4 K, the same with instrument (±2 K) and emissivity (0.85 to 0.97: up to 5 K in the cold);
 * `ambient` 6 K, a battery lags the air by hours (±10 K, rectangular); `unstated` 9 K (±15 K, rectangular).
 *
 * @param method how it was measured; RangeError for another name
 * @returns standard uncertainty [K]
 * @example
 * ```ts
 * import { temperatureUncertaintyKelvin } from "crankworthy/temperature";
 * temperatureUncertaintyKelvin("case-infrared"); // => 4
 * ```
 */
export function temperatureUncertaintyKelvin(method: TemperatureMethod): number {
  requireKey("method", method, temperatureMethods);
  return temperatureMethods[method].standardUncertaintyKelvin;
}

/** Standard uncertainty [K] by method, and the source the choice leans on. */
export const temperatureMethods: Readonly<
  Record<
    TemperatureMethod,
    { readonly standardUncertaintyKelvin: number; readonly source: SourceId; readonly standing: Standing }
  >
> = {
  electrolyte: { standardUncertaintyKelvin: 1, source: "temperature-choice", standing: "our-choice" },
  "case-contact": { standardUncertaintyKelvin: 3, source: "temperature-choice", standing: "our-choice" },
  "case-infrared": { standardUncertaintyKelvin: 4, source: "pyrometer-data-sheets", standing: "our-choice" },
  ambient: { standardUncertaintyKelvin: 6, source: "temperature-choice", standing: "our-choice" },
  unstated: { standardUncertaintyKelvin: 9, source: "temperature-choice", standing: "our-choice" },
};
