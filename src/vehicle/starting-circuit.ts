import { type Estimate, type Refusal, refuse, requireFinite, requireKey } from "../numeric/index.js";
import type { Derivation, SourceId, Standing } from "../sources/index.js";
import {
  type JudgementOptions,
  judgeLimit,
  type Limit,
  type LimitJudgement,
  type LimitRow,
  limitOf,
  refuseNegative,
} from "./limit.js";
import {
  CRANKING_CURRENTS,
  CRANKING_MINIMUMS,
  CRANKING_TIMES,
  type CrankingMinimumName,
  type CrankingTimeName,
  type EngineClass,
} from "./starting-circuit.data.js";

/** No engine is hotter. */
const MOST_CELSIUS = 1000;

/**
 * Least battery voltage while the starter turns the engine, 12 V.
 *
 * Scope: holds as printed near 70 °F (21 °C) and above; towards the cold it follows the slope of the load-test table
 * (our choice: a cold engine draws more). The spread is −0.1/+0.4 V for `default`, and −0.5 V below 10 °F.
 *
 * @param temperatureCelsius battery and engine [°C] (≥ −18)
 * @param name which printed minimum, default `default`
 * @returns the limit [V]
 *
 * Refuses `below-table` under −18 °C (0 °F).
 *
 * Equation: with F in °F, L = L70 − 0.01·(70 − F) down to 40 °F, then 0.02 V per °F. Source: TM 5-4210-230-14&P-1
 * Table 5 for the slope, workshop manuals for the level.
 * @example
 * ```ts
 * import { minimumCrankingVolts } from "crankworthy/vehicle";
 * minimumCrankingVolts(25).value; // => 9.6
 * minimumCrankingVolts(10).value; // => 9.4
 * minimumCrankingVolts(-30).code; // => "below-table"
 * ```
 */
export function minimumCrankingVolts(
  temperatureCelsius: number,
  name: CrankingMinimumName = "default",
): Limit | Refusal<"below-table"> {
  requireFinite("temperatureCelsius", temperatureCelsius, -273, MOST_CELSIUS);
  requireKey("name", name, CRANKING_MINIMUMS);
  // The table prints 0 °F as -18 °C; both stand for its last row.
  if (temperatureCelsius < -18)
    return refuse("below-table", "The table ends at -18 °C (0 °F).", "A reading in less cold.");
  const row: LimitRow = CRANKING_MINIMUMS[name];
  const fahrenheit = 1.8 * temperatureCelsius + 32;
  const fall = 0.01 * Math.max(0, 70 - fahrenheit) + 0.01 * Math.max(0, 40 - fahrenheit);
  if (fall === 0) return limitOf(row);
  const value = row[0] - fall;
  const lower = fahrenheit < 10 ? value - 0.5 : row[1] - fall;
  return limitOf([value, lower, row[2] - fall, "tm-5-4210-load-table", "our-choice"]);
}

/** The lowest steady voltage while the starter turns the engine, and how it was read. */
export interface CrankingReading {
  /** At the battery posts [V]. */
  readonly crankingVolts: Estimate;
  /** Battery and engine [°C]. */
  readonly temperatureCelsius: number;
  /** The dip of the first 0.1-0.3 s belongs to the starter at standstill; the limits mean the time after it. */
  readonly inrush: "left-out" | "included";
  /** Time between samples [s], where a logger took the reading. */
  readonly sampleIntervalSeconds?: number;
  /** The battery was full and passed a load test before: what the limits presuppose. */
  readonly batteryProved?: boolean;
}

/** Reasons to take a cranking judgement with care. */
export type CrankingDoubt = "battery-not-proved";

/**
 * Judges the voltage while cranking.
 *
 * Scope: 12 V. A low value may come from the battery, the starter, a tight or cold engine or resistance: with an
 * unproved battery it condemns nothing.
 *
 * @param reading see {@link CrankingReading}
 * @returns outcome, margin [V], probability, doubts
 *
 * Refuses `below-table` (see {@link minimumCrankingVolts}), `inrush-included`, and `sampled-too-slowly` for more than
 * 0.5 s between samples (our choice: an engine may start within a second).
 *
 * Source: TM 5-4210-230-14&P-1 Table 5 (slope), workshop manuals of 1998 and 2004 (level).
 * @example
 * ```ts
 * import { judgeCrankingVoltage } from "crankworthy/vehicle";
 * const reading = { crankingVolts: { value: 10.2, standardUncertainty: 0.05 }, temperatureCelsius: 21.2, inrush: "left-out" } as const;
 * const judged = judgeCrankingVoltage(reading);
 * judged.outcome; // => "within-limit"
 * judged.margin.value; // => 0.6
 * judged.doubts; // => ["battery-not-proved"]
 * ```
 */
