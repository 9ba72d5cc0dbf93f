import {
  type Estimate,
  type Interval,
  type Mutable,
  type Refusal,
  refuse,
  requireEstimate,
  requireFinite,
  requireKey,
  requirePositive,
  requirePositiveEstimate,
} from "../numeric/index.js";
import { derive } from "../sources/derive.js";
import type { Derivation } from "../sources/index.js";
import {
  type ChargeChemistry,
  type ChargeProfile,
  chargeFactorRange,
  chargeProfiles,
  chargeStopCriteria,
  chargingForbidden,
  deepDischargeJudgement,
  MOST_AMPERES,
  type StopCriterion,
} from "./charge-plan.data.js";

const CAP = { source: "workshop-charge-stop", standing: "read" } as const;
const CAPACITY_RULE = { source: "charger-manual", standing: "read" } as const;

/**
 * Capacity from reserve capacity for the purpose of a charge plan only; a conversion of ratings lives in `ratings`.
 *
 * @param reserveCapacityMinutes [min] (> 0)
 * @param derivation receives the step when given
 * @returns 20 h capacity [Ah], ±10 % standard (our choice)
 *
 * Equation: Ah = RC/2 + 15.5. Source: a charger's manual, page 14 (read).
 * @example
 * ```ts
 * import { chargeCapacityAmpereHours } from "crankworthy/bench";
 * chargeCapacityAmpereHours(100).value; // => 65.5
 * ```
 */
export function chargeCapacityAmpereHours(reserveCapacityMinutes: number, derivation?: Derivation): Estimate {
  requirePositive("reserveCapacityMinutes", reserveCapacityMinutes);
  const value = reserveCapacityMinutes / 2 + 15.5;
  const capacity = { value, standardUncertainty: 0.1 * value };
  const inputs = { reserveCapacityMinutes };
  derive(derivation, "capacity for charging", "minutes / 2 + 15.5", inputs, capacity, "Ah", CAPACITY_RULE);
  return capacity;
}

