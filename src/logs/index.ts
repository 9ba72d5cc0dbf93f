/**
 * Logger time series: bring rows into one sign and unit, then measure charge, rest and resistance.
 *
 * @module
 */
export { type ChargeMoved, type ChargeMovedOptions, chargeMoved } from "./charge-moved.js";
export { type FinalRest, findFinalRest, type RestRule } from "./final-rest.js";
export {
  findOhmicResistance,
  fitOhmicResistance,
  type OhmicFit,
  type OhmicSearch,
} from "./ohmic-resistance.js";
export { type LogColumns, type LogRow, type LogSeries, type RowCounts, seriesFromRows } from "./series.js";
