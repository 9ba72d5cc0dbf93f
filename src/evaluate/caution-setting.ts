import type { Mutable } from "../numeric/index.js";
import { type CautionSetting, charges, type Evidence, type Verdict } from "../verdict/index.js";
import type { IdentitySection } from "./evaluation.js";
import type { BatteryRecord } from "./record.js";
import { chargingAir } from "./ventilation.js";

/** What decides which cautions are shown. */
export function cautionSetting(
  record: BatteryRecord,
  identity: IdentitySection,
  evidence: Evidence,
  { condition, action, findings }: Verdict,
): CautionSetting {
  const { conditions = {}, measurements, ventilation } = record;
  const setting: Mutable<CautionSetting> = {
    action,
    damage: evidence.damage,
    frozen: evidence.frozen,
    sealed: identity.chemistry === "agm" || identity.chemistry === "gel",
    chargeUnknown: evidence.charge === undefined,
    place: conditions.place ?? "unknown",
    failedCell: condition === "internally-failed",
    otherSystem: evidence.system === "other",
    flat: findings.some(({ code }) => code === "charge-low"),
    acidHandled: measurements.cellGravities !== undefined || evidence.electrolyteLow,
  };
  if (conditions.temperatureCelsius !== undefined) setting.temperatureCelsius = conditions.temperatureCelsius;
  const air = charges(action) || ventilation ? chargingAir(identity, ventilation) : undefined;
  if (air) setting.air = air;
  return setting;
}
