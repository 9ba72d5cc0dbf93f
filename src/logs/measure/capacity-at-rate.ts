import {
  type Estimate,
  type Refusal,
  rectangularUncertainty,
  refuse,
  requireFinite,
  requirePositive,
} from "../../numeric/index.js";
import { type CapacityProfile, capacityAt25Celsius, type OutsideTable } from "../../temperature/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";
import { chargeMoved } from "./charge-moved.js";
import { blockMean } from "./scatter.js";
import { sliceSeries } from "./slice-series.js";

/** What a discharge gave. */
export interface CapacityAtRate {
  /** From the first loaded row to the end voltage [h]. */
  readonly hours: Estimate;
  /** [Ah] (≥ 0). */
  readonly ampereHours: Estimate;
  /** Charge over time; positive, out of the battery [A]. */
  readonly dischargeAmperes: Estimate;
  /** `lower`: the capacity is this or more, how much more is not known; see `reasons`. */
  readonly bound: "two-sided" | "lower";
  readonly reasons: readonly ("end-voltage-not-reached" | "start-not-full")[];
  readonly doubts: readonly ("current-not-steady" | "interrupted")[];
  /** Standard deviation of the current over time, while loaded, as a share of its mean. */
  readonly currentSpread: number;
  /** Time without load inside the discharge [s]. */
  readonly interruptedSeconds: number;
  /** Lowest under load [V]; the last loaded row may be an edge row. */
  readonly leastVolts: number;
  /** Mean over the discharge, where the log has a temperature [°C]. */
  readonly temperatureCelsius?: Estimate;
  /** The charge referred to 25 °C, where a profile is given and the log has a temperature [Ah]. */
  readonly ampereHoursAt25Celsius?: Estimate | OutsideTable;
}

/** Settings of {@link capacityAtRate}. */
export interface CapacityOptions {
  /** Voltage under load at which the discharge counts as over [V] (> 0). Required. */
  readonly endVolts: number;
  /** Whether the battery was fully charged at the start. A voltage cannot tell: the caller knows, or the result is refused. */
  readonly startedFull?: boolean;
  /** A row draws load from this current on [A] (> 0). Default 0.25 (our choice). */
  readonly loadAmperes?: number;
  /** Give what was drawn as a lower bound where the end voltage was not reached or the start was not full. Default false. */
  readonly acceptLowerBound?: boolean;
  /** How capacity changes with temperature; without it no charge at 25 °C is given. */
  readonly temperatureProfile?: CapacityProfile;
  /** Uncertainty of the current meter common to all rows (zero error) [A] (≥ 0). Default 0: not included. */
  readonly amperesStandardUncertainty?: number;
  /** Relative standard uncertainty of the current meter's gain (0..1). Default 0: not included. */
  readonly gainStandardUncertainty?: number;
  /** Standard uncertainty of the voltage at the end [V] (≥ 0). Default 0: not included. */
  readonly voltsStandardUncertainty?: number;
}

type CapacityRefusal = Refusal<
  "out-of-order" | "no-discharge" | "start-not-known" | "start-not-full" | "end-voltage-not-reached"
>;

