import { type Estimate, isRefusal, type Mutable } from "../numeric/index.js";
import {
  type CrankingCurrentJudgement,
  type CrankingObservation,
  type CrankingReason,
  judgeCrankingCurrent,
  judgeCrankingVoltage,
  judgeVoltageDrop,
  reasonOnCranking,
} from "../vehicle/index.js";
import type { FindingCode } from "../verdict/index.js";
import type { VehicleReading, VehicleSection } from "./evaluation.js";
import type { StartingMeasurement } from "./record.js";
import { amperesOf, dropOf, judged, readingOf } from "./vehicle-reading.js";
import { note, refused, type Workbook } from "./workbook.js";

/** What the judgements need besides the readings. */
export interface StartingSetting {
  readonly voltmeterUncertainty: number;
  readonly batteryTemperature: Estimate | undefined;
  /** The battery was full and passed a load test before. */
  readonly batteryProved: boolean;
}

/** The starting circuit: voltage and current while cranking, drops, and what they say together. */
export function startingCircuit(
  reading: StartingMeasurement,
  setting: StartingSetting,
  book: Workbook,
): NonNullable<VehicleSection["starting"]> {
  const readings: VehicleReading[] = [];
  crankingVoltage(reading, setting, readings, book);
  const level = crankingCurrent(reading, setting, readings, book);
  drops(reading, readings, book);
  return { readings, reasons: reasons(reading, level, book) };
}

function temperatureOf(
  { engineTemperatureCelsius }: StartingMeasurement,
  { batteryTemperature }: StartingSetting,
  about: string,
  book: Workbook,
): number | undefined {
  const celsius = engineTemperatureCelsius ?? batteryTemperature?.value;
  if (celsius === undefined)
    refused(book, about, {
      refused: true,
      code: "temperature-unknown",
      reason: "The limit depends on the temperature of the engine.",
      wouldHelp: "The temperature of engine or battery.",
    });
  return celsius;
}

function crankingVoltage(
  reading: StartingMeasurement,
  setting: StartingSetting,
  readings: VehicleReading[],
  book: Workbook,
): void {
  const { crankingVolts, inrush } = reading;
  if (crankingVolts === undefined) return;
  const about = "vehicle.starting.crankingVolts";
  const temperatureCelsius = temperatureOf(reading, setting, about, book);
  if (temperatureCelsius === undefined) return;
  const found = judgeCrankingVoltage(
    {
      crankingVolts: { value: crankingVolts, standardUncertainty: setting.voltmeterUncertainty },
      temperatureCelsius,
      inrush: inrush!,
      batteryProved: setting.batteryProved,
    },
    undefined,
    book.derivation,
  );
  if (isRefusal(found)) {
    refused(book, about, found);
    return;
  }
  const one = readingOf("cranking-voltage", "V", found, found.doubts);
  readings.push(one);
  judged(book, one, ["cranking-voltage-low", "warning"], "cranking-voltage-held");
}

function crankingCurrent(
  reading: StartingMeasurement,
  setting: StartingSetting,
  readings: VehicleReading[],
  book: Workbook,
): CrankingCurrentJudgement["level"] | undefined {
  const { crankingAmperes, engine } = reading;
  if (crankingAmperes === undefined || engine === undefined) return undefined;
  const about = "vehicle.starting.crankingAmperes";
  const celsius = temperatureOf(reading, setting, about, book);
  if (celsius === undefined) return undefined;
  const found = judgeCrankingCurrent(amperesOf(crankingAmperes), celsius, engine, undefined, book.derivation);
  if (isRefusal(found)) {
    refused(book, about, found);
    return undefined;
  }
  const one = readingOf("cranking-current", "A", found);
  readings.push(one);
  // A starved or idle starter draws little: that is no usual current.
  const usual = reading.speed === undefined || reading.speed === "normal";
  judged(
    book,
    one,
    ["cranking-current-high", "warning"],
    usual && found.level !== "low" ? "cranking-current-usual" : undefined,
  );
  // A textbook prints no least current: a slow starter that draws less than half of what it may is starved. Our choice.
  return !usual && crankingAmperes < found.limit.lower / 2 ? "low" : found.level;
}

// "In all" limits for either side, and 0.2 V per 100 A for what is one branch: the positive side is several.
const PATHS = [
  ["positiveDropVolts", "positive-total", "starting-positive-drop", undefined],
  ["groundDropVolts", "ground-total", "starting-ground-drop", "starting-ground-resistance"],
  ["solenoidDropVolts", "solenoid", "solenoid-drop", "solenoid-resistance"],
] as const;

function drops(reading: StartingMeasurement, readings: VehicleReading[], book: Workbook): void {
  let within = 0;
  let beyond = false;
  for (const [field, total, code, resistance] of PATHS) {
    const value = reading[field];
    if (value === undefined) continue;
    const drop = dropOf(value, reading.crankingAmperes, `vehicle.starting.${field}`, book);
    if (!drop) continue;
    const judgements: VehicleReading[] = [];
    const inAll = judgeVoltageDrop(drop, total, undefined, book.derivation);
    if (isRefusal(inAll)) {
      refused(book, `vehicle.starting.${field}`, inAll);
      continue;
    }
    judgements.push(readingOf(code, "V", inAll));
    if (drop.amperes && resistance) {
      const branch = judgeVoltageDrop(drop, "any-branch-per-ampere", undefined, book.derivation);
      if (!isRefusal(branch)) judgements.push(readingOf(resistance, "mΩ", branch));
    }
    readings.push(...judgements);
    const worst =
      judgements.find((one) => one.outcome === "beyond-limit") ??
      judgements.find((one) => one.outcome === "not-established");
    if (worst) judged(book, worst, ["voltage-drop-high", "warning"]);
    else if (field !== "solenoidDropVolts") within++;
    if (worst?.outcome === "beyond-limit") beyond = true;
  }
  // Only both sides together, with a starter's current in them, show that the way loses nothing.
  const flowed =
    reading.crankingAmperes !== undefined
      ? reading.crankingAmperes >= IDLE_AMPERES
      : reading.speed !== "none";
  if (within === 2 && !beyond && flowed) note(book, "voltage-drops-within", "note");
}

const REASONS = {
  "high-current-slow": "slow-with-high-current",
  "low-current-slow-or-none": "slow-with-low-current",
  "battery-holds-no-turning": "no-turning-at-full-voltage",
  "battery-holds-slow-turning": "slow-at-full-voltage",
} as const satisfies Record<CrankingReason["code"], FindingCode>;

function reasons(
  { speed, crankingVolts, crankingAmperes }: StartingMeasurement,
  level: CrankingCurrentJudgement["level"] | undefined,
  book: Workbook,
): readonly CrankingReason[] {
  if (speed === undefined) return [];
  // Without a printed range the current of a starter that stands still is low when next to nothing flows.
  const stands = speed === "none" && crankingAmperes !== undefined && crankingAmperes < IDLE_AMPERES;
  const current: CrankingObservation["current"] = stands
    ? "low"
    : level === undefined
      ? "not-measured"
      : level === "raised"
        ? "usual"
        : level;
  const seen: Mutable<CrankingObservation> = { speed, current };
  if (crankingVolts !== undefined) seen.volts = crankingVolts;
  const found = reasonOnCranking(seen);
  for (const { code, lookAt } of found) note(book, REASONS[code], "warning", { lookAt: lookAt.join(", ") });
  return found;
}

/** Less than any starter draws while it turns [A]. Our choice. */
const IDLE_AMPERES = 20;
