import {
  type Estimate,
  type Refusal,
  refuse,
  requireEstimate,
  requireFinite,
  requireKey,
} from "../numeric/index.js";
import type { Derivation } from "../sources/index.js";
import {
  BAND_CELSIUS,
  type BandName,
  CHARGING_RISES,
  type ChargingRiseName,
  REGULATED_BANDS,
} from "./charging-circuit.data.js";
import { type JudgementOptions, judgeLimit, type Limit, type LimitJudgement, limitOf } from "./limit.js";

/** How the charging voltage is set. */
export type ChargingControl = "fixed-regulator" | "computer-controlled" | "unknown";

const CONTROLS: Readonly<Record<ChargingControl, 0>> = {
  "fixed-regulator": 0,
  "computer-controlled": 0,
  unknown: 0,
};

/** A band of regulated voltage at one temperature [V]. */
export interface RegulatedBand {
  readonly lower: Limit;
  readonly upper: Limit;
  /** Change of the two edges with temperature [V/K]. */
  readonly lowerSlope: number;
  readonly upperSlope: number;
}

/**
 * Band of the regulated voltage of a 12 V system, straight lines between the printed temperatures.
 *
 * @param regulatorCelsius surroundings of the regulator, not of the battery [°C] (−20..80)
 * @param name one maker's band, or the envelope of the three (default)
 * @returns edges [V] (those of the envelope ±0.1 V, our choice) and their slopes [V/K]
 *
 * Refuses `outside-table` beyond −20..80 °C.
 *
 * Source: workshop manuals, charging pages (2018, and one of unknown year); the envelope is computed from them.
 * @example
 * ```ts
 * import { regulatedBand } from "crankworthy/vehicle";
 * regulatedBand(20).upper.value; // => 15.0
 * regulatedBand(40, "first-maker").lower.value; // => 13.45
 * ```
 */
export function regulatedBand(
  regulatorCelsius: number,
  name: BandName = "envelope",
): RegulatedBand | Refusal<"outside-table"> {
  requireFinite("regulatorCelsius", regulatorCelsius);
  if (name !== "envelope") requireKey("name", name, REGULATED_BANDS);
  if (regulatorCelsius < -20 || regulatorCelsius > 80)
    return refuse("outside-table", "The bands are printed for -20..80 °C.", "A reading in that range.");
  // The first maker's lower and the second maker's upper edge bound all three bands at every printed temperature.
  const envelope = name === "envelope";
  const low = REGULATED_BANDS[envelope ? "first-maker" : name][0];
  const [, high, source] = REGULATED_BANDS[envelope ? "second-maker" : name];
  const i = regulatorCelsius >= 60 ? 2 : regulatorCelsius >= 20 ? 1 : 0;
  const from = BAND_CELSIUS[i]!;
  const width = BAND_CELSIUS[i + 1]! - from;
  const beyond = regulatorCelsius - from;
  const edge = (values: readonly number[], slope: number): Limit => {
    const value = values[i]! + slope * beyond;
    const spread = envelope ? 0.1 : 0;
    return limitOf([
      value,
      value - spread,
      value + spread,
      envelope ? "vehicle-defaults" : source,
      !envelope && beyond % width === 0 ? "read" : "computed",
    ]);
  };
  const lowerSlope = (low[i + 1]! - low[i]!) / width;
  const upperSlope = (high[i + 1]! - high[i]!) / width;
  return { lower: edge(low, lowerSlope), upper: edge(high, upperSlope), lowerSlope, upperSlope };
}

/** A regulated voltage and how it came about. */
export interface ChargingReading {
  /** At the battery posts, engine running [V]. */
  readonly chargingVolts: Estimate;
  /** Surroundings of the regulator [°C]. */
  readonly regulatorCelsius: Estimate;
  readonly control: ChargingControl;
  /** Current into the battery [A]. */
  readonly chargeAmperes?: number;
  readonly engineRpm?: number;
}

/** What a charging voltage says. */
export type ChargingOutcome =
  | "within-band"
  | "below-band"
  | "above-band"
  | "not-established"
  | "no-judgement";

/** Reasons to take a charging judgement with care. */
export type ChargingDoubt = "charge-current-above-10-a" | "engine-below-2500-rpm";

/** A charging voltage against a band. */
export interface ChargingJudgement {
  /** `no-judgement`: normal or not, a computer may have set this value. */
  readonly outcome: ChargingOutcome;
  readonly lower: LimitJudgement;
  readonly upper: LimitJudgement;
  readonly doubts: readonly ChargingDoubt[];
}

/**
 * Judges the regulated voltage of a 12 V system.
 *
 * Scope: flooded or AGM battery nearly full, engine running. Where a computer sets the voltage, or nobody knows,
 * 12.2-15.4 V is not judged; only values clearly outside are. The uncertainty of the temperature enters through the
 * slope of the edges.
 *
 * @param reading voltage [V], temperature of the regulator's surroundings [°C] (−20..80), control
 * @param band default `envelope`
 * @returns outcome, and the judgement against either edge [V]
 *
 * Refuses `outside-table` (fixed regulator beyond −20..80 °C) and `charging-not-begun` below 1200 rpm.
 *
 * Source: workshop manuals, charging pages; TM 9-6140-200-14 p. 16 (speed); from memory for computer control.
 * @example
 * ```ts
 * import { judgeChargingVoltage } from "crankworthy/vehicle";
 * const volts = { value: 12.6, standardUncertainty: 0.03 };
 * const temperature = { value: 40, standardUncertainty: 5 };
 * judgeChargingVoltage({ chargingVolts: volts, regulatorCelsius: temperature, control: "fixed-regulator" }).outcome; // => "below-band"
 * judgeChargingVoltage({ chargingVolts: volts, regulatorCelsius: temperature, control: "unknown" }).outcome; // => "no-judgement"
 * ```
 */