/**
 * Capacity at the rate of a recorded discharge: hours, ampere-hours and mean current from full to the end voltage.
 *
 * Scope: one discharge, from the first loaded row to the straight line between rows crossing the end voltage; rows after it do
 * not count. The uncertainty holds: when load began and the end voltage was crossed (rectangular over the step between rows
 * at the start, and at the end where the end voltage was not reached; the voltage's uncertainty over its slope at the end), what the current did between rows, the
 * meter's zero and gain where given. Not in it: the state of charge at the start. Temperature: the mean of the rows that have
 * one, wherever the sensor sits; capacity at 25 °C only by a profile that the caller names.
 *
 * @param series rows in order of time
 * @param options end voltage [V] is required
 * @returns hours, ampere-hours, amperes
 *
 * Refuses `out-of-order`, `no-discharge`, `start-not-known` (nobody says whether it was full), and, unless a lower bound is
 * accepted, `start-not-full`, `end-voltage-not-reached`.
 *
 * Equation: Q = ∫ I dt; mean current Q/t; C25 = Q/(percent of 25 °C/100).
 * @example
 * ```ts
 * import { capacityAtRate } from "crankworthy/logs";
 * const seconds = Float64Array.of(0, 1, 3601, 7201, 7202);
 * const series = { seconds, volts: Float64Array.of(12.9, 12.5, 11.5, 10.5, 11), amperes: Float64Array.of(0, -3, -3, -3, 0) };
 * capacityAtRate(series, { endVolts: 10.5, startedFull: true }).ampereHours.value; // => 6.0
 * capacityAtRate(series, { endVolts: 10.2, startedFull: true }).code; // => "end-voltage-not-reached"
 * capacityAtRate(series, { endVolts: 10.5 }).code; // => "start-not-known"
 * ```
 */
export function capacityAtRate(
  series: LogSeries,
  options: CapacityOptions,
): CapacityAtRate | CapacityRefusal {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  const { endVolts, startedFull, loadAmperes = 0.25, acceptLowerBound = false } = options;
  const {
    amperesStandardUncertainty = 0,
    gainStandardUncertainty = 0,
    voltsStandardUncertainty = 0,
  } = options;
  requirePositive("endVolts", endVolts);
  requirePositive("loadAmperes", loadAmperes);
  requireFinite("gainStandardUncertainty", gainStandardUncertainty, 0, 1);
  requireFinite("voltsStandardUncertainty", voltsStandardUncertainty, 0, 1e12);
  requireFinite("amperesStandardUncertainty", amperesStandardUncertainty, 0, 1e12);
  const { seconds, volts, amperes } = series;
  const loaded = (i: number) => amperes[i]! <= -loadAmperes;
  let first = 0;
  while (first < seconds.length && !loaded(first)) first++;
  let last = first;
  for (let i = first; i < seconds.length; i++) {
    if (!loaded(i)) continue;
    last = i;
    if (volts[i]! <= endVolts) break;
  }
  if (!(last > first && seconds[last]! > seconds[first]!))
    return refuse(
      "no-discharge",
      "No two rows draw this much current.",
      "A lower threshold, or a discharge.",
    );
  if (startedFull === undefined)
    return refuse("start-not-known", "Was it full at the start?", "The charge before the discharge.");
  const reasons: CapacityAtRate["reasons"][number][] = [];
  if (!(volts[last]! <= endVolts)) reasons.push("end-voltage-not-reached");
  if (!startedFull) reasons.push("start-not-full");
  if (reasons[0] && !acceptLowerBound)
    return refuse(
      reasons[0],
      "What was drawn is less than the capacity.",
      "A discharge from full to the end voltage, or accepting a lower bound.",
    );
  const moved = chargeMoved(sliceSeries(series, seconds[first]!, seconds[last]!), {
    amperesStandardUncertainty,
  });
  if ("refused" in moved) return refuse("no-discharge", "No two rows draw current.", "A discharge.");
  const end = crossing(series, first, last, endVolts);
  const reached = reasons[0] !== "end-voltage-not-reached";
  const gapBefore = first > 0 ? seconds[first]! - seconds[first - 1]! : 0;
  const gapAfter = !reached && last + 1 < seconds.length ? seconds[last + 1]! - seconds[last]! : 0;
  const timeUncertainty = Math.hypot(
    rectangularUncertainty(gapBefore),
    rectangularUncertainty(gapAfter),
    end.voltsPerSecond > 0 ? Math.min(voltsStandardUncertainty / end.voltsPerSecond, moved.seconds) : 0,
  );
  const duration = moved.seconds - end.cutSeconds;
  const charge = moved.outAmpereHours.value - end.cutAmpereSeconds / 3600;
  const mean = (charge * 3600) / duration;
  const chargeUncertainty = Math.hypot(
    moved.outAmpereHours.standardUncertainty,
    charge * gainStandardUncertainty,
    (mean * timeUncertainty) / 3600,
  );
  const { spread, interruptedSeconds, leastVolts } = steadiness(series, first, last, mean, loadAmperes);
  const doubts: CapacityAtRate["doubts"][number][] = [];
  if (spread > STEADY_SHARE) doubts.push("current-not-steady");
  if (interruptedSeconds > 0) doubts.push("interrupted");
  const ampereHours = { value: charge, standardUncertainty: chargeUncertainty };
  const meanCurrentUncertainty = Math.hypot(
    (moved.outAmpereHours.standardUncertainty * 3600) / duration,
    mean * gainStandardUncertainty,
  );
  return {
    hours: { value: duration / 3600, standardUncertainty: timeUncertainty / 3600 },
    ampereHours,
    dischargeAmperes: { value: mean, standardUncertainty: meanCurrentUncertainty },
    bound: reasons.length > 0 ? "lower" : "two-sided",
    reasons,
    doubts,
    currentSpread: spread,
    interruptedSeconds,
    leastVolts,
    ...withTemperature(series, first, last, ampereHours, options.temperatureProfile),
  };
}

