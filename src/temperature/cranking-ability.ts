import type { Estimate } from "../numeric/index.js";
import { crankingAbilityTables } from "./cranking.data.js";
import { covers, type OutsideTable, outsideTable, readTable, type TemperatureTable } from "./table.js";

/** Cranking ability against temperature, in % of the ability at the table's own 100 % temperature. */
export type AbilityTable = TemperatureTable;

/**
 * Share of its warm cranking ability that a battery has left at a temperature.
 *
 * In scope: a charged battery as a source of cranking power. Out of scope: conversion between ratings (the rule
 * contradicts them) and correction of a resistance or conductance reading, see {@link resistanceAt25Celsius}.
 *
 * @param temperatureCelsius of the electrolyte [°C] (−18..26.7 for the default table)
 * @param table default `workshop-rule`
 * @returns ability [% of 80 °F], or a refusal outside the table
 *
 * Equation: straight line between the rows; their uncertainty is the spread of the sources.
 * Source: US Army TM 5-4210-230-14&P-1, Table 3 (read).
 * @example
 * ```ts
 * import { crankingAbilityPercent } from "crankworthy/temperature";
 * crankingAbilityPercent(0); // => { value: 65, standardUncertainty: 1.5 }
 * ```
 */
export function crankingAbilityPercent(
  temperatureCelsius: number,
  table: AbilityTable = crankingAbilityTables["workshop-rule"],
): Estimate | OutsideTable {
  return covers(table, temperatureCelsius)
    ? readTable(table, temperatureCelsius)
    : outsideTable(table, temperatureCelsius);
}
