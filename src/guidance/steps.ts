import { COLD_TO_CHARGE } from "../verdict/index.js";
import { type Candidate, conditions, measurements, type Offer, offer } from "./candidate.js";
import { changeRoom, charge, loadTest, repeatLoadTest, tempered, topUp } from "./charging-steps.js";
import { changed } from "./draft.js";
import {
  crankingReadings,
  gravityReadings,
  repeatedReadings,
  restReadings,
  withClaim,
  withDateCode,
  withLabel,
} from "./imagined.js";
import { HOTTEST_TO_CHARGE, READINGS_WANTED } from "./limits.data.js";
import { claimable, lookedOver } from "./risk.js";
import { found, mayBeHandled } from "./safety.js";
import type { GuidanceSetting, Situation } from "./situation.js";
import type { GuidedStepCode } from "./types.js";

const lookOver: Offer = (situation) =>
  lookedOver(situation.record)
    ? undefined
    : offer("gate", "hazard-first", conditions("damage", "ice"), () => [
        changed(situation.record, { "conditions.damage": [], "conditions.ice": false }),
      ]);

const readLabel: Offer = (situation) =>
  situation.labelRead
    ? undefined
    : offer("gate", "nothing-without-label", ["identity.chemistry", "identity.rating"], () => [
        withLabel(situation),
      ]);

const checkLeads: Offer = (situation) => {
  const { record, evaluation } = situation;
  if (!evaluation || record.conditions?.leadsVerified) return undefined;
  const ofVoltage = found(situation, "reversed-polarity", "no-voltage", "system-voltage-unclear");
  if (!ofVoltage && !found(situation, "readings-scatter", "ability-implausible")) return undefined;
  const field = ofVoltage ? "restVolts" : "cranking";
  const verified = changed(record, { "conditions.leadsVerified": true });
  return offer(
    "reading",
    "connection-doubtful",
    ["conditions.leadsVerified", `measurements.${field}`],
    () => {
      const after = { ...situation, record: verified };
      return ofVoltage ? restReadings(after) : crankingReadings(after);
    },
    { clear: [`measurements.${field}`] },
  );
};

const measureTemperature: Offer = ({ record }) =>
  record.conditions?.temperatureCelsius !== undefined
    ? undefined
    : offer(
        "preparation",
        "temperature-unknown",
        conditions("temperatureCelsius", "temperatureMethod"),
        // A workshop battery: 20 °C as often as not.
        () =>
          [10, 20, 20, 30].map((celsius) => changed(record, { "conditions.temperatureCelsius": celsius })),
      );

const tellRestHistory: Offer = ({ record }) => {
  const {
    lastEvent,
    hoursAtRest,
    restVoltsExtrapolated,
    surfaceChargeRemoval = "none",
  } = record.conditions ?? {};
  if (restVoltsExtrapolated) return undefined;
  if (lastEvent !== undefined && (hoursAtRest !== undefined || surfaceChargeRemoval !== "none"))
    return undefined;
  return offer("preparation", "rest-history-unknown", conditions("lastEvent", "hoursAtRest"), () =>
    // Stood overnight, or just driven in.
    [12, 1].map((hours) =>
      changed(record, {
        "conditions.lastEvent": lastEvent ?? "drive",
        "conditions.hoursAtRest": hoursAtRest ?? hours,
      }),
    ),
  );
};

const measureRestVoltage: Offer = (situation) =>
  situation.labelRead && situation.record.measurements.restVolts === undefined
    ? offer("reading", "charge-unknown", measurements("restVolts"), () => restReadings(situation))
    : undefined;

const drawOff: Offer = (situation) => {
  const { record } = situation;
  const { surfaceChargeRemoval = "none" } = record.conditions ?? {};
  if (surfaceChargeRemoval !== "none" || !mayBeHandled(situation)) return undefined;
  if (!found(situation, "surface-charge", "voltage-above-rest")) return undefined;
  // Time has passed since the rest was noted: it no longer counts.
  const stale = [...conditions("hoursAtRest", "restVoltsExtrapolated"), ...measurements("restVolts")];
  const removed = changed(
    record,
    { "conditions.surfaceChargeRemoval": "lights", "conditions.minutesSinceRemoval": 5 },
    stale,
  );
  return offer(
    "reading",
    "surface-charge-possible",
    [...conditions("surfaceChargeRemoval", "minutesSinceRemoval"), ...measurements("restVolts")],
    () => restReadings(situation, removed),
    { clear: stale },
  );
};

