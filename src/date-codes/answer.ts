import type { Derivation } from "../sources/index.js";
import { deriveReadings } from "./derive.js";
import { type Candidate, type HeardEvidence, judge } from "./evidence.js";
import type {
  Confusable,
  DateCodeNote,
  DateCodeRefusal,
  DateCodeResult,
  DateReading,
  Settler,
} from "./reading.js";
import { refuseCode } from "./refusals.js";
import type { DecodeContext } from "./scheme.js";

/** Weighs the candidates (at least one) and puts the result together. */
export function answer(
  text: string,
  candidates: readonly Candidate[],
  context: DecodeContext,
  evidence: HeardEvidence,
  confusables: readonly Confusable[],
  notes: readonly DateCodeNote[],
  derivation: Derivation | undefined,
): DateCodeResult | DateCodeRefusal {
  const { readings, excluded } = judge(candidates, context, evidence);
  if (derivation) deriveReadings(derivation, text, context, readings, excluded);
  const [first] = readings;
  if (first === undefined) return refuseCode("contradicted-by-evidence", confusables, excluded);
  const ambiguous = readings.some(({ from, to }) => from !== first.from || to !== first.to);
  const settledBy = ambiguous ? settlersOf(readings, first, evidence) : [];
  if (confusables.length > 0) settledBy.push("closer-look");
  return { text, readings, excluded, ambiguous, confusables, settledBy, notes };
}

/** What could tell the readings apart, leaving out evidence that is already here. */
function settlersOf(
  readings: readonly DateReading[],
  first: DateReading,
  { soldDay, vehicleYear, second }: HeardEvidence,
): Settler[] {
  const settlers: Settler[] = [];
  if (readings.some(({ scheme, weekRule }) => scheme !== first.scheme || weekRule !== undefined))
    settlers.push("scheme");
  if (soldDay === Infinity) settlers.push("sale-date");
  if (vehicleYear === undefined) {
    // The vehicle's year tells decades apart, not neighbouring years.
    const years = readings.map(({ from }) => Number(from.slice(0, 4)));
    if (Math.max(...years) - Math.min(...years) > 1) settlers.push("vehicle-year");
  }
  if (!second) settlers.push("second-code");
  return settlers;
}
