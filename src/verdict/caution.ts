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
  "toxic-gas",
  "sealed-overheating",
  "clamp-order",
  "lifting",
  "short-circuit",
  "return-and-transport",
  "system-voltage-supply",
  "charging-air",
  "room-air",
  "jump-starting",
  "eye-wash",
  "neutralise-spills",
  "take-back",
] as const;

export type CautionCode = (typeof cautionCodes)[number];

/** What can hurt someone here, and what to do; the words are in the message catalogues. */
export interface Caution {
  readonly code: CautionCode;
  readonly source: SourceId;
  readonly standing: Standing;
  /** Numbers and words of its sentence, where it has any; units stand in the names. */
  readonly parameters?: Readonly<Record<string, number | string>>;
}

/** Air that a room needs while a battery is charged, and what is known of the room. */
export interface ChargingAir {
  /** Batteries charged at once. */
  readonly batteries: number;
  readonly neededCubicMetresPerHour: number;
  /** Each of two openings, for natural ventilation. */
  readonly openingSquareCentimetres: number;
  /** Least free volume of the room, for natural ventilation. */
  readonly freeVolumeCubicMetres: number;
  /** False when what is known of the room falls short. */
  readonly enough: boolean;
  readonly givenCubicMetresPerHour?: number;
  readonly roomCubicMetres?: number;
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
  /** The charge is more probably too low than not: somebody will think of jump leads. */
  readonly flat?: boolean;
  /** Caps were or will be open: gravities, water. */
  readonly acidHandled?: boolean;
  /** Given when a charge is next or the caller described the room, and the capacity is known. */
  readonly air?: ChargingAir;
}

type Row = readonly [
  code: CautionCode,
  source: SourceId,
  standing: Standing,
  holds: (setting: CautionSetting) => boolean,
  parameters?: (setting: CautionSetting) => Caution["parameters"],
];

/** A discharged battery can freeze at 10 °F (US Army TM 9-6140-200-14, p. 17); rounded up to the safe side [°C]. */
const FREEZING_WHEN_EMPTY = -8;
/** Below this a battery is warmed before it is charged [°C]: our choice, the warm side of "at room temperature". */
export const COLD_TO_CHARGE = 5;

/** Whether a charge comes next. */
export const charges = (action: Action): boolean =>
  action === "charge-then-keep" || action === "charge-then-repeat";
/** "Within 25 feet of battery handling areas" (29 CFR 1926.441) [m]. */
const EYE_WASH_METRES = 7.62;
/** One pound of baking soda a US gallon of water (TM 9-6140-200-14) [g/L], computed. */
const NEUTRALISER_GRAMS_PER_LITRE = 453.592 / 3.785412;
/** Jump leads: ground at least 12 in from the battery (TM 5-4210-230-14&P-1 p. 460) [m], never above [V]. */
const JUMP = { groundMetres: 0.3048, mostVolts: 16 } as const;

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
    "charging-air",
    "en-62485-workshop",
    "secondary",
    (s) => s.air !== undefined,
    ({ air }) => ({
      neededCubicMetresPerHour: air!.neededCubicMetresPerHour,
      openingSquareCentimetres: air!.openingSquareCentimetres,
      freeVolumeCubicMetres: air!.freeVolumeCubicMetres,
      batteries: air!.batteries,
    }),
  ],
  [
    "room-air",
    "en-62485-workshop",
    "secondary",
    (s) => s.air?.enough === false,
    ({ air }) => ({
      neededCubicMetresPerHour: air!.neededCubicMetresPerHour,
      ...(air!.givenCubicMetresPerHour !== undefined
        ? { givenCubicMetresPerHour: air!.givenCubicMetresPerHour }
        : {
            freeVolumeCubicMetres: air!.freeVolumeCubicMetres,
            roomCubicMetres: air!.roomCubicMetres!,
          }),
    }),
  ],
  [
    "charge-temperature",
    "workshop-charge-stop",
    "our-choice",
    (s) => charges(s.action) || (s.temperatureCelsius ?? 0) >= 45,
  ],
  ["toxic-gas", "workshop-practice", "from-memory", (s) => s.damage.includes("sulfur-smell")],
  [
    "sealed-overheating",
    "workshop-practice",
    "from-memory",
    (s) => s.sealed && (charges(s.action) || (s.temperatureCelsius ?? 0) >= 45),
  ],
  [
    "eye-wash",
    "osha-1926-441",
    "read",
    (s) => charges(s.action) || s.damage.length > 0 || s.acidHandled === true,
    () => ({ metres: EYE_WASH_METRES }),
  ],
  [
    "neutralise-spills",
    "tm-9-6140",
    "read",
    (s) => !s.sealed && (s.damage.length > 0 || s.frozen !== "no" || s.acidHandled === true),
    () => ({ gramsPerLitre: NEUTRALISER_GRAMS_PER_LITRE }),
  ],
  // A hazard forbids the jump start itself; that caution stands above.
  [
    "jump-starting",
    "cfr-1917-157",
    "read",
    (s) =>
      s.place === "vehicle" && s.flat === true && s.action !== "isolate" && !s.failedCell && !s.otherSystem,
    () => JUMP,
  ],
  ["clamp-order", "clamp-order-manuals", "from-memory", (s) => s.place !== "bench"],
  ["lifting", "workshop-practice", "common-practice", (s) => s.place !== "vehicle" || leaves(s.action)],
  [
    "return-and-transport",
    "cfr-173-159",
    "read",
    (s) => leaves(s.action),
    (s) => ({ unNumber: s.sealed ? "UN2800" : "UN2794" }),
  ],
  ["take-back", "spent-battery-rules", "read", (s) => leaves(s.action)],
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
  for (const [code, source, standing, holds, parameters] of rows) {
    if (!holds(setting)) continue;
    const filled = parameters?.(setting);
    shown.push(filled ? { code, source, standing, parameters: filled } : { code, source, standing });
  }
  return shown;
}