export function judgeChargingVoltage(
  reading: ChargingReading,
  band: BandName = "envelope",
  options?: JudgementOptions,
  derivation?: Derivation,
): ChargingJudgement | Refusal<"outside-table" | "charging-not-begun"> {
  const { chargingVolts, regulatorCelsius, control, chargeAmperes = 0, engineRpm = 2500 } = reading;
  requireEstimate("chargingVolts", chargingVolts);
  requireEstimate("regulatorCelsius", regulatorCelsius);
  requireKey("control", control, CONTROLS);
  if (band !== "envelope") requireKey("band", band, REGULATED_BANDS);
  requireFinite("chargeAmperes", chargeAmperes);
  requireFinite("engineRpm", engineRpm, 0);
  if (engineRpm < 1200) return refuse("charging-not-begun", "Charging begins near 1200 rpm.", "2500 rpm.");
  const fixed = control === "fixed-regulator";
  const found: RegulatedBand | Refusal<"outside-table"> = fixed
    ? regulatedBand(regulatorCelsius.value, band)
    : {
        lower: limitOf([12.2, 12.2, 12.2, "computer-controlled-charging", "from-memory"]),
        upper: limitOf([15.4, 15.4, 15.4, "vehicle-defaults", "our-choice"]),
        lowerSlope: 0,
        upperSlope: 0,
      };
  if ("refused" in found) return found;
  const { value, standardUncertainty: u } = chargingVolts;
  const judge = (side: "at-least" | "at-most", limit: Limit, slope: number) => {
    const measured = {
      value,
      standardUncertainty: Math.hypot(u, slope * regulatorCelsius.standardUncertainty),
    };
    return judgeLimit("charging voltage", "V", measured, side, limit, options, derivation);
  };
  const lower = judge("at-least", found.lower, found.lowerSlope);
  const upper = judge("at-most", found.upper, found.upperSlope);
  let outcome: ChargingOutcome = fixed ? "not-established" : "no-judgement";
  if (upper.outcome === "beyond-limit") outcome = "above-band";
  else if (lower.outcome === "beyond-limit") outcome = "below-band";
  else if (fixed && lower.outcome === "within-limit" && upper.outcome === "within-limit")
    outcome = "within-band";
  const doubts: ChargingDoubt[] = [];
  if (chargeAmperes > 10) doubts.push("charge-current-above-10-a");
  if (engineRpm < 2500) doubts.push("engine-below-2500-rpm");
  return { outcome, lower, upper, doubts };
}

/**
 * Judges how far the running engine lifts the battery voltage above the engine-off value.
 *
 * Scope: fixed regulator. The two voltages are taken as independent, which overstates the uncertainty when one meter
 * read both.
 *
 * @param engineOffVolts at the posts, engine off [V]
 * @param runningVolts at the posts, engine running [V]
 * @param rule which limit, unloaded at most 2.0 (1984) or 2.5 V, at least 0.5 V either way
 * @param control computer control makes a small or no rise normal
 * @returns outcome, margin [V], probability
 *
 * Refuses `may-be-computer-controlled` unless the regulator is known to be fixed.
 *
 * Source: a truck maker's workshop manual (1984), a car maker's charging bulletin.
 * @example
 * ```ts
 * import { judgeChargingRise } from "crankworthy/vehicle";
 * const off = { value: 12.6, standardUncertainty: 0.02 };
 * const lights = { value: 13.8, standardUncertainty: 0.02 };
 * judgeChargingRise(off, lights, "loaded-at-least", "fixed-regulator").outcome; // => "within-limit"
 * ```
 */
export function judgeChargingRise(
  engineOffVolts: Estimate,
  runningVolts: Estimate,
  rule: ChargingRiseName,
  control: ChargingControl,
  options?: JudgementOptions,
  derivation?: Derivation,
): LimitJudgement | Refusal<"may-be-computer-controlled"> {
  requireKey("control", control, CONTROLS);
  requireKey("rule", rule, CHARGING_RISES);
  requireEstimate("engineOffVolts", engineOffVolts);
  requireEstimate("runningVolts", runningVolts);
  if (control !== "fixed-regulator")
    return refuse(
      "may-be-computer-controlled",
      "A computer may hold the voltage down.",
      "How the voltage is controlled.",
    );
  const rise: Estimate = {
    value: runningVolts.value - engineOffVolts.value,
    standardUncertainty: Math.hypot(runningVolts.standardUncertainty, engineOffVolts.standardUncertainty),
  };
  const side = rule.includes("at-most") ? "at-most" : "at-least";
  return judgeLimit("charging rise", "V", rise, side, limitOf(CHARGING_RISES[rule]), options, derivation);
}
