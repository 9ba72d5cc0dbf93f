import { type Estimate, requireKey, requirePositiveEstimate } from "../numeric/index.js";
import { capacityProfiles } from "./capacity.data.js";
import { covers, type OutsideTable, outsideTable, readTable } from "./table.js";

/** Name of a published relation of capacity to temperature. */
export type CapacityProfile = keyof typeof capacityProfiles;

/**
 * Capacity at a temperature, compared with 25 °C.
 *
 * @param temperatureCelsius of the electrolyte [°C] (0..40; −3.9..51.7 for `stationary-sizing`)
 * @param profile which published relation: by discharge time (`maker-…`), by the linear coefficient of capacity tests
 *   (`coefficient-slow` 0.006/K, `coefficient-fast` 0.01/K, from memory), or the reciprocal of the sizing factor for
 *   stationary batteries (`stationary-sizing`, from memory; built for sizing, so on the safe side)
 * @returns capacity [% of 25 °C], standard uncertainty 0.2 % per kelvin away from 25 °C (our choice); a refusal outside
 *
 * Equation: straight line between the rows. Source: a battery maker's page (read); IEC and EN tests, IEEE 485 (from memory).
 * @example
 * ```ts
 * import { capacityPercent } from "crankworthy/temperature";
 * capacityPercent(0, "maker-over-60-min"); // => { value: 84, standardUncertainty: 5 }
 * ```
 */
export function capacityPercent(
  temperatureCelsius: number,
  profile: CapacityProfile,
): Estimate | OutsideTable {
  requireKey("profile", profile, capacityProfiles);
  const table = capacityProfiles[profile];
  return covers(table, temperatureCelsius)
    ? readTable(table, temperatureCelsius)
    : outsideTable(table, temperatureCelsius);
}

/**
 * Capacity measured at one temperature, referred to 25 °C.
 *
 * @param capacityAmpereHours measured [Ah] (> 0)
 * @param temperatureCelsius of the electrolyte during the test [°C]
 * @param profile as for {@link capacityPercent}
 * @returns capacity at 25 °C [Ah], or a refusal outside the profile
 *
 * Equation: C25 = C / (percent / 100); for the coefficients C25 = C / (1 + λ·(T − 25)).
 * @example
 * ```ts
 * import { capacityAt25Celsius } from "crankworthy/temperature";
 * const referred = capacityAt25Celsius({ value: 54, standardUncertainty: 0 }, 15, "coefficient-fast");
 * "value" in referred && referred.value; // => 60.0
 * ```
 */
export function capacityAt25Celsius(
  capacityAmpereHours: Estimate,
  temperatureCelsius: number,
  profile: CapacityProfile,
): Estimate | OutsideTable {
  requirePositiveEstimate("capacityAmpereHours", capacityAmpereHours);
  const percent = capacityPercent(temperatureCelsius, profile);
  if ("refused" in percent) return percent;
  const factor = percent.value / 100;
  const value = capacityAmpereHours.value / factor;
  return {
    value,
    standardUncertainty: Math.hypot(
      capacityAmpereHours.standardUncertainty / factor,
      (value * percent.standardUncertainty) / percent.value,
    ),
  };
}
