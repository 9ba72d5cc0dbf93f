import { chargingAir } from "../evaluate/ventilation.js";
import { conditions, measurements, type Offer, offer } from "./candidate.js";
import { changed } from "./draft.js";
import { afterCharge, loadReadings } from "./imagined.js";
import { REST_HOURS_AFTER_CHARGE } from "./limits.data.js";
import {
  found,
  mayBeCharged,
  mayBeLoaded,
  mayBePrepared,
  mayBeTempered,
  readyForCharger,
  roomLacksAir,
} from "./safety.js";
import type { GuidanceSetting, Situation } from "./situation.js";
import type { GuidedReason, GuidedStep } from "./types.js";

const SEALED: ReadonlySet<string> = /* @__PURE__ */ new Set(["agm", "gel"]);

/** What a charge makes untrue of readings made before it. */
const STALE_AFTER_CHARGE = [
  ...conditions("surfaceChargeRemoval", "minutesSinceRemoval", "restVoltsExtrapolated"),
  ...measurements("restVolts", "cellGravities", "gravityTemperatureCelsius"),
];

export const topUp: Offer = (situation) => {
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
export const tempered = (why: GuidedReason, wanted: (celsius: number) => boolean): Offer => {
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

export const changeRoom: Offer = (situation) => {
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

export const charge: Offer = (situation, setting) => {
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

export const loadTest: Offer = (situation, setting) =>
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

export const repeatLoadTest: Offer = (situation, setting) => {
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
