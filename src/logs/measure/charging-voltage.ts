import {
  type Estimate,
  type Refusal,
  rectangularUncertainty,
  refuse,
  requireFinite,
  requirePositive,
} from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";
import { blockMean, resolutionOf } from "./scatter.js";
import { againstTemperature } from "./volts-against-celsius.js";

/** Regulated charging voltage. */
export interface ChargingVoltage {
  /** Mean over the rows taken [V], at `temperatureCelsius` where there is one. */
  readonly regulatedVolts: Estimate;
  /**
   * `lower`: the current was above `mostAmperes` all the time, the voltage that is regulated at less current is the value or more, how
   * much more is not known. Enough to say that it is too high, never that it is too low.
   */
  readonly bound: "two-sided" | "lower";
  /** Mean current of these rows, and of all rows of the slice, those passed over included [A]. */
  readonly meanAmperes: number;
  readonly meanAmperesOfAll: number;
  /** Rows taken, and rows passed over: current above the threshold (unless `bound` is `lower`), discharging, or voltage below the least. */
  readonly rows: number;
  readonly rowsPassedOver: number;
  /** Rows passed over as a share of all (0..1). */
  readonly passedOverShare: number;
  /**
   * `not-regulated-all-the-time`: of the rows after the first minute more than a tenth (our choice) discharge or lie below `leastVolts`: a belt or
   * a contact that slips, loads beyond the alternator, or an engine that stops in between; the mean hides them.
   */
  readonly doubts: readonly "not-regulated-all-the-time"[];
  /** Mean, lowest and highest temperature of these rows [°C]; missing without temperature. */
  readonly temperatureCelsius?: Estimate;
  readonly leastCelsius?: number;
  readonly mostCelsius?: number;
  /** Change of the regulated voltage with temperature [V/K]. */
  readonly slopeVoltsPerKelvin:
    | Estimate
    | Refusal<"no-temperature" | "temperature-range-too-small" | "too-few-rows">;
}

/** Settings of {@link measureChargingVoltage}. */
export interface ChargingVoltageOptions {
  /** Rows charging with more are not regulated yet [A] (> 0). Default 10 (a workshop manual reads the regulated voltage at 10 A or less). */
  readonly mostAmperes?: number;
  /** Rows below are not charging [V]. Default 13 (our choice: below it the alternator does not keep up). */
  readonly leastVolts?: number;
  /** Rows that scatter more, slope with temperature aside, are no plateau [V] (> 0). Default 0.2 (our choice). */
  readonly mostScatterVolts?: number;
  /** Smallest range of temperature for a slope [K] (> 0). Default 10 (our choice: 7 to 10 mV/K then make 0.1 V). */
  readonly leastRangeKelvin?: number;
  /** Longest time between two temperatures to draw a straight line across [s] (> 0). Default 1200 (our choice). */
  readonly temperatureGapSeconds?: number;
  /** Standard uncertainty of the voltmeter common to all rows [V] (≥ 0). Default 0: not included. */
  readonly voltsStandardUncertainty?: number;
}

/** A mean of fewer rows tells no plateau (our choice). */
const LEAST_ROWS = 8;
/** After a start the alternator needs a moment to come up [s] (our choice). */
const STARTING_SECONDS = 60;
const MOST_UNREGULATED_SHARE = 0.1;

/**
 * Regulated voltage of a charging stretch, and its change with temperature.
 *
 * Scope: a slice with the engine running or a charger holding its voltage. A regulator follows the temperature of its own
 * surroundings, not of the battery: the slope means what the logged temperature means. As both drift with time after a
 * start, a slope from one warm-up may hold other slow changes. Where no eight rows charge with `mostAmperes` or less, but the voltage
 * holds a plateau at more, that is a lower bound. The uncertainty holds: scatter between stretches of rows (slow
 * changes of load and speed), resolution; voltmeter where given (mean only: an offset does not change the slope). Not in it:
 * error of the temperature, which makes the slope smaller.
 *
 * @param series rows in order of time, temperature where known
 * @returns mean [V] and slope [V/K]
 *
 * Refuses `out-of-order`, `not-regulated` (under 8 rows charge, or their voltage is no plateau: the current-limited part of
 * a charge). The slope alone is refused with
 * `no-temperature`, `temperature-range-too-small`, `too-few-rows` (under 24 rows with a temperature).
 *
 * Equation: straight line through means of up to 40 stretches of time, widened by √((1 + r)/(1 − r)) for residuals that
 * follow each other.
 * @example
 * ```ts
 * import { measureChargingVoltage } from "crankworthy/logs";
 * const seconds = Float64Array.from({ length: 400 }, (_, i) => 10 * i);
 * const temperatureCelsius = seconds.map((t) => t / 100);
 * const series = { seconds, volts: temperatureCelsius.map((T) => 14.5 - 0.01 * (T - 20)), amperes: seconds.map(() => 5), temperatureCelsius };
 * measureChargingVoltage(series).slopeVoltsPerKelvin.value; // => -0.01
 * measureChargingVoltage(series, { leastRangeKelvin: 50 }).slopeVoltsPerKelvin.code; // => "temperature-range-too-small"
 * ```
 */
