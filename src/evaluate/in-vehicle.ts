import { drawLimits } from "../vehicle/index.js";
import type { Evidence } from "../verdict/index.js";
import type { BatteryRecord } from "./record.js";
import { SLEEPING_AMPERES } from "./vehicle-contradictions.js";
import { note, type Workbook } from "./workbook.js";

/** A few milliohms of a starter battery [Ω], to show what a consumer takes off a voltage; computed with 5 mΩ. */
const BATTERY_OHMS = 0.005;

/** What in the vehicle lowers a reading made there; nothing for a battery on the bench. */
export function readInVehicle(
  { conditions = {}, vehicle }: BatteryRecord,
  wiringFault: boolean,
  book: Workbook,
): NonNullable<Evidence["inVehicle"]> | undefined {
  const { place, loadsOff, loadAmperes, minutesSinceLocked } = conditions;
  // Measurements on the vehicle mean that the battery was in it, unless the bench is stated.
  const atVehicle = place === "vehicle" || (vehicle !== undefined && place !== "bench");
  if (!atVehicle && loadAmperes === undefined && minutesSinceLocked === undefined) return undefined;
  // Nobody looked is not the same as off: a low reading is then no proof, a good one still is.
  let loadOn = loadsOff !== true && loadAmperes === undefined;
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