const measureGravity: Offer = (situation) => {
  const { record } = situation;
  const { electrolyteLow, waterAdded, chargeCompleted } = record.conditions ?? {};
  // Water not yet mixed in makes the acid on top look weak.
  if (electrolyteLow || (waterAdded && !chargeCompleted)) return undefined;
  // Cells are opened where the voltage has left the charge open, and has told that there is no ice.
  return record.measurements.restVolts !== undefined &&
    record.identity.chemistry === "flooded" &&
    record.measurements.cellGravities === undefined &&
    mayBeHandled(situation)
    ? offer("reading", "charge-uncertain", measurements("cellGravities"), () => gravityReadings(situation))
    : undefined;
};

const measureCranking: Offer = (situation) =>
  situation.identity?.rating && !situation.record.measurements.cranking
    ? offer("reading", "ability-unknown", measurements("cranking"), () => crankingReadings(situation), {
        parameters: { standard: situation.identity.rating.standard },
      })
    : undefined;

const repeatReading: Offer = (situation) => {
  const { record } = situation;
  const amperes = record.measurements.cranking?.amperes;
  if (amperes === undefined || found(situation, "readings-scatter")) return undefined;
  const readings = READINGS_WANTED[record.conditions?.place ?? "bench"];
  if (typeof amperes === "object" && amperes.length >= readings) return undefined;
  return offer(
    "reading",
    "one-reading-uncertain",
    measurements("cranking"),
    () => repeatedReadings(situation, readings),
    { parameters: { readings } },
  );
};

const readDateCode: Offer = (situation) =>
  claimable(situation.evaluation) && situation.record.warranty && !situation.record.identity.dateCode
    ? offer("preparation", "age-unknown", ["identity.dateCode", "conditions.inspectedOn"], () => [
        withDateCode(situation),
      ])
    : undefined;

const giveTerms: Offer = (situation) =>
  claimable(situation.evaluation) && !situation.record.warranty
    ? offer(
        "preparation",
        "claim-open",
        ["warranty.terms", "warranty.purchase", "warranty.claimedOn"],
        () => [withClaim(situation)],
      )
    : undefined;

const OFFERS: Readonly<Record<GuidedStepCode, Offer>> = {
  "look-over": lookOver,
  "read-label": readLabel,
  "check-leads": checkLeads,
  "measure-temperature": measureTemperature,
  "tell-rest-history": tellRestHistory,
  "measure-rest-voltage": measureRestVoltage,
  "draw-off-surface-charge": drawOff,
  "measure-gravity": measureGravity,
  "measure-cranking": measureCranking,
  "repeat-reading": repeatReading,
  "top-up-water": topUp,
  "warm-up": /* @__PURE__ */ tempered("too-cold-to-charge", (celsius) => celsius < COLD_TO_CHARGE),
  "cool-down": /* @__PURE__ */ tempered("too-hot-to-charge", (celsius) => celsius > HOTTEST_TO_CHARGE),
  "change-room": changeRoom,
  charge,
  "load-test": loadTest,
  "charge-and-repeat-load-test": repeatLoadTest,
  "read-date-code": readDateCode,
  "give-purchase-and-terms": giveTerms,
};

/** Steps that may be asked for, in the order that breaks ties. */
export function candidates(situation: Situation, setting: GuidanceSetting): Candidate[] {
  const offered: Candidate[] = [];
  for (const [code, make] of Object.entries(OFFERS) as [GuidedStepCode, Offer][]) {
    if (setting.exclude.has(code) || setting.spent.has(code)) continue;
    const made = make(situation, setting);
    if (made) offered.push({ code, ...made });
  }
  return offered;
}
