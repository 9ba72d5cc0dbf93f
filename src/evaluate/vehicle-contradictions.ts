import { type InputIssue, issue, picture } from "./issue.js";
import type { BatteryRecord, ChargingMeasurement, RecordVehicle, StartingMeasurement } from "./record.js";

/** Whether the vehicle part holds a reading that something can be said about. */
export function measuresVehicle({ starting, charging, draw }: RecordVehicle): boolean {
  if (draw) return true;
  if (
    starting &&
    (starting.crankingVolts ??
      starting.crankingAmperes ??
      starting.positiveDropVolts ??
      starting.groundDropVolts ??
      starting.solenoidDropVolts ??
      starting.speed) !== undefined
  )
    return true;
  return (
    charging !== undefined &&
    (charging.regulatedVolts ??
      charging.loadedVolts ??
      charging.positiveDropVolts ??
      charging.groundDropVolts ??
      charging.ripple) !== undefined
  );
}

/** Fields of the vehicle part and of readings in the vehicle that cannot both be true, or need another. */
export function vehicleContradictions(
  { conditions = {}, measurements, vehicle }: BatteryRecord,
  found: InputIssue[],
): void {
  const contradiction = (path: string, received: unknown, expected: string): void => {
    found.push(issue("contradiction", path, picture(received), expected));
  };
  if (conditions.loadsOff === true && (conditions.loadAmperes ?? 0) > SLEEPING_AMPERES)
    contradiction("conditions.loadAmperes", conditions.loadAmperes, "next to none, as loadsOff says");
  for (const field of ["loadAmperes", "minutesSinceLocked"] as const)
    if (conditions[field] !== undefined && conditions.place === "bench")
      contradiction(`conditions.${field}`, conditions[field], 'a place other than "bench"');
  const { cranking } = measurements;
  const size = cranking?.readingsPerPlacement;
  if (cranking && size !== undefined) {
    const count = typeof cranking.amperes === "number" ? 1 : cranking.amperes.length;
    if (count % size !== 0 || count < 2 * size)
      contradiction(
        "measurements.cranking.readingsPerPlacement",
        size,
        `a number that divides the ${count} readings into two placings or more`,
      );
  }
  if (vehicle) {
    if (!measuresVehicle(vehicle))
      found.push(issue("missing", "vehicle", "no measurement", "at least one measurement on the vehicle"));
    if (vehicle.starting) starting(vehicle.starting, found, contradiction);
    if (vehicle.charging) charging(vehicle.charging, contradiction);
    if (measurements.restVolts !== undefined) againstRest(measurements.restVolts, vehicle, contradiction);
  }
}

/** A sleeping vehicle draws less than this [A]: three times the usual limit of a draw. Our choice. */
export const SLEEPING_AMPERES = 0.15;

type Contradiction = (path: string, received: unknown, expected: string) => void;

function starting(reading: StartingMeasurement, found: InputIssue[], contradiction: Contradiction): void {
  const path = "vehicle.starting";
  if (reading.crankingVolts !== undefined && reading.inrush === undefined)
    found.push(
      issue(
        "missing",
        `${path}.inrush`,
        "nothing",
        'one of "left-out", "included"',
        "the first dip is no cranking voltage",
      ),
    );
  if (reading.crankingVolts === undefined && reading.inrush !== undefined)
    contradiction(`${path}.inrush`, reading.inrush, "a crankingVolts it belongs to");
  if (reading.crankingAmperes === undefined && reading.engine !== undefined)
    contradiction(`${path}.engine`, reading.engine, "a crankingAmperes to hold against it");
  const { positiveDropVolts: positive, groundDropVolts: ground, crankingVolts: posts } = reading;
  if (posts !== undefined && (positive ?? 0) + (ground ?? 0) > posts)
    contradiction(
      `${path}.${positive === undefined ? "groundDropVolts" : "positiveDropVolts"}`,
      (positive ?? 0) + (ground ?? 0),
      `drops of no more than the voltage at the posts (${posts})`,
    );
  if (
    reading.solenoidDropVolts !== undefined &&
    positive !== undefined &&
    reading.solenoidDropVolts > positive + 0.05
  )
    contradiction(
      `${path}.solenoidDropVolts`,
      reading.solenoidDropVolts,
      `no more than positiveDropVolts (${positive}), which it is a part of`,
    );
}

/** Voltages of one battery on one occasion: none while cranking above rest, the engine off is rest. Margins: our choice. */
function againstRest(
  rest: number,
  { starting, charging }: RecordVehicle,
  contradiction: Contradiction,
): void {
  if (starting?.crankingVolts !== undefined && starting.crankingVolts > rest + 0.1)
    contradiction(
      "vehicle.starting.crankingVolts",
      starting.crankingVolts,
      `at most the rest voltage (${rest})`,
    );
  if (charging?.engineOffVolts !== undefined && Math.abs(charging.engineOffVolts - rest) > 0.6)
    contradiction(
      "vehicle.charging.engineOffVolts",
      charging.engineOffVolts,
      `about the rest voltage (${rest})`,
    );
  if (rest < 0 && charging?.regulatedVolts !== undefined)
    contradiction(
      "measurements.restVolts",
      rest,
      "a reading of the same sign as vehicle.charging.regulatedVolts",
    );
}

function charging(reading: ChargingMeasurement, contradiction: Contradiction): void {
  const path = "vehicle.charging";
  if (
    reading.engineOffVolts !== undefined &&
    reading.regulatedVolts === undefined &&
    reading.loadedVolts === undefined
  )
    contradiction(
      `${path}.engineOffVolts`,
      reading.engineOffVolts,
      "a regulatedVolts or loadedVolts to compare it with",
    );
  if ((reading.chargeAmperes ?? 0) < -1 && (reading.regulatedVolts ?? 0) > 13.5)
    contradiction(
      `${path}.chargeAmperes`,
      reading.chargeAmperes,
      "a current into the battery at this voltage",
    );
  if (
    reading.outputAmperes !== undefined &&
    reading.positiveDropVolts === undefined &&
    reading.groundDropVolts === undefined
  )
    contradiction(`${path}.outputAmperes`, reading.outputAmperes, "a drop that it flowed through");
}
