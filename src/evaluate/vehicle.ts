import type { Estimate, Mutable } from "../numeric/index.js";
import type { DecisionPolicy, LoadTestEvidence, SystemReading } from "../verdict/index.js";
import type { ChargeSection, IdentitySection, VehicleSection } from "./evaluation.js";
import { EMPTY_VOLTS } from "./ice.js";
import type { BatteryRecord, RecordVehicle } from "./record.js";
import { voltmeterUncertainty } from "./system.js";
import { chargingCircuit } from "./vehicle-charging.js";
import { parkedVehicle } from "./vehicle-draw.js";
import { assumedUncertainties } from "./vehicle-reading.js";
import { startingCircuit } from "./vehicle-starting.js";
import { refused, type Workbook } from "./workbook.js";

/** What else is known when the vehicle is looked at. */
export interface VehicleSetting {
  readonly identity: IdentitySection;
  readonly charge: ChargeSection | undefined;
  readonly temperature: Estimate | undefined;
  readonly system: SystemReading;
  readonly loadTest: LoadTestEvidence | undefined;
  readonly policy: DecisionPolicy;
}

/** The vehicle around the battery: starting circuit, charging circuit, draw. Only for records that have a part on it. */
export function vehicle(
  record: BatteryRecord,
  measured: RecordVehicle,
  setting: VehicleSetting,
  book: Workbook,
): VehicleSection | undefined {
  const { identity, charge, temperature, system, loadTest, policy } = setting;
  if (system === "other") {
    refused(book, "vehicle", {
      refused: true,
      code: "not-12-volt",
      reason: "The limits for the vehicle are those of 12 V systems.",
      wouldHelp: "A method for this system voltage.",
    });
    return undefined;
  }
  assumedUncertainties(book);
  const section: Mutable<VehicleSection> = {};
  const uncertainty = voltmeterUncertainty(record.measurements);
  const { starting, charging, draw } = measured;
  if (starting)
    section.starting = startingCircuit(
      starting,
      {
        voltmeterUncertainty: uncertainty,
        batteryTemperature: temperature,
        batteryProved:
          loadTest?.passStands === true &&
          loadTest.passProbability >= policy.acceptProbability &&
          charge?.bound === "two-sided" &&
          charge.stateOfCharge.value >= policy.sufficientCharge,
      },
      book,
    );
  if (charging) section.charging = chargingCircuit(charging, uncertainty, book);
  if (draw)
    section.draw = parkedVehicle(
      draw,
      identity.reserveCapacityMinutes?.value,
      // What a charger put in since says nothing about how the battery was found.
      draw.parkedDays !== undefined && charged(record)
        ? undefined
        : chargeFound(charge, system === "twelve-volt" ? record.measurements.restVolts : undefined),
      book,
    );
  return section;
}

/** Whether a path of the starting circuit loses more than it may. */
export function hasWiringFault(section: VehicleSection | undefined): boolean {
  return (
    section?.starting?.readings.some(
      ({ code, outcome }) => outcome === "beyond-limit" && /drop|resistance/.test(code),
    ) === true
  );
}

// Below the range of the curve the voltage still says one thing: the charge is at most empty.
function chargeFound(charge: ChargeSection | undefined, restVolts: number | undefined): Estimate | undefined {
  if (charge) return charge.bound === "two-sided" ? charge.stateOfCharge : undefined;
  return restVolts !== undefined && restVolts < EMPTY_VOLTS
    ? { value: 0, standardUncertainty: 0.09 }
    : undefined;
}

function charged({ conditions = {} }: BatteryRecord): boolean {
  return conditions.chargeCompleted === true || conditions.lastEvent === "charge";
}
