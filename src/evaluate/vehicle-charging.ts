import { isRefusal, type Mutable } from "../numeric/index.js";
import {
  type ChargingReading,
  judgeChargingRise,
  judgeChargingVoltage,
  judgeRipple,
  judgeVoltageDrop,
} from "../vehicle/index.js";
import type { FindingCode } from "../verdict/index.js";
import type { VehicleReading, VehicleSection } from "./evaluation.js";
import type { ChargingMeasurement } from "./record.js";
import { ASSUMED, dropOf, judged, readingOf } from "./vehicle-reading.js";
import { note, refused, type Workbook } from "./workbook.js";

/** The charging circuit: regulated voltage, rise, drops and ripple. */
export function chargingCircuit(
  reading: ChargingMeasurement,
  voltmeterUncertainty: number,
  book: Workbook,
): NonNullable<VehicleSection["charging"]> {
  const readings: VehicleReading[] = [];
  const volts = (value: number) => ({ value, standardUncertainty: voltmeterUncertainty });
  regulatedVoltage(reading, volts, readings, book);
  rises(reading, volts, readings, book);
  drops(reading, readings, book);
  ripple(reading, readings, book);
  return { readings };
}

type Volts = (value: number) => { readonly value: number; readonly standardUncertainty: number };

function notJudged(book: Workbook, reason: string, volts: number): void {
  note(book, "charging-not-judged", "note", { reason, volts });
}

function regulatedVoltage(
  reading: ChargingMeasurement,
  volts: Volts,
  readings: VehicleReading[],
  book: Workbook,
): void {
  const {
    regulatedVolts,
    regulatorTemperatureCelsius,
    control = "unknown",
    chargeAmperes,
    engineRpm,
  } = reading;
  if (regulatedVolts === undefined) return;
  if (control === "fixed-regulator" && regulatorTemperatureCelsius === undefined) {
    notJudged(book, "regulator-temperature-unknown", regulatedVolts);
    return;
  }
  const input: Mutable<ChargingReading> = {
    chargingVolts: volts(regulatedVolts),
    // The wide limits of a computer's voltage do not depend on it.
    regulatorCelsius: {
      value: regulatorTemperatureCelsius ?? 20,
      standardUncertainty: ASSUMED.regulatorKelvin,
    },
    control,
  };
  if (chargeAmperes !== undefined) input.chargeAmperes = chargeAmperes;
  if (engineRpm !== undefined) input.engineRpm = engineRpm;
  const found = judgeChargingVoltage(input, undefined, undefined, book.derivation);
  if (isRefusal(found)) {
    refused(book, "vehicle.charging.regulatedVolts", found);
    return;
  }
  const { outcome, lower, upper, doubts } = found;
  const least = readingOf("regulated-voltage-least", "V", lower, doubts);
  const most = readingOf("regulated-voltage-most", "V", upper, doubts);
  readings.push(least, most);
  if (outcome === "no-judgement")
    notJudged(book, control === "unknown" ? "control-unknown" : control, regulatedVolts);
  else if (outcome === "above-band") judged(book, most, ["regulated-voltage-high", "warning"]);
  else if (outcome === "within-band")
    judged(book, least, ["regulated-voltage-low", "warning"], "regulated-voltage-within");
  // Speed or a high charge current hold the voltage down without any fault.
  else if (outcome === "below-band" && doubts.length > 0) notJudged(book, doubts[0]!, regulatedVolts);
  else if (outcome === "below-band") judged(book, least, ["regulated-voltage-low", "warning"]);
  else judged(book, lower.outcome === "not-established" ? least : most, ["regulated-voltage-low", "warning"]);
}

/** The limits of an unloaded rise mean a charged battery: the workshops' 12.4 V. */
const CHARGED_VOLTS = 12.4;

function rises(reading: ChargingMeasurement, volts: Volts, readings: VehicleReading[], book: Workbook): void {
  const { engineOffVolts: off, regulatedVolts, loadedVolts, control = "unknown" } = reading;
  if (off === undefined) return;
  const judge = (
    running: number | undefined,
    rule: Parameters<typeof judgeChargingRise>[2],
    code: VehicleReading["code"],
    beyond: FindingCode,
    within?: FindingCode,
  ): void => {
    if (running === undefined) return;
    const found = judgeChargingRise(volts(off), volts(running), rule, control, undefined, book.derivation);
    // A regulated voltage has said so already.
    if (isRefusal(found)) {
      if (regulatedVolts === undefined)
        notJudged(book, control === "unknown" ? "control-unknown" : control, running);
      return;
    }
    const one = readingOf(code, "V", found);
    readings.push(one);
    judged(book, one, [beyond, "warning"], within);
  };
  judge(regulatedVolts, "unloaded-at-least", "unloaded-rise-least", "charging-rise-low");
  if (off >= CHARGED_VOLTS)
    judge(regulatedVolts, "unloaded-at-most", "unloaded-rise-most", "charging-rise-high");
  judge(loadedVolts, "loaded-at-least", "loaded-rise-least", "charging-rise-low", "charging-rise-enough");
}

const PATHS = [
  ["positiveDropVolts", "charging-positive", "charging-positive-drop"],
  ["groundDropVolts", "charging-ground", "charging-ground-drop"],
] as const;

function drops(reading: ChargingMeasurement, readings: VehicleReading[], book: Workbook): void {
  for (const [field, limit, code] of PATHS) {
    const value = reading[field];
    if (value === undefined) continue;
    const drop = dropOf(value, reading.outputAmperes, `vehicle.charging.${field}`, book);
    if (!drop) continue;
    const found = judgeVoltageDrop(drop, limit, undefined, book.derivation);
    if (isRefusal(found)) {
      refused(book, `vehicle.charging.${field}`, found);
      continue;
    }
    const one = readingOf(code, "V", found);
    readings.push(one);
    judged(book, one, ["charging-drop-high", "warning"]);
  }
}

function ripple({ ripple: measured }: ChargingMeasurement, readings: VehicleReading[], book: Workbook): void {
  if (!measured) return;
  const { volts, place, method, limit } = measured;
  const found = judgeRipple(
    {
      rippleVolts: { value: volts, standardUncertainty: ASSUMED.relativeRipple * volts },
      place,
      method,
    },
    limit,
    undefined,
    book.derivation,
  );
  if (isRefusal(found)) {
    refused(book, "vehicle.charging.ripple", found);
    return;
  }
  const one = readingOf("ripple", "V", found, found.doubts);
  readings.push(one);
  judged(book, one, ["ripple-high", "warning"], "ripple-within");
}
