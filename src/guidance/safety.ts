import { chargingAir } from "../evaluate/ventilation.js";
import { COLD_TO_CHARGE, conformanceProbability, type FindingCode } from "../verdict/index.js";
import { HOTTEST_TO_CHARGE } from "./limits.data.js";
import { lookedOver } from "./risk.js";
import type { GuidanceSetting, Situation } from "./situation.js";

/** Whether a finding was made. */
export const found = ({ evaluation }: Situation, ...codes: FindingCode[]): boolean =>
  evaluation?.findings.some(({ code }) => codes.includes(code)) ?? false;

/** Damage, ice, or a rule that sets the battery apart: nothing is measured on it any more. */
export function hazardous({ record, evaluation }: Situation): boolean {
  const { damage = [], ice } = record.conditions ?? {};
  return damage.length > 0 || ice === true || evaluation?.verdict.action === "isolate";
}

/** It may be moved and warmed: it was looked over, and nothing tells of danger but acid that is near its freezing point. */
function mayBeMoved(situation: Situation): boolean {
  return (
    lookedOver(situation.record) &&
    !hazardous(situation) &&
    !found(situation, "cell-missing", "cell-spread", "reversed-polarity", "other-system-voltage")
  );
}

/** Current may be drawn from it or its cells opened. */
export const mayBeHandled = (situation: Situation): boolean =>
  mayBeMoved(situation) && !found(situation, "near-freezing");

/** The voltmeter says: a 12 V battery, connected the right way round. */
function isTwelveVolt(situation: Situation): boolean {
  return (
    situation.record.measurements.restVolts !== undefined &&
    situation.evaluation !== undefined &&
    situation.evaluation.verdict.decidedBy !== "system-voltage"
  );
}

const celsiusOf = ({ record }: Situation): number | undefined => record.conditions?.temperatureCelsius;

/** May be brought to room temperature. */
export const mayBeTempered = (situation: Situation): boolean =>
  mayBeMoved(situation) && isTwelveVolt(situation);

/** Ready for a charger but for its temperature and the level of its acid. */
export function mayBePrepared(situation: Situation): boolean {
  const { record } = situation;
  return (
    mayBeHandled(situation) &&
    isTwelveVolt(situation) &&
    // The right voltage depends on the kind: gel is spoilt, and may vent, at what suits flooded cells.
    record.identity.chemistry !== "unknown" &&
    record.conditions?.chargeCompleted !== true
  );
}

/** The room, as far as it was described, does not carry the gas of a charge. */
export function roomLacksAir({ identity, record: { ventilation } }: Situation): boolean {
  if (!ventilation) return false;
  // No fresh air at all is too little for any battery, also for one of unknown capacity.
  if (ventilation.airFlowCubicMetresPerHour === 0) return true;
  return identity !== undefined && chargingAir(identity, ventilation)?.enough === false;
}

/** May be put on a charger now. */
export const mayBeCharged = (situation: Situation): boolean =>
  readyForCharger(situation) && !roomLacksAir(situation);

/** May be put on a charger, in a room that carries it. */
export function readyForCharger(situation: Situation): boolean {
  const celsius = celsiusOf(situation);
  return (
    mayBePrepared(situation) &&
    situation.record.conditions?.electrolyteLow !== true &&
    celsius !== undefined &&
    celsius >= COLD_TO_CHARGE &&
    celsius <= HOTTEST_TO_CHARGE
  );
}

/** Hours after charging in which a battery still gasses; no load before. Our choice, after the rest of the charge step. */
const GASSING_HOURS = 1;

/** May be put under a heavy load now: charged, not just charged, acid over the plates, above freezing. */
export function mayBeLoaded(situation: Situation, { policy }: GuidanceSetting): boolean {
  const { record, evaluation } = situation;
  const { lastEvent, hoursAtRest = 0, electrolyteLow } = record.conditions ?? {};
  const celsius = celsiusOf(situation);
  const charge = evaluation?.charge;
  if (!mayBeHandled(situation) || !isTwelveVolt(situation)) return false;
  if (electrolyteLow || celsius === undefined || celsius < 0) return false;
  if (lastEvent === "charge" && hoursAtRest < GASSING_HOURS) return false;
  if (found(situation, "cell-missing-unproven", "cell-spread-unproven")) return false;
  if (charge?.bound !== "two-sided") return false;
  const sufficient = conformanceProbability(charge.stateOfCharge, { lower: policy.sufficientCharge });
  return sufficient >= (record.conditions?.chargeCompleted ? 0.5 : policy.sufficientChargeProbability);
}
