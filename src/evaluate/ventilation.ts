import {
  naturalVentilation,
  workshopAirFlowCubicMetresPerHour,
  workshopGasAmperesPer100AmpereHours,
} from "../bench/index.js";
import type { ChargingAir } from "../verdict/index.js";
import type { IdentitySection } from "./evaluation.js";
import type { RecordVentilation } from "./record.js";

/**
 * Air that a room needs while this battery is charged, workshop form; nothing without its capacity.
 *
 * Taken for a charge that ends in boost (IUI), the gassiest of the usual ones; an unknown chemistry counts as vented.
 */
export function chargingAir(
  { chemistry, capacityAmpereHours }: IdentitySection,
  { batteries = 1, roomCubicMetres, airFlowCubicMetresPerHour }: RecordVentilation = {},
): ChargingAir | undefined {
  if (!capacityAmpereHours) return undefined;
  const sealed = chemistry === "agm" || chemistry === "gel";
  const neededCubicMetresPerHour = workshopAirFlowCubicMetresPerHour({
    gasCurrent: workshopGasAmperesPer100AmpereHours[sealed ? "iui-valve-regulated" : "iui-vented"],
    capacityAmpereHours: capacityAmpereHours.value,
    batteries,
  });
  const { openingSquareCentimetres, freeVolumeCubicMetres } = naturalVentilation(neededCubicMetresPerHour);
  return {
    batteries,
    neededCubicMetresPerHour,
    openingSquareCentimetres,
    freeVolumeCubicMetres,
    // With a known flow of fresh air the volume no longer matters.
    enough:
      airFlowCubicMetresPerHour !== undefined
        ? airFlowCubicMetresPerHour >= neededCubicMetresPerHour
        : roomCubicMetres === undefined || roomCubicMetres >= freeVolumeCubicMetres,
    ...(airFlowCubicMetresPerHour !== undefined && { givenCubicMetresPerHour: airFlowCubicMetresPerHour }),
    ...(roomCubicMetres !== undefined && { roomCubicMetres }),
  };
}
