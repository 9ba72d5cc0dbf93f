import { type Estimate, fitLine, type Refusal, rectangularUncertainty, refuse } from "../../numeric/index.js";
import type { LogSeries } from "../series.js";
import { blockMean, resolutionOf } from "./scatter.js";

/** @internal Voltage against temperature, as far as the rows tell. */
export interface AgainstTemperature {
  readonly temperatureCelsius?: Estimate;
  readonly leastCelsius?: number;
  readonly mostCelsius?: number;
  readonly slopeVoltsPerKelvin:
    | Estimate
    | Refusal<"no-temperature" | "temperature-range-too-small" | "too-few-rows">;
}

/** @internal Straight line through means of stretches of rows, where the temperature changed enough. */
export function againstTemperature(
  series: LogSeries,
  taken: readonly number[],
  leastRangeKelvin: number,
  gapSeconds: number,
): AgainstTemperature {
  const celsius = temperatureOfRows(series, gapSeconds);
  const rows = taken.filter((row) => Number.isFinite(celsius[row]));
  if (rows.length === 0)
    return {
      slopeVoltsPerKelvin: refuse(
        "no-temperature",
        "No regulated row has a temperature.",
        "A temperature beside the regulator.",
      ),
    };
  const temperatures = Float64Array.from(rows, (row) => celsius[row]!);
  const [leastCelsius, mostCelsius] = [
    temperatures.reduce((a, b) => Math.min(a, b)),
    temperatures.reduce((a, b) => Math.max(a, b)),
  ];
  const known = { temperatureCelsius: blockMean(temperatures), leastCelsius, mostCelsius };
  if (mostCelsius - leastCelsius < leastRangeKelvin)
    return {
      ...known,
      slopeVoltsPerKelvin: refuse(
        "temperature-range-too-small",
        "The temperature changed too little for a slope.",
        "A log over cold and warm.",
      ),
    };
  if (rows.length < 24)
    return {
      ...known,
      slopeVoltsPerKelvin: refuse("too-few-rows", "Under 24 rows have a temperature.", "A longer log."),
    };
  const blocks = Math.min(40, Math.floor(rows.length / 4));
  const xs: number[] = [];
  const ys: number[] = [];
  for (let b = 0; b < blocks; b++) {
    const from = Math.floor((b * rows.length) / blocks);
    const to = Math.floor(((b + 1) * rows.length) / blocks);
    xs.push(blockMean(temperatures.subarray(from, to)).value);
    ys.push(blockMean(Float64Array.from(rows.slice(from, to), (row) => series.volts[row]!)).value);
  }
  // A range inside one stretch of rows, all stretches alike: nothing to fit.
  if (Math.max(...xs) - Math.min(...xs) < leastRangeKelvin / 2)
    return {
      ...known,
      slopeVoltsPerKelvin: refuse(
        "temperature-range-too-small",
        "The temperature moved only for moments.",
        "A log over cold and warm.",
      ),
    };
  const line = fitLine(xs, ys);
  const residuals = ys.map((y, i) => y - line.intercept.value - line.slope.value * xs[i]!);
  let [products, squares] = [0, 0];
  residuals.forEach((one, i) => {
    squares += one * one;
    if (i > 0) products += one * residuals[i - 1]!;
  });
  const r = squares > 0 ? Math.min(0.95, Math.max(0, products / squares)) : 0;
  const rounding = rectangularUncertainty(resolutionOf(series.volts)) / (mostCelsius - leastCelsius);
  return {
    ...known,
    slopeVoltsPerKelvin: {
      value: line.slope.value,
      standardUncertainty: Math.hypot(
        line.slope.standardUncertainty * Math.sqrt((1 + r) / (1 - r)),
        rounding,
      ),
    },
  };
}

/** The temperature of every row, from the straight line between rows that have one; NaN across a gap and beyond the ends. */
function temperatureOfRows({ seconds, temperatureCelsius }: LogSeries, gapSeconds: number): Float64Array {
  const out = new Float64Array(seconds.length).fill(Number.NaN);
  if (!temperatureCelsius) return out;
  let before = -1;
  for (let i = 0; i < seconds.length; i++) {
    const here = temperatureCelsius[i]!;
    if (!Number.isFinite(here)) continue;
    out[i] = here;
    if (before >= 0) {
      const span = seconds[i]! - seconds[before]!;
      for (let k = before + 1; k < i && span > 0 && span <= gapSeconds; k++) {
        const share = (seconds[k]! - seconds[before]!) / span;
        out[k] = out[before]! * (1 - share) + here * share;
      }
    }
    before = i;
  }
  return out;
}
