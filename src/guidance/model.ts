import { loadTestLimitVolts } from "../bench/index.js";
import {
  type Acid,
  correctedGravity,
  defaultAcid,
  openCircuitVolts,
  restEffect,
} from "../charge-state/index.js";
import type { BatteryRecord } from "../evaluate/record.js";
import { isRefusal } from "../numeric/index.js";

// What a battery of a given charge and ability would show. Needed to imagine readings, never to judge one. Our choice.

/**
 * Share of its ability that a cranking estimate shows below the sufficient charge: anywhere between these, evenly. From that
 * charge on it shows all of it.
 */
export const SHOWN_WHEN_SHORT = { lower: 0.5, upper: 1 } as const;

/** Rest voltage above which the sag of a load test is counted [V]. */
const UNLOADED_VOLTS = 12.5;

/**
 * Voltage above the load-test limit [V]: the sag is inversely proportional to the ability, and a battery on the
 * unserviceable limit sags just to the test's limit.
 */
export function loadTestMargin(ability: number, limitVolts: number, unserviceableFraction: number): number {
  const sagAtLimit = UNLOADED_VOLTS - limitVolts;
  return Math.max(-limitVolts, sagAtLimit * (1 - unserviceableFraction / ability));
}

/** How well that model tells a single battery's voltage [V]. */
export const LOAD_MODEL_UNCERTAINTY_VOLTS = 0.3;

/** The load-test limit at the record's temperature [V]; undefined where the table says nothing. */
export function loadLimitOf(record: BatteryRecord): number | undefined {
  const celsius = record.conditions?.temperatureCelsius;
  if (celsius === undefined) return undefined;
  const limit = loadTestLimitVolts({ value: celsius, standardUncertainty: 0 });
  return isRefusal(limit) ? undefined : limit.value;
}

const acidOf = ({ identity }: BatteryRecord): Acid => identity.acid ?? defaultAcid(identity.chemistry);

/** What a voltmeter would show at this charge, with the record's rest history and temperature [V]. */
export function imaginedRestVolts(record: BatteryRecord, charge: number): number {
  const { lastEvent = "unknown", hoursAtRest, surfaceChargeRemoval } = record.conditions ?? {};
  const removed = surfaceChargeRemoval !== undefined && surfaceChargeRemoval !== "none";
  const effect = restEffect(hoursAtRest === undefined ? { lastEvent } : { lastEvent, hoursAtRest });
  const excess = removed ? 0 : effect.bound === "upper" ? SURFACE_VOLTS : -effect.shiftVolts;
  const acid = acidOf(record);
  const temperatureCelsius = record.conditions?.temperatureCelsius ?? 25;
  const settled = openCircuitVolts({ stateOfCharge: charge, acid, temperatureCelsius });
  const volts = isRefusal(settled) ? openCircuitVolts({ stateOfCharge: charge, acid }) : settled;
  return (typeof volts === "number" ? volts : 12) + excess;
}

/** Surface charge of a battery that has just been driven or charged [V]. */
const SURFACE_VOLTS = 0.4;

/** What a hydrometer would show at this charge. */
export function imaginedGravity(record: BatteryRecord, charge: number): number {
  const { fullGravity, emptyGravity } = acidOf(record);
  const temperatureCelsius = record.conditions?.temperatureCelsius ?? 25;
  const offset = correctedGravity({ reading: 0, temperatureCelsius });
  const gravity = emptyGravity + (fullGravity - emptyGravity) * charge;
  return Math.min(1.4, Math.max(1, gravity - (typeof offset === "number" ? offset : 0)));
}
