import {
  type Estimate,
  type Interval,
  type Mutable,
  type Refusal,
  refuse,
  requireFinite,
} from "../numeric/index.js";
import {
  type ChargeChemistry,
  type ChargeProfile,
  chargeProfiles,
  chargeStopCriteria,
  type chargingForbidden,
  type StopCriterion,
} from "./charge-plan.data.js";

/** Ampere-hours to put in per ampere-hour missing: 1.25 and 1.6 in two sources, by the taper of the charger. */
export const chargeFactorRange = { lower: 1.25, upper: 1.6 } as const;

/** Hours on the charger after which a deeply discharged battery may be judged, by what the charger can give. */
export const deepDischargeJudgement = {
  /** Below this rested voltage: slow only, may take two to three days [V]. */
  belowVolts: 10,
  judgeAfterHours: 48,
  /** Below this voltage: current still too small to measure after these hours [V, charger V, h]. */
  noCurrentBelowVolts: 11,
  noCurrentHours: [
    [16, 4],
    [14, 8],
    [0, 16],
  ],
} as const;

/**
 * Capacity from reserve capacity for the purpose of a charge plan only; a conversion of ratings lives in `ratings`.
 *
 * @param reserveCapacityMinutes [min] (> 0)
 * @returns 20 h capacity [Ah], ±10 % standard (our choice)
 *
 * Equation: Ah = RC/2 + 15.5. Source: a charger's manual, page 14 (read).
 * @example
 * ```ts
 * import { chargeCapacityAmpereHours } from "crankworthy/bench";
 * chargeCapacityAmpereHours(100).value; // => 65.5
 * ```
 */
export function chargeCapacityAmpereHours(reserveCapacityMinutes: number): Estimate {
  requireFinite("reserveCapacityMinutes", reserveCapacityMinutes, Number.MIN_VALUE);
  const value = reserveCapacityMinutes / 2 + 15.5;
  return { value, standardUncertainty: 0.1 * value };
}

/**
 * Hours to expect on a charger of constant current that tapers at the end.
 *
 * @param capacityAmpereHours 20 h capacity [Ah] (> 0)
 * @param stateOfCharge at the start [1]; full or more gives 0 hours
 * @param amperes charging current [A] (> 0)
 * @returns interval [h]: factor 1.25 with capacity and missing charge one u low, 1.6 with both one u high
 *
 * Equation: hours = factor·Ah·(1 − SoC)/A. Source: a charger's manual (1.25) and a vehicle battery page (1.6), both read.
 * @example
 * ```ts
 * import { chargeHours } from "crankworthy/bench";
 * const sure = (value: number) => ({ value, standardUncertainty: 0 });
 * chargeHours(sure(60), sure(0.5), 5).lower; // => 7.5
 * chargeHours(sure(60), sure(0.5), 5).upper; // => 9.6
 * ```
 */
export function chargeHours(
  capacityAmpereHours: Estimate,
  stateOfCharge: Estimate,
  amperes: number,
): Interval {
  requireFinite("capacityAmpereHours", capacityAmpereHours.value, Number.MIN_VALUE);
  requireFinite("stateOfCharge", stateOfCharge.value);
  requireFinite("amperes", amperes, Number.MIN_VALUE);
  const bound = (sign: 1 | -1, factor: number): number =>
    (factor *
      Math.max(0, capacityAmpereHours.value + sign * capacityAmpereHours.standardUncertainty) *
      Math.min(1, Math.max(0, 1 - stateOfCharge.value + sign * stateOfCharge.standardUncertainty))) /
    amperes;
  return { lower: bound(-1, chargeFactorRange.lower), upper: bound(1, chargeFactorRange.upper) };
}

export type ChargeObstacle = keyof typeof chargingForbidden;

export interface ChargePlanInput {
  readonly chemistry: ChargeChemistry;
  /** Of the electrolyte [°C] (−17.8..50). */
  readonly temperatureCelsius: number;
  /** 20 h capacity [Ah]; see {@link chargeCapacityAmpereHours} when only the reserve capacity is known. */
  readonly capacityAmpereHours: Estimate;
  readonly stateOfCharge?: Estimate;
  /** Rested voltage [V]; below 10 V the plan is slow whatever was asked. */
  readonly openCircuitVolts?: number;
  readonly pace?: "slow" | "standard";
  /** What the charger gives [A]; default the middle of the advised current. */
  readonly chargerAmperes?: number;
  readonly obstacles?: readonly ChargeObstacle[];
}