/** A current that varies more is no single rate (our choice). */
const STEADY_SHARE = 0.05;

/** What to take off when the end voltage was crossed before the last row. */
function crossing({ seconds, volts, amperes }: LogSeries, first: number, last: number, endVolts: number) {
  const step = seconds[last]! - seconds[last - 1]!;
  const fall = volts[last - 1]! - volts[last]!;
  const voltsPerSecond = step > 0 ? Math.max(0, fall / step) : 0;
  if (!(volts[last]! < endVolts) || !(fall > 0) || last - 1 < first)
    return { cutSeconds: 0, cutAmpereSeconds: 0, voltsPerSecond };
  // Where the row before was below too (an edge row without load between), nothing is cut.
  const share = Math.min(1, Math.max(0, (endVolts - volts[last]!) / fall));
  const current = amperes[last]! + (amperes[last - 1]! - amperes[last]!) * share;
  const cutSeconds = share * step;
  return { cutSeconds, cutAmpereSeconds: (-(amperes[last]! + current) / 2) * cutSeconds, voltsPerSecond };
}

function steadiness(series: LogSeries, first: number, last: number, mean: number, loadAmperes: number) {
  const { seconds, volts, amperes } = series;
  let [squares, time, interruptedSeconds, leastVolts] = [0, 0, 0, volts[first]!];
  for (let i = first + 1; i <= last; i++) {
    const step = seconds[i]! - seconds[i - 1]!;
    if (amperes[i]! > -loadAmperes) {
      interruptedSeconds += step;
      continue;
    }
    leastVolts = Math.min(leastVolts, volts[i]!);
    squares += step * (-amperes[i]! - mean) ** 2;
    time += step;
  }
  return { spread: time > 0 ? Math.sqrt(squares / time) / mean : 0, interruptedSeconds, leastVolts };
}

function withTemperature(
  series: LogSeries,
  first: number,
  last: number,
  ampereHours: Estimate,
  profile: CapacityProfile | undefined,
): Pick<CapacityAtRate, "temperatureCelsius" | "ampereHoursAt25Celsius"> {
  const rows = series.temperatureCelsius?.subarray(first, last + 1).filter(Number.isFinite);
  if (!rows || rows.length === 0) return {};
  const temperatureCelsius = blockMean(rows);
  if (profile === undefined || !(ampereHours.value > 0)) return { temperatureCelsius };
  return {
    temperatureCelsius,
    ampereHoursAt25Celsius: capacityAt25Celsius(ampereHours, temperatureCelsius.value, profile),
  };
}
