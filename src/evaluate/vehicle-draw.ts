import { type Estimate, isRefusal, type Mutable } from "../numeric/index.js";
import {
  type DrawJudgement,
  type DrawReading,
  daysUntilNoStart,
  drawLimits,
  explainFlatBattery,
  type FlatBattery,
  judgeDraw,
} from "../vehicle/index.js";
import { finding } from "../verdict/index.js";
import type { VehicleReading, VehicleSection } from "./evaluation.js";
import type { DrawMeasurement } from "./record.js";
import { ASSUMED, judged, readingOf } from "./vehicle-reading.js";
import { note, refused, type Workbook } from "./workbook.js";

type DrawSection = NonNullable<VehicleSection["draw"]>;

/** The parked vehicle: its draw, how long it may stand, and whether that explains a flat battery. */
export function parkedVehicle(
  reading: DrawMeasurement,
  reserveCapacityMinutes: number | undefined,
  chargeFound: Estimate | undefined,
  book: Workbook,
): DrawSection {
  const drawAmperes = { value: reading.drawAmperes, standardUncertainty: ASSUMED.drawAmperes };
  const section: Mutable<DrawSection> = { readings: [] };
  const input: Mutable<DrawReading> = { drawAmperes, settledMinutes: reading.settledMinutes };
  if (reading.equipmentExplains !== undefined) input.equipmentExplains = reading.equipmentExplains;
  const found = judgeDraw(input, reading.profile, undefined, book.derivation);
  if (isRefusal(found)) {
    refused(book, "vehicle.draw", found);
    if (found.code === "not-settled")
      note(book, "draw-not-settled", "warning", {
        milliamperes: 1000 * reading.drawAmperes,
        settledMinutes: reading.settledMinutes,
        neededMinutes: drawLimits(reading.profile).settlingMinutes,
      });
    // Too early a reading says nothing of a night in the yard.
    return section;
  }
  section.outcome = found.outcome;
  section.readings = drawReadings(found, book);
  if (reserveCapacityMinutes === undefined) {
    refused(book, "vehicle.draw", {
      refused: true,
      code: "reserve-capacity-unknown",
      reason: "How long a parked vehicle lasts depends on the battery's reserve capacity.",
      wouldHelp: "Reserve capacity or ampere-hours from the label.",
    });
    return section;
  }
  standing(section, reading, drawAmperes, reserveCapacityMinutes, chargeFound, book);
  return section;
}

function drawReadings(
  { outcome, expected, search }: DrawJudgement,
  book: Workbook,
): readonly VehicleReading[] {
  const readings = [readingOf("draw-expected", "A", expected)];
  if (search) readings.push(readingOf("draw-search", "A", search));
  const shown = { milliamperes: 1000 * expected.measured.value, probability: expected.probabilityWithin };
  const { value, source, standing } = expected.limit;
  const limit = { value: 1000 * value, unit: "mA", source, standing };
  if (outcome === "expected") book.findings.push(finding("draw-expected", "note", shown, limit));
  else if (outcome === "explained-by-equipment")
    book.findings.push(finding("draw-explained", "note", shown, limit));
  else if (outcome === "not-established")
    judged(book, readings[0]!.outcome === "not-established" ? readings[0]! : readings[1]!, [
      "draw-high",
      "warning",
    ]);
  else book.findings.push(finding("draw-high", "warning", shown, limit));
  return readings;
}

const FULL: Estimate = { value: 1, standardUncertainty: 0 };
/** Charge of a vehicle in use when it was parked: short trips leave it anywhere from half to full. Our choice. */
const FULL_WHEN_PARKED: Estimate = { value: 1, standardUncertainty: 0.05 };
const WHEN_PARKED: Estimate = { value: 0.8, standardUncertainty: 0.15 };

function standing(
  section: Mutable<DrawSection>,
  { parkedDays, fullWhenParked }: DrawMeasurement,
  drawAmperes: Estimate,
  reserveCapacityMinutes: number,
  chargeFound: Estimate | undefined,
  book: Workbook,
): void {
  // Of a battery found flat the next charge counts, else the charge it has; above full is full.
  const startingCharge =
    parkedDays !== undefined || !chargeFound || chargeFound.value >= 1 || chargeFound.value <= 0
      ? FULL
      : chargeFound;
  const time = daysUntilNoStart({ reserveCapacityMinutes, drawAmperes, startingCharge }, book.derivation);
  if (isRefusal(time)) {
    refused(book, "vehicle.draw", time);
    return;
  }
  section.standingTime = time;
  note(book, "standing-time", "note", {
    fromDays: time.interval.lower,
    toDays: time.interval.upper,
    fromCharge: startingCharge.value,
  });
  if (parkedDays === undefined) return;
  const flat: Mutable<FlatBattery> = {
    reserveCapacityMinutes,
    drawAmperes,
    parkedDays,
    startingCharge: fullWhenParked ? FULL_WHEN_PARKED : WHEN_PARKED,
  };
  if (chargeFound) flat.chargeFound = chargeFound;
  const explained = explainFlatBattery(flat);
  if (isRefusal(explained)) return;
  const { code, drainSufficesProbability, standing } = explained;
  section.flatBattery = { code, drainSufficesProbability };
  book.derivation?.push({
    quantity: "which explanation of the flat battery the numbers support",
    formula: "likelihood with a sound battery / likelihood with a worn one",
    inputs: {
      parkedDays,
      draw: drawAmperes.value,
      RC: reserveCapacityMinutes,
      found: chargeFound?.value ?? "",
    },
    result: code,
    unit: "",
    source: "vehicle-defaults",
    standing,
  });
  const shown = { parkedDays, probability: drainSufficesProbability };
  if (code === "drain") note(book, "flat-by-drain", "warning", shown);
  else if (code === "worn-battery") note(book, "flat-too-fast-for-drain", "warning", shown);
  else note(book, "flat-unexplained", "note", shown);
}
