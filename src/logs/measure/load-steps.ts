import {
  type Estimate,
  type Refusal,
  rectangularUncertainty,
  refuse,
  requireFinite,
  requirePositive,
} from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";
import { medianStep } from "./align-current.js";
import { noiseOf, resolutionOf } from "./scatter.js";
import { type FoundStep, findSteps } from "./step-rows.js";

/** Resistance from one step of the load. */
export interface LoadStep {
  /** Chord of the settled rows, leads included [Ω]. */
  readonly resistanceOhms: Estimate;
  /** `polarisation`: the rows lie too far apart in time, slow voltage changes are in the value. */
  readonly includes: "ohmic" | "polarisation";
  /** After minus before [V], [A]. */
  readonly changeVolts: Estimate;
  readonly changeAmperes: Estimate;
  /** Middle between the last row before and the first row after [s]. */
  readonly atSeconds: number;
  /** From the last settled row before to the first settled row after [s]. */
  readonly spanSeconds: number;
  readonly rowsBefore: number;
  readonly rowsAfter: number;
  /** Rows at the edge left out: voltage taken on both sides, or current still moving. */
  readonly edgeRows: number;
  /** Standard uncertainties that make up that of the resistance [Ω]. */
  readonly contributionsOhms: {
    readonly noise: number;
    readonly resolution: number;
    readonly drift: number;
    readonly gain: number;
  };
}

/** Settings of {@link measureLoadSteps}. */
export interface LoadStepOptions {
  /** Smallest change of current that counts as a step [A] (> 0). Required: it depends on the battery and the meter. */
  readonly leastStepAmperes: number;
  /** Rows this near to the step on either side are averaged [s] (> 0). Default 0.1 (our choice). At least one row is always taken. */
  readonly windowSeconds?: number;
  /** Longest time across the step for the value to be called ohmic [s] (> 0). Default 0.1 (our choice: see scope). */
  readonly mostOhmicSeconds?: number;
  /** A row belongs to a side while its current stays within this share of the step (0..0.5). Default 0.1 (our choice). */
  readonly settledShare?: number;
  /** Give a total resistance where rows are too far apart, instead of refusing. Default false. */
  readonly acceptPolarisation?: boolean;
  /** Noise of one row [V], [A] (≥ 0). Default: from the differences of neighbouring rows of the series. */
  readonly noiseVolts?: number;
  readonly noiseAmperes?: number;
  /** Relative standard uncertainty of the two meters' gains, taken together (0..1). Default 0: not included. */
  readonly gainStandardUncertainty?: number;
}

/** The steps of a log. */
export interface LoadSteps {
  readonly steps: readonly LoadStep[];
  /** Steps left out because the rows lie too far apart in time. */
  readonly tooSlow: number;
  /** Steps left out because voltage did not rise with current. */
  readonly notOhmic: number;
}

/**
 * Measures resistance at every step of the load: change of voltage over change of current, from settled rows on both sides.
 *
 * Scope: voltage and current of the same moment; where the current comes late, use `alignCurrent` first. A row at the edge
 * whose voltage is a mean of before and after is left out. With the double layer and the acid in the plates the voltage
 * goes on moving within tenths of a second after a step, so only rows within `mostOhmicSeconds` of each other give an
 * ohmic value; rows a minute apart give a total resistance. The uncertainty holds: noise of voltage and current, resolution
 * (the least change seen in each column, rectangular), drift of the voltage between the rows and the step (slope on each side
 * times distance, taken whole because it has one sign), gain where given. Not in it: a lag between the columns, leads.
 *
 * @param series rows in order of time
 * @param options smallest step [A] is required
 * @returns the steps in order of time
 *
 * Refuses `out-of-order`, `no-step`, `sampling-too-slow` (all steps too slow and a total resistance not accepted), `not-ohmic`
 * (voltage falls when current rises at every step).
 *
 * Equation: R = (V̄₂ − V̄₁)/(Ī₂ − Ī₁).
 * @example
 * ```ts
 * import { measureLoadSteps } from "crankworthy/logs";
 * const seconds = Float64Array.from({ length: 40 }, (_, i) => i / 100);
 * const amperes = seconds.map((t) => (t < 0.2 ? 0 : -100));
 * const measured = measureLoadSteps({ seconds, volts: amperes.map((I) => 12.6 + 0.005 * I), amperes }, { leastStepAmperes: 20 });
 * measured.steps[0].resistanceOhms.value; // => 0.005
 * measured.steps[0].includes; // => "ohmic"
 * ```
 */
