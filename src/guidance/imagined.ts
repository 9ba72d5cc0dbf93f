import { testLoadAmperes } from "../evaluate/load-test.js";
import type { BatteryRecord } from "../evaluate/record.js";
import { changed } from "./draft.js";
import { abilityCells, abilityMarginal, charges, representatives, shownAbility } from "./knowledge.js";
import { IMAGINED_TERMS, REST_HOURS_AFTER_CHARGE } from "./limits.data.js";
import {
  imaginedGravity,
  imaginedRestVolts,
  LOAD_MODEL_UNCERTAINTY_VOLTS,
  loadLimitOf,
  loadTestMargin,
} from "./model.js";
import type { GuidanceSetting, Situation } from "./situation.js";

// Records as they would be after a step: equally probable, drawn evenly from what is known now, never at random.

/** Batteries of one charge differ this much in voltage or gravity, as a fraction of charge. Our choice, see limits. */
const CHARGE_NOISE = 0.09;
/** Scatter of a cranking estimate as a fraction: all of it, and what changes from one reading to the next. Our choice. */
const CRANKING_NOISE = { whole: 0.045, repeat: 0.032 } as const;
/** Charge after a completed charge. */
const CHARGED = 0.95;

const likelyCharges = ({ knowledge }: Situation): number[] =>
  representatives(charges, knowledge.charge, () => CHARGE_NOISE);

/** Rest voltages it may show. */
export function restReadings(situation: Situation, record = situation.record): BatteryRecord[] {
  return likelyCharges(situation).map((charge) => {
    const restVolts = Math.min(32, Math.max(0, imaginedRestVolts(record, charge)));
    const { loadTest } = record.measurements;
    return changed(record, {
      "measurements.restVolts": loadTest ? Math.max(restVolts, loadTest.volts) : restVolts,
    });
  });
}

/** Hydrometer readings it may show, six equal cells. */
export function gravityReadings(situation: Situation): BatteryRecord[] {
  const { record } = situation;
  return likelyCharges(situation).map((charge) =>
    changed(record, {
      "measurements.cellGravities": Array.from({ length: 6 }, () => imaginedGravity(record, charge)),
    }),
  );
}

const withCranking = (record: BatteryRecord, situation: Situation, ratio: number): BatteryRecord => {
  const rating = situation.identity?.rating;
  if (!rating) return record;
  const amperes = Math.min(3000, Math.max(1, ratio * rating.amperes.value));
  return changed(record, { "measurements.cranking": { standard: rating.standard, amperes } });
};

/** Cranking readings it may show, in the standard of its label. */
export function crankingReadings(situation: Situation): BatteryRecord[] {
  const { values, weights } = shownAbility(situation.knowledge);
  return representatives(values, weights, (ratio) => CRANKING_NOISE.whole * ratio).map((ratio) =>
    withCranking(situation.record, situation, ratio),
  );
}

/** More readings beside the first: they scatter about it, and share what the instrument has wrong. */
export function repeatedReadings({ record }: Situation, wanted: number): BatteryRecord[] {
  const { cranking } = record.measurements;
  if (!cranking) return [];
  const readings = typeof cranking.amperes === "number" ? [cranking.amperes] : cranking.amperes;
  return representatives([1], [1], () => CRANKING_NOISE.repeat, 5).map((factor) => {
    const more = Array.from({ length: wanted - readings.length }, () => readings[0]! * factor);
    return changed(record, { "measurements.cranking": { ...cranking, amperes: [...readings, ...more] } });
  });
}

/** Load tests it may show; `repeated` after a first that failed. */
export function loadReadings(
  situation: Situation,
  { policy }: GuidanceSetting,
  record = situation.record,
  repeated = false,
): BatteryRecord[] {
  const limit = loadLimitOf(record);
  const loadAmperes = situation.identity && testLoadAmperes(situation.identity);
  if (limit === undefined || loadAmperes === undefined) return [];
  const margins = abilityCells.map((a) => loadTestMargin(a, limit, policy.unserviceableFraction));
  const highest = record.measurements.restVolts ?? 13;
  return representatives(
    margins,
    abilityMarginal(situation.knowledge),
    () => LOAD_MODEL_UNCERTAINTY_VOLTS,
  ).map((margin) =>
    changed(record, {
      "measurements.loadTest": {
        loadAmperes,
        seconds: 15,
        volts: Math.min(highest, Math.max(0, limit + margin)),
        ...(repeated && { repeated }),
      },
    }),
  );
}

/** After a completed charge and its rest, with the ability read anew as the label allows. */
export function afterCharge(
  situation: Situation,
  setting: GuidanceSetting,
  clear: readonly string[],
): BatteryRecord[] {
  const rested = changed(
    situation.record,
    {
      "conditions.lastEvent": "charge",
      "conditions.chargeCompleted": true,
      "conditions.hoursAtRest": REST_HOURS_AFTER_CHARGE,
    },
    clear,
  );
  const record = changed(rested, { "measurements.restVolts": imaginedRestVolts(rested, CHARGED) });
  const { loadTest } = situation.record.measurements;
  if (loadTest || !situation.identity?.rating)
    return loadReadings(situation, setting, record, loadTest !== undefined);
  return representatives(
    abilityCells,
    abilityMarginal(situation.knowledge),
    (ability) => CRANKING_NOISE.whole * ability,
  ).map((ability) => withCranking(record, situation, ability));
}

const SOME_DAY = "2026-01-01";

/** With a sale a year ago, a receipt and plain terms. */
export function withClaim({ record }: Situation): BatteryRecord {
  const claimedOn = record.conditions?.inspectedOn ?? record.identity.activatedOn ?? SOME_DAY;
  const soldOn = `${String(Number(claimedOn.slice(0, 4)) - 1).padStart(4, "0")}-01-01`;
  return changed(record as BatteryRecord & { warranty?: object }, {
    "warranty.terms": IMAGINED_TERMS,
    "warranty.purchase": { receipt: true, soldOn, pricePaid: "100.00", replacementPrice: "100.00" },
    "warranty.claimedOn": claimedOn,
  });
}

/** With a date code that means one month, two years ago. */
export function withDateCode({ record }: Situation): BatteryRecord {
  const inspectedOn = record.conditions?.inspectedOn ?? record.warranty?.claimedOn ?? SOME_DAY;
  const year = String(Number((record.warranty?.purchase.soldOn ?? inspectedOn).slice(0, 4)) - 1);
  return changed(record, {
    "conditions.inspectedOn": inspectedOn,
    "identity.dateCode": { text: `${year.padStart(4, "0")}-06`, scheme: "yyyy-mm" },
  });
}

/** With a label as most have, as far as it is not read yet. */
export function withLabel({ record }: Situation): BatteryRecord {
  const { chemistry, rating, labelCode, capacityAmpereHours = 60 } = record.identity;
  const amperes = Math.min(2500, Math.max(10, 10 * capacityAmpereHours));
  return changed(record, {
    "identity.chemistry": chemistry === "unknown" ? "flooded" : chemistry,
    ...(!rating && !labelCode && { "identity.rating": { standard: "sae-j537", amperes } }),
  });
}
