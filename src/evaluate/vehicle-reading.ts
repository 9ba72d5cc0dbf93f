import type { Estimate } from "../numeric/index.js";
import type { LimitJudgement, VoltageDrop } from "../vehicle/index.js";
import { type FindingCode, finding, type Severity } from "../verdict/index.js";
import type { VehicleReading } from "./evaluation.js";
import { note, refused, type Workbook } from "./workbook.js";

/**
 * Standard uncertainties assumed for readings on the vehicle, all our choice and always said: a drop on a meter's low
 * range [V]; a clamp on hundreds of amperes and ripple, as fractions; a clamp on a draw [A], 5 mA of resolution over √3;
 * a temperature in the engine bay [K].
 */
export const ASSUMED = {
  dropVolts: 0.005,
  relativeAmperes: 0.05,
  relativeRipple: 0.1,
  drawAmperes: 0.003,
  regulatorKelvin: 5,
} as const;

/** A current of the starting or charging circuit. */
export const amperesOf = (value: number): Estimate => ({
  value,
  standardUncertainty: ASSUMED.relativeAmperes * Math.abs(value),
});

/** Below this no current worth the name flows, and a drop shows nothing [A]. Our choice. */
const LEAST_PATH_AMPERES = 1;

/** A drop with its current; nothing, and a refusal, when hardly any flowed. A current that was not read stays out. */
export function dropOf(
  volts: number,
  amperes: number | undefined,
  about: string,
  book: Workbook,
): VoltageDrop | undefined {
  const dropVolts = { value: volts, standardUncertainty: ASSUMED.dropVolts };
  if (amperes === undefined) return { dropVolts };
  if (amperes >= LEAST_PATH_AMPERES) return { dropVolts, amperes: amperesOf(amperes) };
  refused(book, about, {
    refused: true,
    code: "no-current",
    reason: "Without a current nothing is lost on any path.",
    wouldHelp: "The drop while the current flows.",
  });
  return undefined;
}

/** A judgement of the room `vehicle` as a reading of the evaluation. */
export function readingOf(
  code: VehicleReading["code"],
  unit: VehicleReading["unit"],
  { outcome, measured, limit, margin, probabilityWithin, sourcesAgree }: LimitJudgement,
  doubts: readonly string[] = [],
): VehicleReading {
  return { code, outcome, measured, unit, limit, margin, probabilityWithin, sourcesAgree, doubts };
}

const NAMES = { V: "volts", A: "amperes", mΩ: "milliohms" } as const;

/** Leaves the finding of a reading that is beyond its limit, or the other one when it is within; or that neither is sure. */
export function judged(
  book: Workbook,
  reading: VehicleReading,
  beyond: readonly [FindingCode, Severity],
  within?: FindingCode,
): void {
  const { outcome, measured, limit, unit, probabilityWithin } = reading;
  const evidence = { reading: reading.code, [NAMES[unit]]: measured.value, probability: probabilityWithin };
  const held = { value: limit.value, unit, source: limit.source, standing: limit.standing };
  if (outcome === "beyond-limit") book.findings.push(finding(beyond[0], beyond[1], evidence, held));
  else if (outcome === "not-established")
    book.findings.push(finding("vehicle-reading-undecided", "note", evidence, held));
  else if (within) book.findings.push(finding(within, "note", evidence, held));
}

/** Says once which uncertainties were assumed. */
export function assumedUncertainties(book: Workbook): void {
  note(book, "vehicle-uncertainty-assumed", "note", {
    dropMillivolts: 1000 * ASSUMED.dropVolts,
    relativeAmperes: ASSUMED.relativeAmperes,
    drawMilliamperes: 1000 * ASSUMED.drawAmperes,
    relativeRipple: ASSUMED.relativeRipple,
  });
}
