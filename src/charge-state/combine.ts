import { COVERAGE_FACTOR_95, type Estimate, estimate } from "../numeric/estimate.js";
import { requireEstimate } from "../numeric/require-estimate.js";
import { requireFinite } from "../numeric/require-finite.js";
import { wrongArgument } from "../numeric/wrong-argument.js";
import type { Derivation } from "../sources/source.js";
import { step } from "./derive.js";
import type { ChargeReading } from "./reading.js";

/** What comparing voltage and gravity shows. */
export type ChargeAgreement =
  | "agree"
  /** Surface charge left, or acid stratified with the weak acid on top, where the hydrometer draws. */
  | "voltage-above-gravity"
  /** A weak or shorted cell among those not measured, a load left on, or acid added. */
  | "voltage-below-gravity"
  /** The voltage only limits the charge from above and does not contradict the gravity. */
  | "voltage-only-bounds";

/** State of charge from voltage and gravity together. */
export interface CombinedCharge {
  readonly stateOfCharge: Estimate;
  readonly consistent: boolean;
  readonly agreement: ChargeAgreement;
  /** (voltage − gravity) in units of its own 95 % half-width; within ±1 when the two agree. */
  readonly normalisedDifference: number;
}

/**
 * Best state of charge from a rest voltage and hydrometer readings of the same battery, and whether they agree.
 *
 * Both scales rest on the same full and empty gravity, so their errors are correlated: the shared part does not average
 * out, and it cancels in the comparison. A disagreement widens the result, it does not choose a side.
 *
 * @param voltage from `chargeFromRestVoltage`
 * @param gravity from `chargeFromGravity`, with the same acid; RangeError otherwise
 * @param derivation a step is pushed here when given
 * @returns the minimum-variance mean of two correlated estimates; with an upper-bound voltage, the gravity alone
 *
 * Equations: c = min(u_acid)², u_d² = u_V² + u_G² − 2c, weight of V = (u_G² − c)/u_d²,
 * u² = (u_V²·u_G² − c²)/u_d², times max(1, Birge ratio). Source: JCGM 100 §5.2 (from memory); factor our choice.
 * @example
 * ```ts
 * import { chargeFromGravity, chargeFromRestVoltage, combineCharge } from "crankworthy/charge-state";
 * const voltage = chargeFromRestVoltage({
 *   volts: 12.9, voltsStandardUncertainty: 0.01, chemistry: "flooded-calcium", temperatureCelsius: 25,
 *   rest: { lastEvent: "charge", hoursAtRest: 24 },
 * });
 * const gravity = chargeFromGravity({
 *   cellReadings: [1.23, 1.23, 1.23, 1.23, 1.23, 1.23], chemistry: "flooded-calcium", temperatureCelsius: 26.7,
 * });
 * const both = "acid" in voltage && "acid" in gravity && combineCharge(voltage, gravity);
 * both && both.agreement; // => "voltage-above-gravity"
 * ```
 */
export function combineCharge(
  voltage: ChargeReading,
  gravity: ChargeReading,
  derivation?: Derivation,
): CombinedCharge {
  if (
    voltage.acid.fullGravity !== gravity.acid.fullGravity ||
    voltage.acid.emptyGravity !== gravity.acid.emptyGravity
  ) {
    wrongArgument("gravity.acid", gravity.acid.fullGravity, "the acid of the voltage reading");
  }
  const v = voltage.stateOfCharge;
  const g = gravity.stateOfCharge;
  for (const [name, { stateOfCharge, acidStandardUncertainty }] of [
    ["voltage", voltage],
    ["gravity", gravity],
  ] as const) {
    requireEstimate(`${name}.stateOfCharge`, stateOfCharge);
    const most = stateOfCharge.standardUncertainty * (1 + 1e-9);
    requireFinite(`${name}.acidStandardUncertainty`, acidStandardUncertainty, 0, most);
  }
  const shared = Math.min(voltage.acidStandardUncertainty, gravity.acidStandardUncertainty) ** 2;
  const ofVoltage = Math.max(0, v.standardUncertainty ** 2 - shared);
  const ofGravity = Math.max(0, g.standardUncertainty ** 2 - shared);
  const ofDifference = ofVoltage + ofGravity;
  // Without any uncertainty of its own neither reading can be weighed.
  requireFinite("gravity.stateOfCharge.standardUncertainty", ofDifference, Number.MIN_VALUE);
  const birge = (v.value - g.value) / Math.sqrt(ofDifference);
  const normalisedDifference = birge / COVERAGE_FACTOR_95;

  const onlyBounds = voltage.bound === "upper" && normalisedDifference >= -1;
  const consistent = onlyBounds || Math.abs(normalisedDifference) <= 1;
  const agreement = onlyBounds
    ? "voltage-only-bounds"
    : consistent
      ? "agree"
      : birge > 0
        ? "voltage-above-gravity"
        : "voltage-below-gravity";
  const weight = onlyBounds ? 0 : ofGravity / ofDifference;
  // Disagreement widens what the two do not share; the common acid is as uncertain as before.
  const widened = onlyBounds ? 1 : Math.max(1, birge * birge);
  const variance = widened * (weight * weight * ofVoltage + (1 - weight) * (1 - weight) * ofGravity) + shared;
  const stateOfCharge = estimate(weight * v.value + (1 - weight) * g.value, Math.sqrt(variance));
  if (derivation) {
    step(
      derivation,
      "difference between voltage and gravity, in 95 % half-widths",
      "(voltage - gravity)/(1.96*u)",
      { voltage: v.value, gravity: g.value, u: Math.sqrt(ofDifference) },
      normalisedDifference,
      "1",
      undefined,
      "jcgm-100",
      "from-memory",
    );
    step(
      derivation,
      "state of charge",
      "weight*voltage + (1 - weight)*gravity",
      { voltage: v.value, gravity: g.value, weight },
      stateOfCharge.value,
      "1",
      stateOfCharge.standardUncertainty,
      "jcgm-100",
      "from-memory",
    );
  }
  return { stateOfCharge, consistent, agreement, normalisedDifference };
}
