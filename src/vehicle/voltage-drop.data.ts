import type { LimitRow } from "./limit.js";

/** Limits of voltage drops [V], 12 V systems; starting rows while cranking, charging rows while charging. */
export const DROP_LIMITS = {
  "positive-total": [0.5, 0.4, 0.5, "vehicle-defaults", "our-choice"],
  "ground-total": [0.2, 0.1, 0.2, "vehicle-defaults", "our-choice"],
  "any-branch-per-ampere": [0.2, 0.2, 0.2, "tm-10-3930-671"],
  "positive-cable-to-solenoid": [0.4, 0.4, 0.4, "tm-10-3930-671"],
  "battery-post-to-starter": [0.5, 0.5, 0.5, "workshop-truck-2005"],
  "cable-under-3-ft": [0.1, 0.1, 0.1, "tm-5-3820"],
  "cable-3-to-6-ft": [0.2, 0.2, 0.2, "tm-5-3820"],
  "mechanical-switch": [0.1, 0.1, 0.1, "tm-5-3820"],
  solenoid: [0.2, 0.2, 0.2, "tm-5-3820"],
  "magnetic-switch": [0.3, 0.3, 0.3, "tm-5-3820"],
  connection: [0, 0, 0, "tm-5-3820"],
  "ground-side": [0.2, 0.2, 0.2, "tm-5-3820"],
  "frame-to-ground-post": [0.1, 0.1, 0.1, "workshop-starting-1983"],
  "frame-to-starter": [0.1, 0.1, 0.1, "workshop-starting-1983"],
  "post-to-starter-stud": [0.1, 0.1, 0.1, "workshop-starting-1983"],
  "charging-positive": [0.3, 0.2, 0.5, "vehicle-defaults", "our-choice"],
  "charging-ground": [0.2, 0.1, 0.2, "vehicle-defaults", "our-choice"],
  "charging-positive-at-30-a": [0.3, 0.3, 0.3, "workshop-charging-2018"],
  "charging-positive-2014": [0.2, 0.2, 0.2, "workshop-charging-2014"],
  "alternator-frame-to-negative": [0.2, 0.2, 0.2, "technician-page"],
  "charging-positive-at-20-a": [0.35, 0.2, 0.5, "vocational-texts", "from-memory"],
  "charging-ground-at-20-a": [0.15, 0.1, 0.2, "vocational-texts", "from-memory"],
} as const satisfies Record<string, LimitRow>;

/** Name of a drop limit: the path, and the source where sources differ. */
export type DropLimitName = keyof typeof DROP_LIMITS;

/** Current at which a limit holds [A], where its source states one. */
export const DROP_AMPERES: Readonly<Partial<Record<DropLimitName, number>>> = {
  "any-branch-per-ampere": 100,
  "charging-positive-at-30-a": 30,
  "charging-positive-at-20-a": 20,
  "charging-ground-at-20-a": 20,
};
