import { requireFinite } from "../numeric/index.js";

const ZERO_CELSIUS_KELVIN = 273.15;

function fourthPower(celsius: number): number {
  return (celsius + ZERO_CELSIUS_KELVIN) ** 4;
}

/** Circumstances of an infrared reading. */
export interface InfraredSetting {
  /** Emissivity of the surface [1] (0 < ε ≤ 1); opaque plastic 0.85 to 0.97, bare metal far below. */
  readonly emissivity: number;
  /** Temperature of what the surface reflects: walls, floor [°C]. */
  readonly surroundingsCelsius: number;
  /** Emissivity set on the instrument [1] (0 < ε ≤ 1), default 0.95. */
  readonly emissivitySetting?: number;
}

function check({ emissivity, surroundingsCelsius, emissivitySetting = 0.95 }: InfraredSetting): number {
  requireFinite("emissivity", emissivity, Number.MIN_VALUE, 1);
  requireFinite("emissivitySetting", emissivitySetting, Number.MIN_VALUE, 1);
  requireFinite("surroundingsCelsius", surroundingsCelsius, -ZERO_CELSIUS_KELVIN);
  return emissivitySetting;
}

/**
 * What an infrared thermometer shows for a surface.
 *
 * In scope: opaque grey surface, uniform surroundings, total radiation. Out of scope: the instrument's own error.
 *
 * @param surfaceCelsius true temperature [°C]
 * @param setting emissivities and surroundings
 * @returns the reading [°C]; throws RangeError where no radiation is left (impossible readings only)
 *
 * Equation: s·Tm⁴ + (1 − s)·Ts⁴ = ε·T⁴ + (1 − ε)·Ts⁴, in kelvin. Source: Stefan-Boltzmann law (computed).
 * @example
 * ```ts
 * import { infraredReadingCelsius } from "crankworthy/temperature";
 * infraredReadingCelsius(-18, { emissivity: 0.85, surroundingsCelsius: 20 }); // => -13.2
 * ```
 */
export function infraredReadingCelsius(surfaceCelsius: number, setting: InfraredSetting): number {
  const set = check(setting);
  requireFinite("surfaceCelsius", surfaceCelsius, -ZERO_CELSIUS_KELVIN);
  return solve(surfaceCelsius, setting.emissivity, set, setting.surroundingsCelsius);
}

/**
 * True surface temperature behind an infrared reading: the inverse of {@link infraredReadingCelsius}.
 *
 * @param readingCelsius what the instrument shows [°C]
 * @param setting emissivities and surroundings
 * @returns surface temperature [°C]
 * @example
 * ```ts
 * import { surfaceCelsiusFromInfrared } from "crankworthy/temperature";
 * surfaceCelsiusFromInfrared(-13.154, { emissivity: 0.85, surroundingsCelsius: 20 }); // => -18.0
 * ```
 */
export function surfaceCelsiusFromInfrared(readingCelsius: number, setting: InfraredSetting): number {
  const set = check(setting);
  requireFinite("readingCelsius", readingCelsius, -ZERO_CELSIUS_KELVIN);
  return solve(readingCelsius, set, setting.emissivity, setting.surroundingsCelsius);
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
 * @param method how it was measured
 * @returns standard uncertainty [K]
 * @example
 * ```ts
 * import { temperatureUncertaintyKelvin } from "crankworthy/temperature";
 * temperatureUncertaintyKelvin("case-infrared"); // => 4
 * ```
 */
export function temperatureUncertaintyKelvin(method: TemperatureMethod): number {
  return UNCERTAINTY_KELVIN[method];
}

const UNCERTAINTY_KELVIN: Readonly<Record<TemperatureMethod, number>> = {
  electrolyte: 1,
  "case-contact": 3,
  "case-infrared": 4,
  ambient: 6,
  unstated: 9,
};
