/**
 * Temperature: cranking ability and demand, cold-start margin, resistance, capacity, and how well a temperature is known.
 *
 * @module
 */

export { capacityProfiles } from "./capacity.data.js";
export { type CapacityProfile, capacityAt25Celsius, capacityPercent } from "./capacity.js";
export { celsiusFromFahrenheit, fahrenheitFromCelsius } from "./celsius.js";
export {
  type CelsiusBound,
  type ColdMorning,
  type ColdStart,
  type ColdStartAssumption,
  type ColdStartInput,
  type ColdStartRefusal,
  chargeSensitivityDefault,
  coldStartMargin,
} from "./cold-start.js";
export { abilityAgainstRating, crankingAbilityTables, crankingDemandTables } from "./cranking.data.js";
export { type AbilityTable, crankingAbilityPercent } from "./cranking-ability.js";
export { crankingDemandPercent, type DemandTable } from "./cranking-demand.js";
export {
  type InfraredSetting,
  infraredReadingCelsius,
  surfaceCelsiusFromInfrared,
  type TemperatureMethod,
  temperatureMethods,
  temperatureUncertaintyKelvin,
} from "./infrared.js";
export { resistanceAt25Celsius, resistanceSlope } from "./resistance.js";
export type { OutsideTable, TemperatureRow, TemperatureTable } from "./table.js";
