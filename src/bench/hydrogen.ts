import { requireFinite } from "../numeric/index.js";
import type { FigureFrom } from "./charge-plan.data.js";

/** Current that produces gas, stationary form [mA/Ah]; EN 50272-2:2001, Table 1, from memory. */
export const stationaryGasMilliamperesPerAmpereHour = {
  "vented-float": 5,
  "vented-boost": 20,
  "valve-regulated-float": 1,
  "valve-regulated-boost": 8,
} as const;

/** Current that produces gas, workshop form [A per 100 Ah]; EN 50272-3 quoted on a maker's page (secondary); W taper 5 to 7. */
export const workshopGasAmperesPer100AmpereHours = {
  "iu-vented": 2,
  "iu-valve-regulated": 1,
  "iui-vented": 6,
  "iui-valve-regulated": 1.5,
  "w-taper": 7,
} as const;

/** Where the two forms and their gas currents come from; the gas currents of the workshop form stand on the same page. */
export const ventilationProvenance = {
  stationary: ["en-62485-stationary", "secondary"],
  stationaryGasCurrents: ["en-62485-gas-currents", "from-memory"],
  workshop: ["en-62485-workshop", "secondary"],
} as const satisfies Record<string, FigureFrom>;

// More than any workshop has; larger numbers are a mistake, and their product no number.
const MOST = 1e6;

/** Air flow for one battery: number of cells, gas current in the unit of the form, capacity [Ah], batteries at once. */
export interface VentilationInput {
  readonly cells?: number;
  readonly gasCurrent: number;
  readonly capacityAmpereHours: number;
  readonly batteries?: number;
}

function flow({ cells = 6, gasCurrent, capacityAmpereHours, batteries = 1 }: VentilationInput): number {
  requireFinite("cells", cells, 1, MOST);
  requireFinite("gasCurrent", gasCurrent, 0, MOST);
  requireFinite("capacityAmpereHours", capacityAmpereHours, 0, MOST);
  requireFinite("batteries", batteries, 0, MOST);
  return 0.05 * batteries * cells * gasCurrent * capacityAmpereHours;
}

/**
 * Air flow that keeps hydrogen below the explosive limit, stationary form.
 *
 * @param input gas current in mA/Ah, see {@link stationaryGasMilliamperesPerAmpereHour}
 * @returns air flow [m³/h]; a design figure with its safety factor inside, so without an uncertainty
 *
 * Equation: Q = v·q·s·n·I·C·10⁻³ = 0.05·n·I·C·10⁻³, with v = 24, q = 0.42·10⁻³ m³/Ah, s = 5.
 * Source: EN 50272-2 / EN IEC 62485-2, as given by an engineering office (secondary).
 * @example
 * ```ts
 * import { stationaryAirFlowCubicMetresPerHour } from "crankworthy/bench";
 * stationaryAirFlowCubicMetresPerHour({ gasCurrent: 20, capacityAmpereHours: 70 }); // => 0.42
 * ```
 */
export function stationaryAirFlowCubicMetresPerHour(input: VentilationInput): number {
  return flow(input) / 1000;
}

/**
 * Air flow that keeps hydrogen below the explosive limit, form for charging in a workshop: the default for a battery on a charger.
 *
 * Two traps: the gas current is in A per 100 Ah here and in mA/Ah in the stationary form; where both forms apply, take
 * the larger result.
 *
 * @param input gas current in A per 100 Ah, see {@link workshopGasAmperesPer100AmpereHours}
 * @returns air flow [m³/h]
 *
 * Equation: Q = 0.05·n·I·C/100. Source: EN 50272-3 / EN IEC 62485-3, quoted on a battery maker's technical page (secondary).
 * @example
 * ```ts
 * import { workshopAirFlowCubicMetresPerHour } from "crankworthy/bench";
 * workshopAirFlowCubicMetresPerHour({ gasCurrent: 6, capacityAmpereHours: 70 }); // => 1.26
 * ```
 */
export function workshopAirFlowCubicMetresPerHour(input: VentilationInput): number {
  return flow(input) / 100;
}

/**
 * Area of each of two openings, and least free volume of the room, for natural ventilation.
 *
 * @param airFlowCubicMetresPerHour Q [m³/h] (≥ 0)
 * @returns inlet and outlet each [cm²] = 28·Q; free volume [m³] = 2.5·Q
 *
 * Source: a battery maker's technical page quoting EN 50272-3 (secondary).
 * @example
 * ```ts
 * import { naturalVentilation } from "crankworthy/bench";
 * naturalVentilation(1.26).openingSquareCentimetres; // => 35.28
 * ```
 */
export function naturalVentilation(airFlowCubicMetresPerHour: number): {
  readonly openingSquareCentimetres: number;
  readonly freeVolumeCubicMetres: number;
} {
  requireFinite("airFlowCubicMetresPerHour", airFlowCubicMetresPerHour, 0, MOST);
  return {
    openingSquareCentimetres: 28 * airFlowCubicMetresPerHour,
    freeVolumeCubicMetres: 2.5 * airFlowCubicMetresPerHour,
  };
}
