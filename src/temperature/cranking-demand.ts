import type { Estimate } from "../numeric/index.js";
import { crankingDemandTables } from "./cranking.data.js";
import { covers, type OutsideTable, outsideTable, readTable, type TemperatureTable } from "./table.js";

/** Cranking demand of an engine against temperature, in % of the demand at the table's own 100 % temperature. */
export type DemandTable = TemperatureTable;

/**
 * What an engine asks for at a temperature, compared with a warm start.
 *
 * @param temperatureCelsius of engine and oil [°C] (−28.9..26.7 for the default table)
 * @param table default `between`, the middle of the published tables
 * @returns demand [% of 80 °F], or a refusal outside the table
 *
 * Equation: straight line between the rows. Source: see {@link crankingDemandTables}; the default is our choice.
 * @example
 * ```ts
 * import { crankingDemandPercent, crankingDemandTables } from "crankworthy/temperature";
 * crankingDemandPercent(-18, crankingDemandTables["workshop-article"]); // => { value: 210, standardUncertainty: 20 }
 * ```
 */
export function crankingDemandPercent(
  temperatureCelsius: number,
  table: DemandTable = crankingDemandTables.between,
): Estimate | OutsideTable {
  return covers(table, temperatureCelsius)
    ? readTable(table, temperatureCelsius)
    : outsideTable(table, temperatureCelsius);
}
