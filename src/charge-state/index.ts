/**
 * State of charge from rest voltage and gravity, and the acid behind both: density, freezing point, cell EMF.
 *
 * @module
 */
export {
  type AcidStrength,
  acidDensityGramsPerCubicCentimetre,
  conductivitySiemensPerMetre,
  massPercent,
  molalityMolesPerKilogram,
  molarityMolesPerLitre25,
} from "./acid.js";
export { type ChargeAgreement, type CombinedCharge, combineCharge } from "./combine.js";
export { type Acid, type AcidFill, acidFills } from "./curves.data.js";
export { type Chemistry, defaultAcid, fullChargeVolts, meanSlopeVolts, openCircuitVolts } from "./curves.js";
export { cellEmfVolts, gravityFromVolts, type VoltageRefusal } from "./emf.js";
export { type FreezingPoint, freezingPointCelsius } from "./freezing.js";
export { type HydrometerCorrection, hydrometerCorrections } from "./from-gravity.data.js";
export {
  type CellGravities,
  chargeFromGravity,
  correctedGravity,
  type GravityChargeReading,
} from "./from-gravity.js";
export {
  chargeFromRestVoltage,
  type FrozenRefusal,
  type RestVoltage,
  type VoltageChargeReading,
} from "./from-voltage.js";
export type { OutsideRange } from "./outside.js";
export type { ChargeNote, ChargeReading } from "./reading.js";
export { type RestEffect, type RestHistory, restEffect } from "./rest.js";
