import type { SourceId, Standing } from "../sources/index.js";
import type { DamageSign } from "./evidence.js";
import type { Action } from "./finding.js";

/** Every caution this library can show. Each has a sentence in every message catalogue. */
export const cautionCodes = [
  "local-codes-first",
  "eyes-and-acid",
  "hydrogen-no-sparks",
  "ventilate-charging",
  "charge-temperature",
  "warm-before-charging",
  "never-charge",
  "frozen-handling",
  "damaged-handling",
  "sealed-overheating",
  "clamp-order",
  "lifting",
  "short-circuit",
  "return-and-transport",
  "system-voltage-supply",
] as const;

export type CautionCode = (typeof cautionCodes)[number];

/** What can hurt someone here, and what to do; the words are in the message catalogues. */
export interface Caution {
  readonly code: CautionCode;
  readonly source: SourceId;
  readonly standing: Standing;
}

/** What decides which cautions are shown. None of it is the condition: a caution never waits for a bad verdict. */
export interface CautionSetting {
  readonly action: Action;
  readonly damage: readonly DamageSign[];
  readonly frozen: "seen" | "possible" | "no";
  readonly sealed: boolean;
  /** Nothing measured the charge: a cold battery may be empty, and an empty one freezes early. */
  readonly chargeUnknown: boolean;
  readonly place: "bench" | "vehicle" | "unknown";
  readonly temperatureCelsius?: number;
  readonly failedCell: boolean;
  readonly otherSystem: boolean;
}

type Row = readonly [CautionCode, SourceId, Standing, (setting: CautionSetting) => boolean];

/** A discharged battery can freeze at 10 °F (US Army TM 9-6140-200-14, p. 17); rounded up to the safe side [°C]. */
const FREEZING_WHEN_EMPTY = -8;
/** Below this a battery is warmed before it is charged [°C]: our choice, the warm side of "at room temperature". */
export const COLD_TO_CHARGE = 5;

const charges = (action: Action): boolean => action === "charge-then-keep" || action === "charge-then-repeat";
const leaves = (action: Action): boolean => action === "retire" || action === "isolate";

const rows: readonly Row[] = [
  ["local-codes-first", "workshop-practice", "common-practice", () => true],
  ["eyes-and-acid", "tm-9-2350-287", "read", () => true],
  ["hydrogen-no-sparks", "tm-9-6140", "read", () => true],
  ["short-circuit", "workshop-practice", "common-practice", () => true],
  ["never-charge", "workshop-practice", "common-practice", (s) => s.action === "isolate" || s.failedCell],
  [
    "frozen-handling",
    "od1002",
    "read",
    (s) => s.frozen !== "no" || (s.chargeUnknown && (s.temperatureCelsius ?? 25) <= FREEZING_WHEN_EMPTY),
  ],
  [
    "warm-before-charging",
    "bench-choice",
    "our-choice",
    (s) => charges(s.action) && (s.temperatureCelsius ?? 25) < COLD_TO_CHARGE,
  ],
  ["damaged-handling", "workshop-practice", "common-practice", (s) => s.damage.length > 0],
  ["ventilate-charging", "osha-1926-441", "read", (s) => charges(s.action)],
  [
    "charge-temperature",
    "workshop-charge-stop",
    "our-choice",
    (s) => charges(s.action) || (s.temperatureCelsius ?? 0) >= 45,
  ],
  [
    "sealed-overheating",
    "workshop-practice",
    "from-memory",
    (s) => s.sealed && (charges(s.action) || (s.temperatureCelsius ?? 0) >= 45),
  ],
  ["clamp-order", "clamp-order-manuals", "from-memory", (s) => s.place !== "bench"],
  ["lifting", "workshop-practice", "common-practice", (s) => s.place !== "vehicle" || leaves(s.action)],
  ["return-and-transport", "cfr-173-159", "read", (s) => leaves(s.action)],
  ["system-voltage-supply", "workshop-practice", "common-practice", (s) => s.otherSystem],
];

/**
 * The cautions that hold in a setting, most general first.
 *
 * @example
 * ```ts
 * import { cautions } from "crankworthy/verdict";
 * const shown = cautions({
 *   action: "keep", damage: [], frozen: "no", sealed: false, chargeUnknown: false, place: "bench", failedCell: false,
 *   otherSystem: false,
 * });
 * shown.map((one) => one.code).includes("eyes-and-acid"); // => true
 * ```
 */
export function cautions(setting: CautionSetting): Caution[] {
  const shown: Caution[] = [];
  for (const [code, source, standing, holds] of rows)
    if (holds(setting)) shown.push({ code, source, standing });
  return shown;
}
