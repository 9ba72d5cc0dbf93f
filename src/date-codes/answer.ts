import type { Derivation } from "../sources/index.js";
import { deriveReadings } from "./derive.js";
import { type Candidate, type DateCodeEvidence, judge } from "./evidence.js";
import type {
  Confusable,
  DateCodeNote,
  DateCodeRefusal,
  DateCodeResult,
  DateReading,
  Settler,
} from "./reading.js";
import { refuseCode } from "./refusals.js";
import type { DayRange, DecodeContext } from "./scheme.js";

/** Weighs the candidates (at least one) and puts the result together. */
export function answer(
  text: string,
  candidates: readonly Candidate[],
  context: DecodeContext,
  evidence: DateCodeEvidence | undefined,
  second: readonly DayRange[],
  confusables: readonly Confusable[],
  notes: readonly DateCodeNote[],
  derivation: Derivation | undefined,
): DateCodeResult | DateCodeRefusal {
  const { readings, excluded } = judge(candidates, context, evidence, second);
  if (derivation) deriveReadings(derivation, text, context, readings, excluded);
  const [first] = readings;
  if (first === undefined) return refuseCode("contradicted-by-evidence", confusables, excluded);
  const ambiguous = readings.some(({ from, to }) => from !== first.from || to !== first.to);
  const settledBy = ambiguous ? settlersOf(readings, evidence) : [];
  if (confusables.length > 0) settledBy.push("closer-look");
  return { text, readings, excluded, ambiguous, confusables, settledBy, notes };
}

/** What could tell the readings apart, leaving out evidence that is already here. */
function settlersOf(readings: readonly DateReading[], evidence: DateCodeEvidence | undefined): Settler[] {
  const settlers: Settler[] = [];
  if (new Set(readings.map(({ scheme }) => scheme)).size > 1) settlers.push("scheme");
  if (!evidence?.soldOn) settlers.push("sale-date");
  // The vehicle's year tells decades apart, not neighbouring years.
  const years = readings.map(({ from }) => Number(from.slice(0, 4)));
  if (!evidence?.vehicleYear && Math.max(...years) - Math.min(...years) > 1) settlers.push("vehicle-year");
  if (!evidence?.secondCode) settlers.push("second-code");
  return settlers;
}
