import { requireFinite } from "../numeric/require-finite.js";
import { requireKey } from "../numeric/require-key.js";
import {
  afterCharge,
  afterDischarge,
  REMOVED_UNCERTAINTY_VOLTS,
  REMOVED_WAIT_MINUTES,
  UNKNOWN_UNCERTAINTY_VOLTS,
} from "./rest.data.js";

/** What happened to the battery before its voltage was read. */
export interface RestHistory {
  /** The last thing that moved charge. Driving charges. */
  readonly lastEvent: "charge" | "drive" | "discharge" | "unknown";
  /** Hours since then with every load and charger off [h] (≥ 0). */
  readonly hoursAtRest?: number;
  /** How surface charge was drawn off; `none` when left out. */
  readonly surfaceChargeRemoval?: "none" | "lights" | "load";
  /** Minutes without load since surface charge was drawn off [min] (≥ 0). */
  readonly minutesSinceRemoval?: number;
  /** The voltage is no reading but a recorded relaxation carried to its end, and its uncertainty says how well. */
  readonly extrapolated?: boolean;
}

/** What rest does to a voltage reading. */
export interface RestEffect {
  /** Add to the reading to get the settled voltage [V]. */
  readonly shiftVolts: number;
  /** Standard uncertainty of the settled voltage from this cause [V]. */
  readonly standardUncertaintyVolts: number;
  /** `upper`: the settled voltage is at or below the reading, how far is not known. */
  readonly bound: "two-sided" | "upper";
  readonly note?: "rest-unknown" | "surface-charge-not-bounded" | "surface-charge-removal-not-settled";
}

function effect(
  shiftVolts: number,
  standardUncertaintyVolts: number,
  note?: RestEffect["note"],
  bound: RestEffect["bound"] = "two-sided",
): RestEffect {
  const plain = { shiftVolts, standardUncertaintyVolts, bound };
  return note ? { ...plain, note } : plain;
}

const unknownRest = /* @__PURE__ */ effect(0, UNKNOWN_UNCERTAINTY_VOLTS, "rest-unknown");
const removalTooRecent = /* @__PURE__ */ effect(
  0,
  UNKNOWN_UNCERTAINTY_VOLTS,
  "surface-charge-removal-not-settled",
);
const removed = /* @__PURE__ */ effect(0, REMOVED_UNCERTAINTY_VOLTS);
const settled = /* @__PURE__ */ effect(0, 0);
const notBounded = /* @__PURE__ */ effect(0, 0, "surface-charge-not-bounded", "upper");

const LAST_EVENTS: Readonly<Record<RestHistory["lastEvent"], 0>> = {
  charge: 0,
  drive: 0,
  discharge: 0,
  unknown: 0,
};
const REMOVALS: Readonly<Record<NonNullable<RestHistory["surfaceChargeRemoval"]>, 0>> = {
  none: 0,
  lights: 0,
  load: 0,
};

type Row = readonly [hours: number, shift: number, uncertainty: number];

function effects(rows: readonly Row[]): readonly (readonly [number, RestEffect])[] {
  return rows.map(([hours, shift, uncertainty]) => [hours, effect(shift, uncertainty)]);
}
const charged = /* @__PURE__ */ effects(afterCharge);
const discharged = /* @__PURE__ */ effects(afterDischarge);

function at(rows: readonly (readonly [number, RestEffect])[], hours: number): RestEffect {
  for (const row of rows) if (hours >= row[0]) return row[1];
  return notBounded;
}

/**
 * How far a voltage reading is from the settled open-circuit voltage, by history and rest.
 *
 * After charging or driving the reading is too high, after a discharge too low. Less than 15 min after charging
 * nothing limits the excess, so only an upper bound is left. Where surface charge was drawn off, the better known of
 * the two ways counts. A voltage extrapolated from a recorded relaxation is settled already: nothing is added. With an unknown last event, 4 h and more count as after a charge, the slower of the two.
 *
 * @param rest history; RangeError for negative or non-finite times and unknown names
 * @returns shift and standard uncertainty, V for a 12 V battery
 *
 * Source: our choice, from the observations named beside the table in `rest.data.ts`.
 * @example
 * ```ts
 * import { restEffect } from "crankworthy/charge-state";
 * restEffect({ lastEvent: "drive", hoursAtRest: 2 }).shiftVolts; // => -0.15
 * restEffect({ lastEvent: "charge", hoursAtRest: 0.1 }).bound; // => "upper"
 * ```
 */
export function restEffect(rest: RestHistory): RestEffect {
  const { lastEvent, hoursAtRest: hours, surfaceChargeRemoval: removal, minutesSinceRemoval: minutes } = rest;
  if (hours !== undefined) requireFinite("rest.hoursAtRest", hours, 0);
  if (minutes !== undefined) requireFinite("rest.minutesSinceRemoval", minutes, 0);
  requireKey("rest.lastEvent", lastEvent, LAST_EVENTS);
  if (removal !== undefined) requireKey("rest.surfaceChargeRemoval", removal, REMOVALS);
  if (rest.extrapolated) return settled;
  if (lastEvent === "discharge") return hours === undefined ? unknownRest : at(discharged, hours);
  const byRest =
    hours === undefined || (lastEvent === "unknown" && hours < 4) ? unknownRest : at(charged, hours);
  if (removal === undefined || removal === "none") return byRest;
  const byRemoval = minutes !== undefined && minutes >= REMOVED_WAIT_MINUTES ? removed : removalTooRecent;
  const restIsBetter =
    byRest.bound === "two-sided" && byRest.standardUncertaintyVolts < byRemoval.standardUncertaintyVolts;
  return restIsBetter ? byRest : byRemoval;
}
