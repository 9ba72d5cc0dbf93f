import type { SourceId, Standing } from "../sources/index.js";

/** What the battery is. */
export type Condition = "serviceable" | "worn" | "unserviceable" | "internally-failed" | "not-established";

/** What to do next. `isolate`: a hazard, never charge; `stop`: not a 12 V battery, this method does not apply. */
export type Action =
  | "keep"
  | "charge-then-keep"
  | "charge-then-repeat"
  | "repeat"
  | "retire"
  | "isolate"
  | "stop";

/** `note`: worth knowing; `warning`: limits the answer; `defect`: counts against the battery; `hazard`: can hurt. */
export type Severity = "note" | "warning" | "defect" | "hazard";

/** Every finding this library can make. Each has a sentence in every message catalogue. */
export const findingCodes = [
  // what is missing
  "missing-temperature",
  "missing-rest-history",
  "missing-charge-measurement",
  "missing-ability-measurement",
  "missing-instrument-uncertainty",
  "missing-voltmeter-uncertainty",
  "missing-inspection-date",
  "chemistry-unknown",
  // identity and age
  "label-refused",
  "rating-estimated",
  "rating-not-comparable",
  "rating-edition-unstated",
  "date-code-ambiguous",
  "date-code-refused",
  "date-code-confusable",
  // hazards
  "case-damaged",
  "frozen-seen",
  "frozen-possible",
  "near-freezing",
  "electrolyte-low",
  // the system under test
  "other-system-voltage",
  "system-voltage-unclear",
  "no-voltage",
  "voltage-above-rest",
  "reversed-polarity",
  "reversed-after-check",
  // the measurement
  "surface-charge",
  "rest-extrapolated",
  "vehicle-loads-possible",
  "temperature-unusual",
  "readings-scatter",
  "temperature-compensation-assumed",
  "electrical-load-present",
  "modules-may-be-awake",
  "contact-spread",
  "low-reading-in-vehicle",
  // cells
  "cell-missing",
  "cell-missing-unproven",
  "cell-spread",
  "cell-spread-unproven",
  // charge
  "charge-low",
  "charge-above-full",
  "charge-below-empty",
  "cells-not-all-measured",
  "charge-not-established",
  "charge-evidence-disagrees",
  "charge-history-contradicted",
  // ability
  "ability-above",
  "ability-between",
  "ability-worn",
  "ability-below",
  "ability-not-judged",
  "ability-evidence-disagrees",
  "ability-implausible",
  "load-test-passed",
  "load-test-failed",
  "load-test-failed-again",
  "load-test-undecided",
  "load-test-not-valid",
  // the engine's need
  "requirement-met",
  "requirement-not-met",
  "requirement-undecided",
  "requirement-not-judged",
  // the starting circuit
  "vehicle-uncertainty-assumed",
  "vehicle-reading-undecided",
  "cranking-voltage-held",
  "cranking-voltage-low",
  "cranking-current-usual",
  "cranking-current-high",
  "slow-with-high-current",
  "slow-with-low-current",
  "slow-at-full-voltage",
  "no-turning-at-full-voltage",
  "voltage-drop-high",
  "voltage-drops-within",
  // the charging circuit
  "regulated-voltage-within",
  "regulated-voltage-low",
  "regulated-voltage-high",
  "charging-not-judged",
  "charging-rise-enough",
  "charging-rise-low",
  "charging-rise-high",
  "charging-drop-high",
  "ripple-within",
  "ripple-high",
  // the parked vehicle
  "draw-expected",
  "draw-explained",
  "draw-high",
  "draw-not-settled",
  "standing-time",
  "flat-by-drain",
  "flat-too-fast-for-drain",
  "flat-unexplained",
  // all of it together
  "charge-sufficient",
  "starter-or-engine",
  "causes-conflict",
  "cause-unclear",
] as const;

export type FindingCode = (typeof findingCodes)[number];

/** A limit a finding was measured against. */
export interface FindingLimit {
  readonly value: number;
  readonly unit: string;
  readonly source: SourceId;
  readonly standing: Standing;
}

/** Something that was noticed. Findings never disappear because another rule decided. */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** Numbers and words for the sentence, SI units as the glossary names them. */
  readonly evidence: Readonly<Record<string, number | string>>;
  readonly limit?: FindingLimit;
}

/** Makes a {@link Finding}. */
export function finding(
  code: FindingCode,
  severity: Severity,
  evidence: Readonly<Record<string, number | string>> = {},
  limit?: FindingLimit,
): Finding {
  return limit ? { code, severity, evidence, limit } : { code, severity, evidence };
}
