import { chargingAir } from "../evaluate/ventilation.js";
import { COLD_TO_CHARGE } from "../verdict/index.js";
import { type Candidate, conditions, measurements, type Offer, offer } from "./candidate.js";
import { changed } from "./draft.js";
import {
  afterCharge,
  crankingReadings,
  gravityReadings,
  loadReadings,
  repeatedReadings,
  restReadings,
  withClaim,
  withDateCode,
  withLabel,
} from "./imagined.js";
import { HOTTEST_TO_CHARGE, READINGS_WANTED, REST_HOURS_AFTER_CHARGE } from "./limits.data.js";
import { claimable, lookedOver } from "./risk.js";
import {
  found,
  mayBeCharged,
  mayBeHandled,
  mayBeLoaded,
  mayBePrepared,
  mayBeTempered,
  readyForCharger,
  roomLacksAir,
} from "./safety.js";
import type { GuidanceSetting, Situation } from "./situation.js";
import type { GuidedReason, GuidedStep, GuidedStepCode } from "./types.js";

const SEALED: ReadonlySet<string> = /* @__PURE__ */ new Set(["agm", "gel"]);

/** What a charge makes untrue of readings made before it. */
const STALE_AFTER_CHARGE = [
  ...conditions("surfaceChargeRemoval", "minutesSinceRemoval"),
  ...measurements("restVolts", "cellGravities", "gravityTemperatureCelsius"),
];

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
  const { lastEvent, hoursAtRest, surfaceChargeRemoval = "none" } = record.conditions ?? {};
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
  const stale = [...conditions("hoursAtRest"), ...measurements("restVolts")];
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

const topUp: Offer = (situation) => {
  const { record } = situation;
  return record.conditions?.electrolyteLow === true &&
    !SEALED.has(record.identity.chemistry) &&
    mayBePrepared(situation)
    ? offer(
        "preparation",
        "plates-uncovered",
        conditions("waterAdded"),
        () => [changed(record, { "conditions.waterAdded": true }, conditions("electrolyteLow"))],
        { clear: conditions("electrolyteLow") },
      )
    : undefined;
};

/** Room temperature, and another look for ice and cracks on the way there. */
const tempered = (why: GuidedReason, wanted: (celsius: number) => boolean): Offer => {
  return (situation) => {
    const { record } = situation;
    const celsius = record.conditions?.temperatureCelsius;
    if (celsius === undefined || !wanted(celsius) || !mayBeTempered(situation)) return undefined;
    return offer("preparation", why, conditions("temperatureCelsius", "damage", "ice"), () => [
      changed(record, { "conditions.temperatureCelsius": 20 }),
    ]);
  };
};

const asksForCharge = ({ evaluation, record }: Situation): boolean =>
  evaluation?.verdict.action === "charge-then-repeat" && !record.measurements.loadTest;

/** A first load test has failed, and the rules ask for another. */
function asksForRepeat(situation: Situation): boolean {
  const { loadTest } = situation.record.measurements;
  if (!loadTest || loadTest.repeated || !found(situation, "load-test-failed")) return false;
  return situation.evaluation?.verdict.action === "charge-then-repeat";
}

/** A charge before the first test does not replace the one after it. */
function beforeRepeat(situation: Situation): Situation {
  const { chargeCompleted: _, ...before } = situation.record.conditions ?? {};
  return { ...situation, record: { ...situation.record, conditions: before } };
}

const changeRoom: Offer = (situation) => {
  const { record, identity } = situation;
  const wanted = asksForCharge(situation)
    ? readyForCharger(situation)
    : asksForRepeat(situation) && readyForCharger(beforeRepeat(situation));
  if (!wanted || !roomLacksAir(situation)) return undefined;
  const rooms = ["ventilation.roomCubicMetres", "ventilation.airFlowCubicMetresPerHour"];
  const air = identity && chargingAir(identity, record.ventilation);
  return offer(
    "preparation",
    "room-without-air",
    rooms,
    () => {
      const { batteries } = record.ventilation ?? {};
      return [{ ...record, ventilation: batteries === undefined ? {} : { batteries } }];
    },
    {
      clear: rooms,
      parameters: air
        ? {
            neededCubicMetresPerHour: air.neededCubicMetresPerHour,
            freeVolumeCubicMetres: air.freeVolumeCubicMetres,
          }
        : {},
    },
  );
};

const charge: Offer = (situation, setting) => {
  if (!asksForCharge(situation) || !mayBeCharged(situation)) return undefined;
  const clear = [
    ...STALE_AFTER_CHARGE,
    ...conditions("readingsPerPlacement"),
    ...measurements("cranking", "resistance", "conductance"),
  ];
  return offer(
    "reading",
    "too-little-charge",
    // The voltage afterwards tells whether it took the charge.
    [...conditions("lastEvent", "chargeCompleted", "hoursAtRest"), ...measurements("restVolts")],
    () => afterCharge(situation, setting, clear),
    { clear, parameters: chargeParameters(situation) },
  );
};

function chargeParameters({ evaluation }: Situation): GuidedStep["parameters"] {
  const numbers = evaluation?.nextSteps.find(({ code }) => code === "charge")?.parameters;
  return { ...numbers, hours: REST_HOURS_AFTER_CHARGE };
}

const loadTest: Offer = (situation, setting) =>
  situation.record.measurements.loadTest || !mayBeLoaded(situation, setting)
    ? undefined
    : loadOffer(situation, setting);

function loadOffer(situation: Situation, setting: GuidanceSetting): ReturnType<Offer> {
  const [first] = loadReadings(situation, setting);
  const loadAmperes = first?.measurements.loadTest?.loadAmperes;
  return loadAmperes === undefined
    ? undefined
    : offer(
        "reading",
        situation.evaluation?.ability.length ? "ability-between-limits" : "ability-unknown",
        measurements("loadTest"),
        () => loadReadings(situation, setting),
        { parameters: { loadAmperes } },
      );
}

const repeatLoadTest: Offer = (situation, setting) => {
  const { loadTest } = situation.record.measurements;
  if (!loadTest || !asksForRepeat(situation) || !mayBeCharged(beforeRepeat(situation))) return undefined;
  const clear = [...STALE_AFTER_CHARGE, ...measurements("loadTest")];
  return offer(
    "reading",
    "first-failure-needs-repeat",
    [...conditions("lastEvent", "chargeCompleted", "hoursAtRest"), ...measurements("restVolts", "loadTest")],
    () => afterCharge(situation, setting, clear),
    { clear, parameters: { ...chargeParameters(situation), loadAmperes: loadTest.loadAmperes } },
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