export function judgeCrankingVoltage(
  reading: CrankingReading,
  options?: JudgementOptions & { readonly minimum?: CrankingMinimumName },
  derivation?: Derivation,
):
  | (LimitJudgement & { readonly doubts: readonly CrankingDoubt[] })
  | Refusal<"below-table" | "inrush-included" | "sampled-too-slowly"> {
  requireKey("inrush", reading.inrush, { "left-out": 0, included: 0 });
  requireFinite("sampleIntervalSeconds", reading.sampleIntervalSeconds ?? 0, 0);
  if (reading.inrush === "included")
    return refuse(
      "inrush-included",
      "The first dip is no cranking voltage.",
      "The lowest voltage after 0.3 s.",
    );
  if ((reading.sampleIntervalSeconds ?? 0) > 0.5)
    return refuse("sampled-too-slowly", "The samples lie too far apart.", "Two readings a second or more.");
  const limit = minimumCrankingVolts(reading.temperatureCelsius, options?.minimum);
  if ("refused" in limit) return limit;
  const judged = judgeLimit(
    "cranking voltage",
    "V",
    reading.crankingVolts,
    "at-least",
    limit,
    options,
    derivation,
  );
  return { ...judged, doubts: reading.batteryProved ? [] : ["battery-not-proved"] };
}

/** Starter current against its class. */
export interface CrankingCurrentJudgement extends LimitJudgement {
  /** `low` is below the printed range, `usual` up to its usual figure, `high` clearly above the upper limit. */
  readonly level: "low" | "usual" | "raised" | "high";
}

/**
 * Judges the starter current against an engine class.
 *
 * @param crankingAmperes steady current, positive towards the starter [A] (≥ 0)
 * @param engineTemperatureCelsius [°C] (50..130 for the warm classes)
 * @param engine class of engine with a published current
 * @returns outcome against the upper limit, margin [A], level; the limit's value is the middle of the printed range
 *
 * Refuses `no-row-for-temperature` where nothing is printed for this temperature, `negative-reading`.
 *
 * Source: a textbook page on starter draw; a workshop manual of 1998 for one 1.9 L engine.
 * @example
 * ```ts
 * import { judgeCrankingCurrent } from "crankworthy/vehicle";
 * const judged = judgeCrankingCurrent({ value: 250, standardUncertainty: 5 }, 80, "4-cylinder-warm");
 * judged.level; // => "high"
 * judged.limit.upper; // => 185
 * ```
 */
export function judgeCrankingCurrent(
  crankingAmperes: Estimate,
  engineTemperatureCelsius: number,
  engine: EngineClass,
  options?: JudgementOptions,
  derivation?: Derivation,
): CrankingCurrentJudgement | Refusal<"no-row-for-temperature" | "negative-reading"> {
  requireFinite("engineTemperatureCelsius", engineTemperatureCelsius);
  requireKey("engine", engine, CRANKING_CURRENTS);
  const [source, rows] = CRANKING_CURRENTS[engine];
  const row = rows.find(([from, to]) => engineTemperatureCelsius >= from && engineTemperatureCelsius <= to);
  if (!row)
    return refuse("no-row-for-temperature", "No figure is printed for this temperature.", "The warm engine.");
  if (crankingAmperes.value < 0) return refuseNegative("starter current");
  const [, , least, usual, lower, upper] = row;
  const limit = limitOf([(lower + upper) / 2, lower, upper, source, lower === upper ? "read" : "computed"]);
  const judged = judgeLimit("cranking current", "A", crankingAmperes, "at-most", limit, options, derivation);
  const amperes = crankingAmperes.value;
  const level =
    judged.outcome === "beyond-limit"
      ? "high"
      : amperes < least
        ? "low"
        : amperes <= usual
          ? "usual"
          : "raised";
  return { ...judged, level };
}

/**
 * Longest cranking and least pause afterwards, so that the starter does not overheat.
 *
 * @param name which rule; default 15 s on, 120 s off (our choice among 15-30 s and 15-120 s)
 * @returns times [s]; no pause where the source states none
 * @example
 * ```ts
 * import { crankingTime } from "crankworthy/vehicle";
 * crankingTime().longestSeconds; // => 15
 * crankingTime("workshop-1998").pauseSeconds; // => 20
 * ```
 */
export function crankingTime(name: CrankingTimeName = "default"): {
  readonly longestSeconds: number;
  readonly pauseSeconds?: number;
  readonly source: SourceId;
  readonly standing: Standing;
} {
  requireKey("name", name, CRANKING_TIMES);
  const [longestSeconds, pauseSeconds, source, standing] = CRANKING_TIMES[name];
  return pauseSeconds === null
    ? { longestSeconds, source, standing }
    : { longestSeconds, pauseSeconds, source, standing };
}