export function measureLoadSteps(
  series: LogSeries,
  options: LoadStepOptions,
): LoadSteps | Refusal<"out-of-order" | "no-step" | "sampling-too-slow" | "not-ohmic"> {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  const { leastStepAmperes, windowSeconds = 0.1, mostOhmicSeconds = 0.1, settledShare = 0.1 } = options;
  requirePositive("leastStepAmperes", leastStepAmperes);
  requirePositive("windowSeconds", windowSeconds);
  requirePositive("mostOhmicSeconds", mostOhmicSeconds);
  requireFinite("settledShare", settledShare, 0, 0.5);
  const gain = options.gainStandardUncertainty ?? 0;
  requireFinite("gainStandardUncertainty", gain, 0, 1);
  const meters: Meters = {
    noiseVolts: options.noiseVolts ?? noiseOf(series.volts),
    noiseAmperes: options.noiseAmperes ?? noiseOf(series.amperes),
    resolutionVolts: resolutionOf(series.volts),
    resolutionAmperes: resolutionOf(series.amperes),
    gain,
  };
  requireFinite("noiseVolts", meters.noiseVolts, 0, 1e12);
  requireFinite("noiseAmperes", meters.noiseAmperes, 0, 1e12);
  const found = findSteps(series, { leastStepAmperes, windowSeconds, settledShare });
  if (found.length === 0)
    return refuse("no-step", "No step of the current is this large.", "A smaller step, or a log with loads.");
  const steps: LoadStep[] = [];
  let [tooSlow, notOhmic] = [0, 0];
  // Times are multiples of the row step: half a step of slack keeps 0.1 from failing as 0.10000000000000009.
  const slack = 1e-6 * medianStep(series.seconds) + 1e-9;
  for (const one of found) {
    const slow = one.spanSeconds > mostOhmicSeconds + slack;
    if (slow && !options.acceptPolarisation) {
      tooSlow++;
      continue;
    }
    const step = measureStep(series, one, meters, slow);
    if (step) steps.push(step);
    else notOhmic++;
  }
  if (steps.length === 0 && tooSlow > 0)
    return refuse(
      "sampling-too-slow",
      "Rows are too far apart to tell ohmic resistance from polarisation.",
      "Rows within tenths of a second of the step, or accepting a total resistance.",
    );
  if (steps.length === 0)
    return refuse("not-ohmic", "Voltage does not rise with current.", "The sign of the current, or its lag.");
  return { steps, tooSlow, notOhmic };
}

interface Meters {
  readonly noiseVolts: number;
  readonly noiseAmperes: number;
  readonly resolutionVolts: number;
  readonly resolutionAmperes: number;
  readonly gain: number;
}

function measureStep(
  series: LogSeries,
  found: FoundStep,
  meters: Meters,
  slow: boolean,
): LoadStep | undefined {
  const { before, after } = found;
  const volts = meanOf(series.volts, after) - meanOf(series.volts, before);
  const amperes = meanOf(series.amperes, after) - meanOf(series.amperes, before);
  const ohms = volts / amperes;
  if (!(ohms > 0 && Number.isFinite(ohms))) return undefined;
  const rowsShare = Math.sqrt(1 / before.length + 1 / after.length);
  const noiseVolts = meters.noiseVolts * rowsShare;
  const noiseAmperes = meters.noiseAmperes * rowsShare;
  // The mean of rounded rows of a still signal is as coarse as one row.
  const roundVolts = rectangularUncertainty(meters.resolutionVolts) * Math.SQRT2;
  const roundAmperes = rectangularUncertainty(meters.resolutionAmperes) * Math.SQRT2;
  const step = Math.abs(amperes);
  const atSeconds = (series.seconds[before[0]!]! + series.seconds[after[0]!]!) / 2;
  const drift = Math.hypot(
    driftOf(series, found.widerBefore, before, ohms, atSeconds, Math.abs(volts)),
    driftOf(series, found.widerAfter, after, ohms, atSeconds, Math.abs(volts)),
  );
  const contributionsOhms = {
    noise: Math.hypot(noiseVolts, ohms * noiseAmperes) / step,
    resolution: Math.hypot(roundVolts, ohms * roundAmperes) / step,
    drift: drift / step,
    gain: ohms * meters.gain,
  };
  const { noise, resolution, gain } = contributionsOhms;
  return {
    resistanceOhms: {
      value: ohms,
      standardUncertainty: Math.hypot(noise, resolution, contributionsOhms.drift, gain),
    },
    includes: slow ? "polarisation" : "ohmic",
    changeVolts: { value: volts, standardUncertainty: Math.hypot(noiseVolts, roundVolts, drift) },
    changeAmperes: { value: amperes, standardUncertainty: Math.hypot(noiseAmperes, roundAmperes) },
    atSeconds,
    spanSeconds: found.spanSeconds,
    rowsBefore: before.length,
    rowsAfter: after.length,
    edgeRows: found.edgeRows,
    contributionsOhms,
  };
}

function meanOf(column: Float64Array, rows: readonly number[]): number {
  let sum = 0;
  for (const row of rows) sum += column[row]!;
  return sum / rows.length;
}

/** How far the voltage without its ohmic part moves from the mean of the rows to the step, by its slope beyond the step. */
function driftOf(
  { seconds, volts, amperes }: LogSeries,
  wider: readonly number[],
  used: readonly number[],
  ohms: number,
  atSeconds: number,
  wholeVolts: number,
): number {
  const distance = Math.abs(meanOf(seconds, used) - atSeconds);
  if (wider.length < 2) return wholeVolts * UNKNOWN_DRIFT;
  let [timeMean, voltMean] = [0, 0];
  for (const row of wider) {
    timeMean += seconds[row]! / wider.length;
    voltMean += (volts[row]! - ohms * amperes[row]!) / wider.length;
  }
  let [squares, products] = [0, 0];
  for (const row of wider) {
    squares += (seconds[row]! - timeMean) ** 2;
    products += (seconds[row]! - timeMean) * (volts[row]! - ohms * amperes[row]! - voltMean);
  }
  return squares > 0 ? Math.abs(products / squares) * distance : wholeVolts * UNKNOWN_DRIFT;
}

/** One row alone on a side tells nothing of its drift: a tenth of the step in voltage, our choice. */
const UNKNOWN_DRIFT = 0.1;
