import { drawLimits } from "../vehicle/index.js";
import type { Evidence } from "../verdict/index.js";
import type { BatteryRecord } from "./record.js";
import { SLEEPING_AMPERES } from "./vehicle-contradictions.js";
import { note, type Workbook } from "./workbook.js";

/** A few milliohms of a starter battery [Ω], to show what a consumer takes off a voltage; computed with 5 mΩ. */
const BATTERY_OHMS = 0.005;

/** What in the vehicle lowers a reading made there; nothing for a battery on the bench. */
export function readInVehicle(
  { conditions = {} }: BatteryRecord,
  wiringFault: boolean,
  book: Workbook,
): NonNullable<Evidence["inVehicle"]> | undefined {
  const { place, loadsOff, loadAmperes, minutesSinceLocked } = conditions;
  if (place !== "vehicle" && loadAmperes === undefined && minutesSinceLocked === undefined) return undefined;
  let loadOn = loadsOff === false;
  if (loadAmperes !== undefined && loadAmperes > SLEEPING_AMPERES) {
    loadOn = true;
    note(book, "electrical-load-present", "warning", {
      amperes: loadAmperes,
      shiftMillivolts: 1000 * BATTERY_OHMS * loadAmperes,
    });
  } else if (loadsOff !== true && loadAmperes === undefined) note(book, "vehicle-loads-possible", "warning");
  // A current that was measured tells more than a clock.
  const neededMinutes = drawLimits().settlingMinutes;
  if (minutesSinceLocked !== undefined && minutesSinceLocked < neededMinutes && loadAmperes === undefined) {
    if (loadsOff !== true) loadOn = true;
    note(book, "modules-may-be-awake", "warning", { minutesSinceLocked, neededMinutes });
  }
  return { loadOn, wiringFault };
}
