import type { SourceId, Standing } from "../sources/index.js";
import type { LimitRow } from "./limit.js";

/** Least battery voltage while cranking near 70 °F, 12 V [V]: value, lower and upper figure in use. */
export const CRANKING_MINIMUMS = {
  default: [9.6, 9.5, 10, "vehicle-defaults", "our-choice"],
  "proved-battery": [9.6, 9.6, 9.6, "workshop-starting-2004"],
  "average-while-cranking": [9.5, 9.5, 9.5, "workshop-starting-1998"],
  roller: [10, 10, 10, "roller-manual"],
} as const satisfies Record<string, LimitRow>;

/** Name of a least cranking voltage. */
export type CrankingMinimumName = keyof typeof CRANKING_MINIMUMS;

/** Longest cranking and least pause after it [s]; null where the source states no pause. */
export const CRANKING_TIMES = {
  default: [15, 120, "vehicle-defaults", "our-choice"],
  "workshop-1998": [15, 20, "workshop-starting-1998", "read"],
  "military-15-15": [15, 15, "tm-5-4210-cranking", "read"],
  "study-guide": [15, 120, "capacity-study-guide", "read"],
  "military-30-120": [30, 120, "tm-10-3930-671", "read"],
  "workshop-1983": [30, null, "workshop-starting-1983", "read"],
} as const satisfies Record<string, readonly [number, number | null, SourceId, Standing]>;

/** Name of a rule for cranking times. */
export type CrankingTimeName = keyof typeof CRANKING_TIMES;

/** Engine temperature range [°C], least and greatest usual current, lower and upper end of the printed limit [A]. */
type CurrentRow = readonly [
  fromCelsius: number,
  toCelsius: number,
  least: number,
  usual: number,
  limitLower: number,
  limitUpper: number,
];

// "Warm" is not defined on the textbook page: from 50 °C on, as in the other manual's warm row (our choice).
// The rows of the 1.9 L engine printed for one temperature hold ±2 K (our choice), the
// one for 5 °C downwards only, where the next row begins; between rows nothing is printed.
export const CRANKING_CURRENTS = {
  "4-cylinder-warm": ["starter-textbook", [[50, 130, 0, 100, 150, 185]]],
  "6-cylinder-warm": ["starter-textbook", [[50, 130, 0, 125, 160, 200]]],
  "8-cylinder-warm": ["starter-textbook", [[50, 130, 0, 150, 185, 250]]],
  "one-1.9-litre-4-cylinder": [
    "workshop-starting-1998",
    [
      [50, 130, 70, 110, 110, 110],
      [3, 5, 90, 130, 130, 130],
      [5, 27, 80, 120, 120, 120],
      [-22, -18, 230, 280, 280, 280],
    ],
  ],
} as const satisfies Record<string, readonly [SourceId, readonly CurrentRow[]]>;

/** Name of an engine class with a published starter current. */
export type EngineClass = keyof typeof CRANKING_CURRENTS;
