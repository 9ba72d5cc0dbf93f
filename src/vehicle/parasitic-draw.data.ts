import type { LimitRow } from "./limit.js";

// Also in print: "mean 0.1 mA over 12 h per control unit" and the older rule "RC in minutes / 4, in mA" (both from
// memory), no limits for a whole vehicle of today. "Typical 1 A" on one page is a lamp left on.
/** Expected at most [mA]; settling time [min] (0: none printed); figure above which to search [mA] with its spread. */
export const DRAW_LIMITS = {
  default: [[50, 25, 50, "vehicle-defaults", "our-choice"], 60, 85, 80, 120],
  "default-late-vehicle": [[50, 25, 50, "vehicle-defaults", "our-choice"], 75, 85, 80, 120],
  "workshop-2008": [[30, 10, 30, "workshop-draw-2008"], 5],
  "workshop-2003": [[25, 5, 25, "workshop-draw-2003"], 0],
  vocational: [[35, 20, 35, "battery-service-modules"], 30],
  "workshop-undated": [[35, 35, 35, "workshop-draw-undated"], 40 / 60],
  "workshop-2001": [[50, 50, 50, "workshop-draw-2001"], 4, 85, 85, 85],
  "workshop-2023": [[50, 25, 50, "workshop-draw-2023"], 75],
  "workshop-2005": [[50, 30, 50, "workshop-draw-2005"], 60, 80, 80, 80],
  faq: [[120, 20, 120, "car-battery-faq"], 0, 120, 120, 120],
  bulletin: [[30, 30, 30, "draw-bulletin", "from-memory"], 0],
} as const satisfies Record<string, DrawRow>;

/** One profile. */
export type DrawRow = readonly [
  expected: LimitRow,
  settlingMinutes: number,
  search?: number,
  searchLower?: number,
  searchUpper?: number,
];

/** Name of a profile of draw limits. */
export type DrawProfileName = keyof typeof DRAW_LIMITS;
