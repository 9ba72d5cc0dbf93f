import type { Estimate } from "../numeric/index.js";
import { temperatureUncertaintyKelvin } from "../temperature/index.js";
import { recogniseSystem, type SystemVoltage } from "../vehicle/index.js";
import type { SystemReading } from "../verdict/index.js";
import type { BatteryRecord, RecordConditions, RecordMeasurements } from "./record.js";
import { note, type Workbook } from "./workbook.js";

/** Assumed for a voltmeter nobody described: between a 0.1 % and a 0.5 % meter at 12.6 V. Our choice. */
const ASSUMED_VOLTMETER_UNCERTAINTY = 0.02;

/** Standard uncertainty of the record's voltmeter [V]. */
export function voltmeterUncertainty(measurements: RecordMeasurements): number {
  return measurements.voltsStandardUncertainty ?? ASSUMED_VOLTMETER_UNCERTAINTY;
}

/** The battery's temperature with the uncertainty of the way it was measured. */
export function batteryTemperature(record: BatteryRecord, book: Workbook): Estimate | undefined {
  const { temperatureCelsius, temperatureMethod } = record.conditions ?? {};
  if (temperatureCelsius === undefined) {
    note(book, "missing-temperature", "warning");
    return undefined;
  }
  // Above 45 °C or in deep frost a reading is possible, and a wrong unit is as likely.
  if (temperatureCelsius > 45 || temperatureCelsius < -35)
    note(book, "temperature-unusual", "warning", { temperatureCelsius });
  return {
    value: temperatureCelsius,
    standardUncertainty: temperatureUncertaintyKelvin(temperatureMethod ?? "unstated"),
  };
}

const ASK_TO_READING = {
  "exchange-leads-and-repeat": "reversed",
  "reversed-battery": "reversed-after-check",
  "almost-no-voltage": "no-voltage",
  "twelve-volts-flat-or-failed": "twelve-volt",
  "label-contradicts": "other",
  "above-any-system": "other",
  "label-decides": "unclear",
  "between-systems": "unclear",
  "on-a-boundary": "unclear",
} as const satisfies Record<string, SystemReading>;

/** No 12 V battery rests above these [V]: 14.4 V a minute after a charge, 13.2 V after 5 h (a 35 Ah sealed battery,
 *  hobby page, read); our choice with a margin. */
const HIGHEST_VOLTS = { justCharged: 14.6, afterHours: 13.6 } as const;
const SETTLING_HOURS = 4;

function aboveRest(volts: number, { hoursAtRest = 0, place }: RecordConditions = {}): boolean {
  // In a vehicle more than that means the engine is running, however short the rest.
  const settled = hoursAtRest >= SETTLING_HOURS || place === "vehicle";
  return volts > (settled ? HIGHEST_VOLTS.afterHours : HIGHEST_VOLTS.justCharged);
}

// On the edge between "12 V, flat" and "12 V" the system is no question.
function isTwelveEitherSide(system: Extract<SystemVoltage, { certain: false }>, volts: number): boolean {
  return system.ask === "on-a-boundary" && system.candidates[0] === 12 && volts < 13;
}

/** Whether the rest reading is that of a 12 V battery connected the right way round. */
export function systemReading(
  record: BatteryRecord,
  nominalVolts: number | undefined,
  book: Workbook,
): SystemReading {
  const { measurements } = record;
  const measuredVolts =
    measurements.restVolts !== undefined ||
    measurements.loadTest !== undefined ||
    record.vehicle?.starting?.crankingVolts !== undefined ||
    record.vehicle?.charging !== undefined;
  if (measuredVolts && measurements.voltsStandardUncertainty === undefined)
    note(book, "missing-voltmeter-uncertainty", "note", { assumedVolts: ASSUMED_VOLTMETER_UNCERTAINTY });
  if (nominalVolts === 6 || nominalVolts === 24) return "other";
  if (measurements.restVolts === undefined) return "not-measured";
  const system = recogniseSystem(
    { value: measurements.restVolts, standardUncertainty: voltmeterUncertainty(measurements) },
    nominalVolts === 12 ? 12 : undefined,
    record.conditions?.leadsVerified === true,
    book.derivation,
  );
  if (system.certain ? system.nominalVolts === 12 : isTwelveEitherSide(system, measurements.restVolts))
    return aboveRest(measurements.restVolts, record.conditions) ? "not-at-rest" : "twelve-volt";
  return system.certain ? "other" : ASK_TO_READING[system.ask];
}