export interface ChargePlan {
  /** Voltage at which the charge tapers and ends. */
  readonly endVolts: Estimate;
  readonly ceilingVolts: number;
  readonly pace: "slow" | "standard";
  readonly currentAmperes: Interval;
  /** Absent when the state of charge is unknown. */
  readonly hours?: Interval;
  readonly stop: readonly StopCriterion[];
  /** Deeply discharged: hours after which it may be judged. */
  readonly judgeAfterHours?: number;
  /** The charger gives more than advised. */
  readonly chargerTooStrong: boolean;
}

export type ChargePlanRefusal = Refusal<"charging-forbidden" | "temperature-outside-range">;

/**
 * Numbers for the person who charges: voltage, current, hours to expect, when to stop. Advice, not control of a device.
 *
 * @param input see {@link ChargePlanInput}
 * @returns the plan [V, A, h]; refused when charging is forbidden and outside −17.8..50 °C
 *
 * The end voltage never exceeds the ceiling of the kind (gel 14.4 V, AGM 15.0 V, flooded 15.5 V), so cold gel is charged at
 * its ceiling. Current is capped at 50 A. Source: rows and standing in {@link chargeProfiles}.
 * @example
 * ```ts
 * import { planCharge } from "crankworthy/bench";
 * const plan = planCharge({
 *   chemistry: "flooded",
 *   temperatureCelsius: 23.9,
 *   capacityAmpereHours: { value: 60, standardUncertainty: 3 },
 *   stateOfCharge: { value: 0.5, standardUncertainty: 0.09 },
 * });
 * "endVolts" in plan && plan.endVolts.value; // => 14.4
 * "endVolts" in plan && plan.currentAmperes.upper; // => 7.8
 * ```
 */
export function planCharge(input: ChargePlanInput): ChargePlan | ChargePlanRefusal {
  const { chemistry, temperatureCelsius, capacityAmpereHours, stateOfCharge, openCircuitVolts } = input;
  requireFinite("temperatureCelsius", temperatureCelsius);
  requireFinite("capacityAmpereHours", capacityAmpereHours.value, Number.MIN_VALUE);
  if (input.obstacles?.length)
    return refuse(
      "charging-forbidden",
      `Not to be charged: ${input.obstacles.join(", ")}.`,
      "A battery that was thawed, inspected and found free of these conditions.",
    );
  const profile: ChargeProfile = chargeProfiles[chemistry];
  const rows = profile.volts;
  if (temperatureCelsius < rows[0]![0] || temperatureCelsius > rows[rows.length - 1]![0])
    return refuse(
      "temperature-outside-range",
      `No charging voltage is published for ${temperatureCelsius} °C.`,
      "A battery at room temperature.",
    );
  let i = 1;
  while (temperatureCelsius > rows[i]![0]) i++;
  const [coldCelsius, coldVolts] = rows[i - 1]!;
  const [warmCelsius, warmVolts] = rows[i]!;
  const law =
    coldVolts + ((temperatureCelsius - coldCelsius) / (warmCelsius - coldCelsius)) * (warmVolts - coldVolts);
  const halfWidth =
    profile.voltsHalfWidth + profile.voltsHalfWidthPerKelvin * Math.abs(temperatureCelsius - 25);

  const deep = openCircuitVolts !== undefined && openCircuitVolts < deepDischargeJudgement.belowVolts;
  const pace = deep ? "slow" : (input.pace ?? "standard");
  const mostAmperes = 50;
  const [from, to] = profile[pace];
  const currentAmperes = {
    lower: Math.min(mostAmperes, from * capacityAmpereHours.value),
    upper: Math.min(mostAmperes, to * capacityAmpereHours.value),
  };
  const amperes = input.chargerAmperes ?? (currentAmperes.lower + currentAmperes.upper) / 2;
  const plan: Mutable<ChargePlan> = {
    endVolts: {
      value: Math.min(law, profile.ceilingVolts),
      standardUncertainty: halfWidth / Math.sqrt(3),
    },
    ceilingVolts: profile.ceilingVolts,
    pace,
    currentAmperes,
    stop: chargeStopCriteria,
    chargerTooStrong: amperes > currentAmperes.upper,
  };
  if (stateOfCharge) plan.hours = chargeHours(capacityAmpereHours, stateOfCharge, amperes);
  if (deep) plan.judgeAfterHours = deepDischargeJudgement.judgeAfterHours;
  return plan;
}