/**
 * Hours to expect on a charger of constant current that tapers at the end.
 *
 * @param capacityAmpereHours 20 h capacity [Ah] (> 0)
 * @param stateOfCharge at the start [1]; full or more gives 0 hours
 * @param amperes charging current [A] (> 0)
 * @param derivation receives a step for either end when given
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
  derivation?: Derivation,
): Interval {
  requirePositiveEstimate("capacityAmpereHours", capacityAmpereHours);
  requireEstimate("stateOfCharge", stateOfCharge);
  requirePositive("amperes", amperes);
  const bound = (sign: 1 | -1, factor: number): number => {
    const capacity = Math.max(0, capacityAmpereHours.value + sign * capacityAmpereHours.standardUncertainty);
    const charge = stateOfCharge.value - sign * stateOfCharge.standardUncertainty;
    const missing = Math.min(1, Math.max(0, 1 - charge));
    const hours = (factor * capacity * missing) / amperes;
    derive(
      derivation,
      sign < 0 ? "charging hours, at least" : "charging hours, at most",
      "factor × capacity × missing / amperes",
      { factor, capacity, missing, amperes },
      hours,
      "h",
      {
        source: sign < 0 ? chargeFactorRange.lowerSource : chargeFactorRange.upperSource,
        standing: chargeFactorRange.standing,
      },
    );
    return hours;
  };
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
 * @param derivation receives the steps of voltage, current and hours when given
 * @returns the plan [V, A, h]; refused when charging is forbidden and outside −17.8..50 °C
 * @throws RangeError for an unknown kind, pace or obstacle, and for numbers that are none
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
export function planCharge(input: ChargePlanInput, derivation?: Derivation): ChargePlan | ChargePlanRefusal {
  const { chemistry, temperatureCelsius, capacityAmpereHours, stateOfCharge, openCircuitVolts } = input;
  const { obstacles = [], chargerAmperes } = input;
  requireKey("chemistry", chemistry, chargeProfiles);
  requireFinite("temperatureCelsius", temperatureCelsius);
  requirePositiveEstimate("capacityAmpereHours", capacityAmpereHours);
  if (stateOfCharge) requireEstimate("stateOfCharge", stateOfCharge);
  if (openCircuitVolts !== undefined) requireFinite("openCircuitVolts", openCircuitVolts);
  if (chargerAmperes !== undefined) requirePositive("chargerAmperes", chargerAmperes);
  if (input.pace !== undefined) requireKey("pace", input.pace, PACES);
  for (const obstacle of obstacles) requireKey("obstacles", obstacle, chargingForbidden);
  if (obstacles.length > 0)
    return refuse(
      "charging-forbidden",
      `Not to be charged: ${obstacles.join(", ")}.`,
      "A battery that was thawed, inspected and found free of these conditions.",
    );
  const profile: ChargeProfile = chargeProfiles[chemistry];
  const { volts: rows, ceilingVolts } = profile;
  if (temperatureCelsius < rows[0]![0] || temperatureCelsius > rows[rows.length - 1]![0])
    return refuse(
      "temperature-outside-range",
      `No charging voltage is published for ${temperatureCelsius} °C.`,
      "A battery at room temperature.",
    );
  const law = lawVolts(rows, temperatureCelsius);
  const halfWidth =
    profile.voltsHalfWidth + profile.voltsHalfWidthPerKelvin * Math.abs(temperatureCelsius - 25);

  const deep = openCircuitVolts !== undefined && openCircuitVolts < deepDischargeJudgement.belowVolts;
  const pace = deep ? "slow" : (input.pace ?? "standard");
  const [from, to] = profile[pace];
  const currentAmperes = {
    lower: Math.min(MOST_AMPERES, from * capacityAmpereHours.value),
    upper: Math.min(MOST_AMPERES, to * capacityAmpereHours.value),
  };
  const amperes = chargerAmperes ?? (currentAmperes.lower + currentAmperes.upper) / 2;
  const plan: Mutable<ChargePlan> = {
    endVolts: {
      value: Math.min(law, ceilingVolts),
      standardUncertainty: halfWidth / Math.sqrt(3),
    },
    ceilingVolts,
    pace,
    currentAmperes,
    // A small battery is not charged with what a large one may have at most.
    stop: chargeStopCriteria.map((one) =>
      one.code === "charge-current" ? { ...one, value: Math.min(one.value, currentAmperes.upper) } : one,
    ),
    chargerTooStrong: amperes > currentAmperes.upper,
  };
  if (derivation) deriveLimits(derivation, plan, profile, { law, temperatureCelsius, capacityAmpereHours });
  if (stateOfCharge) plan.hours = chargeHours(capacityAmpereHours, stateOfCharge, amperes, derivation);
  if (derivation)
    for (const { code, value, unit, from, to, source, standing } of plan.stop)
      derive(
        derivation,
        `end of a charge, ${code}`,
        value < from
          ? "smaller of the printed limit and the highest current for this battery"
          : "as printed, from..to in the sources",
        { from, to },
        value,
        unit,
        {
          source,
          standing,
        },
      );
  if (deep) plan.judgeAfterHours = deepDischargeJudgement.judgeAfterHours;
  if (deep && derivation)
    derive(
      derivation,
      "hours before a deeply discharged battery is judged",
      "as printed, for a rested voltage below the limit",
      { openCircuitVolts, limit: deepDischargeJudgement.belowVolts },
      deepDischargeJudgement.judgeAfterHours,
      "h",
      deepDischargeJudgement,
    );
  return plan;
}

const PACES = { slow: 0, standard: 0 };

function lawVolts(rows: ChargeProfile["volts"], celsius: number): number {
  let i = 1;
  while (celsius > rows[i]![0]) i++;
  const [coldCelsius, coldVolts] = rows[i - 1]!;
  const [warmCelsius, warmVolts] = rows[i]!;
  return coldVolts + ((celsius - coldCelsius) / (warmCelsius - coldCelsius)) * (warmVolts - coldVolts);
}

function deriveLimits(
  derivation: Derivation,
  plan: ChargePlan,
  profile: ChargeProfile,
  given: {
    readonly law: number;
    readonly temperatureCelsius: number;
    readonly capacityAmpereHours: Estimate;
  },
): void {
  const { law, temperatureCelsius: temperature } = given;
  const { ceilingVolts: ceiling, pace } = plan;
  const provenance = ([source, standing]: ChargeProfile["slowFrom"]) => ({ source, standing });
  const atCeiling = law > ceiling;
  derive(
    derivation,
    "end-of-charge voltage",
    "least of the line over temperature and the ceiling",
    { line: law, ceiling, temperature },
    plan.endVolts,
    "V",
    atCeiling ? provenance(profile.ceilingFrom) : profile,
  );
  const currentFrom = provenance(pace === "slow" ? profile.slowFrom : profile.standardFrom);
  for (const [end, name] of [
    ["lower", "charging current, at least"],
    ["upper", "charging current, at most"],
  ] as const) {
    const share = profile[pace][end === "lower" ? 0 : 1];
    const inputs = { share, capacity: given.capacityAmpereHours.value, most: MOST_AMPERES, pace };
    const formula = "least of share × capacity and the most allowed";
    const amperes = plan.currentAmperes[end];
    derive(derivation, name, formula, inputs, amperes, "A", amperes < MOST_AMPERES ? currentFrom : CAP);
  }
}
