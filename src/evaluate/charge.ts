import {
  type CellGravities,
  type ChargeReading,
  chargeFromGravity,
  chargeFromRestVoltage,
  combineCharge,
  type FrozenRefusal,
  type GravityChargeReading,
  type RestHistory,
  type RestVoltage,
  type VoltageChargeReading,
} from "../charge-state/index.js";
import { type Estimate, interval95, isRefusal, type Mutable } from "../numeric/index.js";
import type { ChargeSection } from "./evaluation.js";
import { type IceSign, iceSign } from "./ice.js";
import type { BatteryRecord } from "./record.js";
import { voltmeterUncertainty } from "./system.js";
import { note, refused, type Workbook } from "./workbook.js";

/** How charged, and whether the acid may be frozen. */
export interface ChargeOutcome {
  readonly section?: ChargeSection;
  readonly ice?: IceSign;
}

/** How charged: from rest voltage, from cell gravities, or from both with a test of their agreement. */
export function charge(
  record: BatteryRecord,
  temperature: Estimate | undefined,
  restIsTwelveVolt: boolean,
  book: Workbook,
): ChargeOutcome {
  const { measurements } = record;
  const fromVoltage = restIsTwelveVolt ? voltageReading(record, temperature, book) : undefined;
  const gravity = measurements.cellGravities ? gravityReading(record, temperature, book) : undefined;
  if (fromVoltage && "ice" in fromVoltage) return fromVoltage;
  const voltage = fromVoltage?.reading;
  const outcome: Mutable<ChargeOutcome> = {};
  const ice = iceSign(temperature, voltage, gravity, restIsTwelveVolt ? measurements.restVolts : undefined);
  if (ice) outcome.ice = ice;
  for (const reading of [voltage, gravity]) if (reading) chargeNotes(reading, ice !== undefined, book);
  if (voltage && gravity) {
    const combined = combineCharge(voltage, gravity, book.derivation);
    if (!combined.consistent)
      note(book, "charge-evidence-disagrees", "warning", {
        agreement: combined.agreement,
        fromVoltage: voltage.stateOfCharge.value,
        fromGravity: gravity.stateOfCharge.value,
      });
    outcome.section = {
      stateOfCharge: combined.stateOfCharge,
      interval: interval95(combined.stateOfCharge),
      bound: "two-sided",
      from: "voltage-and-gravity",
      voltage,
      gravity,
      combined,
    };
  } else if (voltage) {
    const { stateOfCharge, bound } = voltage;
    outcome.section = { stateOfCharge, interval: interval95(stateOfCharge), bound, from: "voltage", voltage };
  } else if (gravity) {
    const { stateOfCharge, bound } = gravity;
    outcome.section = { stateOfCharge, interval: interval95(stateOfCharge), bound, from: "gravity", gravity };
  }
  return outcome;
}

const NOTE_FINDINGS = {
  "above-full": ["charge-above-full", "note"],
  "below-empty": ["charge-below-empty", "note"],
  "near-freezing": ["near-freezing", "warning"],
  "not-all-cells-measured": ["cells-not-all-measured", "note"],
} as const;

// The other notes of a reading have findings of their own, made where their cause is known.
function chargeNotes({ notes }: ChargeReading, mayBeFrozen: boolean, book: Workbook): void {
  for (const one of notes) {
    // "Warm it and charge it soon" beside "do not charge it" would be an order too many.
    if (mayBeFrozen && one === "near-freezing") continue;
    const found = NOTE_FINDINGS[one as keyof typeof NOTE_FINDINGS];
    if (found) note(book, found[0], found[1]);
  }
}

function voltageReading(
  record: BatteryRecord,
  temperature: Estimate | undefined,
  book: Workbook,
): { readonly reading?: VoltageChargeReading } | { readonly ice: IceSign } | undefined {
  const { measurements, conditions = {}, identity } = record;
  if (measurements.restVolts === undefined) return undefined;
  const { lastEvent, hoursAtRest, surfaceChargeRemoval, minutesSinceRemoval } = conditions;
  const extrapolated = conditions.restVoltsExtrapolated === true;
  const removed = surfaceChargeRemoval !== undefined && surfaceChargeRemoval !== "none";
  if (extrapolated) note(book, "rest-extrapolated", "note", { volts: measurements.restVolts });
  else if (lastEvent === undefined || (hoursAtRest === undefined && !removed))
    note(book, "missing-rest-history", "warning");
  const rest: Mutable<RestHistory> = { lastEvent: lastEvent ?? "unknown" };
  if (hoursAtRest !== undefined) rest.hoursAtRest = hoursAtRest;
  if (surfaceChargeRemoval !== undefined) rest.surfaceChargeRemoval = surfaceChargeRemoval;
  if (minutesSinceRemoval !== undefined) rest.minutesSinceRemoval = minutesSinceRemoval;
  if (extrapolated) rest.extrapolated = true;
  const input: Mutable<RestVoltage> = {
    volts: measurements.restVolts,
    voltsStandardUncertainty: voltmeterUncertainty(measurements),
    chemistry: identity.chemistry,
    rest,
  };
  if (identity.acid) input.acid = identity.acid;
  if (temperature) {
    input.temperatureCelsius = temperature.value;
    input.temperatureStandardUncertaintyKelvin = temperature.standardUncertainty;
  }
  const reading = chargeFromRestVoltage(input, book.derivation);
  if (isRefusal(reading)) {
    refused(book, "measurements.restVolts", reading);
    return reading.code === "may-be-frozen" ? { ice: reading as FrozenRefusal } : {};
  }
  if (reading.bound === "upper") note(book, "surface-charge", "warning", { volts: measurements.restVolts });
  return { reading };
}

function gravityReading(
  record: BatteryRecord,
  temperature: Estimate | undefined,
  book: Workbook,
): GravityChargeReading | undefined {
  const { measurements, identity } = record;
  const celsius = measurements.gravityTemperatureCelsius ?? temperature?.value;
  const input: Mutable<CellGravities> = {
    cellReadings: measurements.cellGravities!,
    chemistry: identity.chemistry,
  };
  if (identity.acid) input.acid = identity.acid;
  if (celsius !== undefined) input.temperatureCelsius = celsius;
  const reading = chargeFromGravity(input, book.derivation);
  if (!isRefusal(reading)) return reading;
  refused(book, "measurements.cellGravities", reading);
  return undefined;
}