export function measureChargingVoltage(
  series: LogSeries,
  options: ChargingVoltageOptions = {},
): ChargingVoltage | Refusal<"out-of-order" | "not-regulated"> {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  const { mostAmperes = 10, leastVolts = 13, leastRangeKelvin = 10, temperatureGapSeconds = 1200 } = options;
  const { voltsStandardUncertainty = 0, mostScatterVolts = 0.2 } = options;
  requirePositive("mostScatterVolts", mostScatterVolts);
  requirePositive("mostAmperes", mostAmperes);
  requireFinite("leastVolts", leastVolts);
  requirePositive("leastRangeKelvin", leastRangeKelvin);
  requirePositive("temperatureGapSeconds", temperatureGapSeconds);
  requireFinite("voltsStandardUncertainty", voltsStandardUncertainty, 0, 1e12);
  const { seconds, volts, amperes } = series;
  const rowsWith = (most: number): number[] => {
    const rows: number[] = [];
    for (let i = 0; i < seconds.length; i++)
      if (amperes[i]! >= 0 && amperes[i]! <= most && volts[i]! >= leastVolts) rows.push(i);
    return rows;
  };
  const held = rowsWith(mostAmperes);
  const bound = held.length < LEAST_ROWS ? "lower" : "two-sided";
  const taken = bound === "lower" ? rowsWith(Number.POSITIVE_INFINITY) : held;
  if (taken.length < LEAST_ROWS)
    return refuse("not-regulated", "Under eight rows charge.", "A log with the engine running, or a charge.");
  const pick = (column: Float64Array) => Float64Array.from(taken, (row) => column[row]!);
  const regulated = pick(volts);
  const mean = blockMean(regulated);
  const rounding = rectangularUncertainty(resolutionOf(regulated));
  const against = againstTemperature(series, taken, leastRangeKelvin, temperatureGapSeconds);
  const { slopeVoltsPerKelvin: slope, leastCelsius = 0, mostCelsius = 0 } = against;
  const fromSlope = "refused" in slope ? 0 : (slope.value * (mostCelsius - leastCelsius)) / Math.sqrt(12);
  const squares = regulated.reduce((sum, one) => sum + (one - mean.value) ** 2, 0) / taken.length;
  if (squares > mostScatterVolts ** 2 + fromSlope ** 2)
    return refuse(
      "not-regulated",
      "The voltage has no plateau.",
      "The part of the charge with a constant voltage.",
    );
  return {
    regulatedVolts: {
      value: mean.value,
      standardUncertainty: Math.hypot(mean.standardUncertainty, rounding, voltsStandardUncertainty),
    },
    bound,
    meanAmperes: blockMean(pick(amperes)).value,
    meanAmperesOfAll: blockMean(amperes).value,
    rows: taken.length,
    rowsPassedOver: seconds.length - taken.length,
    passedOverShare: 1 - taken.length / seconds.length,
    doubts:
      unregulatedShare(series, leastVolts) > MOST_UNREGULATED_SHARE ? ["not-regulated-all-the-time"] : [],
    ...against,
  };
}

function unregulatedShare({ seconds, volts, amperes }: LogSeries, leastVolts: number): number {
  let [rows, unregulated] = [0, 0];
  for (let i = 0; i < seconds.length; i++) {
    if (seconds[i]! - seconds[0]! < STARTING_SECONDS) continue;
    rows++;
    if (amperes[i]! < 0 || volts[i]! < leastVolts) unregulated++;
  }
  return rows > 0 ? unregulated / rows : 0;
}
