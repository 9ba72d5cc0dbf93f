import { requireFinite } from "../numeric/index.js";

/**
 * Degrees Fahrenheit to degrees Celsius, exact; for tables printed in °F.
 *
 * @param fahrenheit temperature [°F]
 * @returns temperature [°C]
 * @example
 * ```ts
 * import { celsiusFromFahrenheit } from "crankworthy/temperature";
 * celsiusFromFahrenheit(0); // => -17.78
 * ```
 */
export function celsiusFromFahrenheit(fahrenheit: number): number {
  requireFinite("fahrenheit", fahrenheit);
  return (fahrenheit - 32) / 1.8;
}

/**
 * Degrees Celsius to degrees Fahrenheit, exact.
 *
 * @param celsius temperature [°C]
 * @returns temperature [°F]
 * @example
 * ```ts
 * import { fahrenheitFromCelsius } from "crankworthy/temperature";
 * fahrenheitFromCelsius(-18); // => -0.4
 * ```
 */
export function fahrenheitFromCelsius(celsius: number): number {
  requireFinite("celsius", celsius);
  return celsius * 1.8 + 32;
}
