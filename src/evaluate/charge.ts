import {
  type ChargeReading,
  chargeFromGravity,
  chargeFromRestVoltage,
  combineCharge,
  type FrozenRefusal,
  type GravityChargeReading,
  type VoltageChargeReading,
} from "../charge-state/index.js";
import { type Estimate, interval95, isRefusal } from "../numeric/index.js";
import type { ChargeSection } from "./evaluation.js";
import type { BatteryRecord } from "./record.js";
import { note, refused, type Workbook } from "./workbook.js";

/** Assumed for a voltmeter nobody described: between a 0.1 % and a 0.5 % meter. Our choice, always said. */
export const ASSUMED_VOLTMETER_UNCERTAINTY = 0.02;

/** How charged, and whether the acid may be frozen. */
export interface ChargeOutcome {
  readonly section?: ChargeSection;
  readonly frozen?: FrozenRefusal;
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
  if (fromVoltage && "frozen" in fromVoltage) return fromVoltage;
  const voltage = fromVoltage?.reading;
  for (const reading of [voltage, gravity]) if (reading) chargeNotes(reading, book);
  if (voltage && gravity) {
    const combined = combineCharge(voltage, gravity, book.derivation);
    if (!combined.consistent)
      note(book, "charge-evidence-disagrees", "warning", {
        agreement: combined.agreement,
        fromVoltage: voltage.stateOfCharge.value,
        fromGravity: gravity.stateOfCharge.value,
      });
    return {
      section: {
        stateOfCharge: combined.stateOfCharge,
        interval: interval95(combined.stateOfCharge),
        bound: "two-sided",
        from: "voltage-and-gravity",
        voltage,
        gravity,
        combined,
      },
    };
  }
  if (voltage) return { section: { ...section(voltage, "voltage"), voltage } };
  if (gravity) return { section: { ...section(gravity, "gravity"), gravity } };
  return {};
}

const NOTE_FINDINGS = {
  "above-full": ["charge-above-full", "note"],
  "below-empty": ["charge-below-empty", "note"],
  "near-freezing": ["near-freezing", "warning"],
  "not-all-cells-measured": ["cells-not-all-measured", "note"],
} as const;

// The other notes of a reading have findings of their own, made where their cause is known.
function chargeNotes({ notes }: ChargeReading, book: Workbook): void {
  for (const one of notes) {
    const found = NOTE_FINDINGS[one as keyof typeof NOTE_FINDINGS];
    if (found) note(book, found[0], found[1]);
  }
}

function section(reading: ChargeReading, from: "voltage" | "gravity"): ChargeSection {
  const { stateOfCharge, bound } = reading;
  return { stateOfCharge, interval: interval95(stateOfCharge), bound, from };
}

function voltageReading(
  record: BatteryRecord,
  temperature: Estimate | undefined,
  book: Workbook,
): { readonly reading?: VoltageChargeReading } | { readonly frozen: FrozenRefusal } | undefined {
  const { measurements, conditions = {}, identity } = record;
  if (measurements.restVolts === undefined) return undefined;
  const { lastEvent, hoursAtRest, surfaceChargeRemoval, minutesSinceRemoval } = conditions;
  const removed = surfaceChargeRemoval !== undefined && surfaceChargeRemoval !== "none";
  if (lastEvent === undefined || (hoursAtRest === undefined && !removed))
    note(book, "missing-rest-history", "warning");
  const reading = chargeFromRestVoltage(
    {
      volts: measurements.restVolts,
      voltsStandardUncertainty: measurements.voltsStandardUncertainty ?? ASSUMED_VOLTMETER_UNCERTAINTY,
      chemistry: identity.chemistry,
      ...(identity.acid && { acid: identity.acid }),
      ...(temperature && {
        temperatureCelsius: temperature.value,
        temperatureStandardUncertaintyKelvin: temperature.standardUncertainty,
      }),
      rest: {
        lastEvent: lastEvent ?? "unknown",
        ...(hoursAtRest !== undefined && { hoursAtRest }),
        ...(surfaceChargeRemoval !== undefined && { surfaceChargeRemoval }),
        ...(minutesSinceRemoval !== undefined && { minutesSinceRemoval }),
      },
    },
    book.derivation,
  );
  if (isRefusal(reading)) {
    refused(book, "measurements.restVolts", reading);
    return reading.code === "may-be-frozen" ? { frozen: reading as FrozenRefusal } : {};
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
  const reading = chargeFromGravity(
    {
      cellReadings: measurements.cellGravities!,
      chemistry: identity.chemistry,
      ...(identity.acid && { acid: identity.acid }),
      ...(celsius !== undefined && { temperatureCelsius: celsius }),
    },
    book.derivation,
  );
  if (!isRefusal(reading)) return reading;
  refused(book, "measurements.cellGravities", reading);
  return undefined;
}
