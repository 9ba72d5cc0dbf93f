import {
  type Estimate,
  type Interval,
  type Refusal,
  refuse,
  requireFinite,
  requireKey,
  requirePositive,
  wrongArgument,
} from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";
import { mixture, type Readings, reduce, trend } from "./settled-voltage-readings.js";
import { fitModel, type ModelFit, type RelaxationModel } from "./settled-voltage-shapes.js";

/** Settings of {@link settledRestVoltage}. */
export interface SettledVoltageOptions {
  /** What ended when the rest began; chooses the default of `slowSeconds`. Default: told by the way the voltage goes. */
  readonly before?: "charging" | "discharging";
  /** When the load or charger went off, on the clock of the series [s]. Default: the first row. */
  readonly restFromSeconds?: number;
  /** Voltage wanted at this time of the rest [s] (> 0). Default: for ever, the settled voltage. */
  readonly atRestSeconds?: number;
  /** Random standard uncertainty of one reading, resolution included [V] (> 0). Default 0.004: one step of 12 bits over 16 V (our choice). */
  readonly voltsStandardUncertainty?: number;
  /** Rows of the first seconds are left out [s]. Default 60: edge means, charge transfer and double layer, which tell nothing of the slow end (our choice). */
  readonly skipSeconds?: number;
  /** Most current, either sign, that still is rest [A]. Default 0.05 (our choice: what a parked car may draw). */
  readonly restAmperes?: number;
  /**
   * Where the slowest time constant may lie [s]. Default 1800 to 21 600 after a discharge, 3600 to 86 400 after a charge. Our
   * choice: hours for diffusion between plate and separator (Jossen 2006, from memory), 1400 to 2100 s as single exponential
   * and 5000 to 23 000 s as end of a broad relaxation in seven recorded rests of 2 h; after a charge no recorded rest of 2 h ended.
   */
  readonly slowSeconds?: Interval;
}

/** What both outcomes tell. */
export interface Relaxation {
  readonly direction: "rising" | "falling";
  /** From `restFromSeconds` to the last row [s]. */
  readonly restSeconds: number;
  readonly rowsUsed: number;
  /** Misfit of the best model over what the readings' uncertainty allows, √(χ²/degrees); null without spare rows. */
  readonly misfit: number | null;
  /** Akaike weight of each model that the number of rows allows. */
  readonly models: readonly { readonly model: RelaxationModel; readonly weight: number }[];
}

/** The record is long enough to tell the end of the relaxation. */
export interface SettledVoltage extends Relaxation {
  readonly kind: "value";
  /** [V]; the average over the models, their disagreement included. */
  readonly volts: Estimate;
  readonly interval: Interval;
  /** The best one. */
  readonly model: RelaxationModel;
  /** Of the best model, the slowest last; of `broad` the end of its spectrum. */
  readonly timeConstantsSeconds: readonly Estimate[];
  /** Correlation of the settled voltage and the logarithm of the slow time constant. */
  readonly correlation: number;
}

/** The record ends before the slow part shows: one side is known, the other assumed. */
export interface SettledVoltageBound extends Relaxation {
  readonly kind: "bound";
  /** Holds without an assumption, as far as the last reading is right (97.5 %). */
  readonly bound: { readonly atLeastVolts: number } | { readonly atMostVolts: number };
  readonly reason:
    | "too-few-rows"
    | "record-shorter-than-time-constant"
    | "time-constant-unclear"
    | "model-unclear"
    | "no-relaxation-seen";
  /** What to expect behind the bound, if `slowSeconds` holds; missing where it would be wider than 1 V, from empty to full. */
  readonly expected?: {
    readonly volts: Estimate;
    readonly interval: Interval;
    readonly slowSeconds: Interval;
  };
}

const SLOW = { discharging: { lower: 1800, upper: 21600 }, charging: { lower: 3600, upper: 86400 } } as const;
/** Ratio of the last to the first time; with less, a step of the logger makes the whole slope. Our choice. */
const LEAST_LEVER = 1.25;
/** An interval as wide as from empty to full [V] says nothing. */
const USELESS_VOLTS = 1;
/** Largest relative standard uncertainty of a slow time constant that counts as known. Our choice. */
const SHARP = 0.2;
/**
 * A record must last this many of the shortest slow time constant assumed: in a shorter one a slow part hides, however
 * well an exponential fits. Our choice.
 */
const LEAST_SLOW_RECORDED = 2;
/** Most Akaike weight that models without a known time constant may have beside a value. Our choice. */
const LEAST_SURE = 0.1;
/** What a recorded rest of two hours scatters about the best of the models, 2 to 6 mV [V]. Our choice. */
const MODEL_UNCERTAINTY_VOLTS = 0.005;
const MODELS = ["broad", "one-exponential", "two-exponential"] as const;
/**
 * Models that stand where too few rows test a shape. Seven recorded rests after discharge follow the broad one; those
 * after charge fell nearly straight in time, as an exponential that has hardly begun, after a quicker start.
 */
const UNTESTED: Readonly<Record<Relaxation["direction"], readonly RelaxationModel[]>> = {
  rising: ["broad"],
  falling: ["broad", "one-exponential", "two-exponential"],
};

/**
 * Settled voltage of a battery at rest, carried on from a record that ends earlier.
 *
 * Scope: one rest without current, temperature steady (a battery moves 1.2 mV/K, not included). Three models of the
 * distance from the settled voltage are fitted: one exponential, two exponentials (time constants at least 5 apart), and a
 * broad relaxation: even over log time up to a slowest time constant, straight against log time first and flat in the end.
 * The result averages over them with Akaike weights, so their disagreement is in the uncertainty. A value is given only
 * where the record lasts twice `slowSeconds.lower`, the best model's slow time constant is shorter than the record and
 * known within 20 %, and other models of which that is not so weigh under a tenth. Otherwise a bound, and behind it what
 * to expect under the assumed range of slow time constants. With fewer than 5 rows no shape can be tested: after a
 * discharge the broad one is assumed (a lone slow exponential would break that), after a charge all three stand side by
 * side. Not in the uncertainty: meter error common to all rows, drift of temperature, acid stratification and
 * self-discharge (days).
 *
 * @param series the rows of the rest, in order of time
 * @param options see {@link SettledVoltageOptions}
 * @returns a value, or a bound with its reason
 * @throws RangeError for options that are no finite numbers, negative, or a range that does not rise
 *
 * Refuses `out-of-order`, `not-at-rest` (current above `restAmperes`), `too-few-rows` (fewer than 2 rows after
 * `skipSeconds`), `too-short` (under 300 s), `readings-too-near` (last time under 1.25 times the first), `wrong-direction` (falls after
 * discharging, rises after charging).
 *
 * Equation: V(t) = V∞ − ΣA·exp(−t/τ), or V∞ − A·E₁(t/τ); weight exp(−AIC/2), AIC = χ² + 2k. Source: Aylor, Thieme
 * and Johnson, IEEE Trans. Ind. Electron. 39 (1992) 398 (abstract read: recovery as two straight lines against log time);
 * Burnham and Anderson, Model selection (from memory); thresholds our choice.
 * @example
 * ```ts
 * import { settledRestVoltage } from "crankworthy/logs";
 * const seconds = Float64Array.from({ length: 121 }, (_, i) => 60 * i);
 * const volts = seconds.map((t) => 12.5 - 0.2 * Math.exp(-t / 900));
 * const rest = settledRestVoltage({ seconds, volts, amperes: new Float64Array(121) });
 * rest.kind; // => "value"
 * rest.volts.value.toFixed(2); // => "12.50"
 * ```
 */
export function settledRestVoltage(
  series: LogSeries,
  options: SettledVoltageOptions = {},
):
  | SettledVoltage
  | SettledVoltageBound
  | Refusal<
      "out-of-order" | "not-at-rest" | "too-few-rows" | "too-short" | "readings-too-near" | "wrong-direction"
    > {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  const { before, atRestSeconds: wanted = Number.POSITIVE_INFINITY } = options;
  const { restAmperes = 0.05, skipSeconds = 60, voltsStandardUncertainty: u = 0.004 } = options;
  const rows = series.seconds.length;
  const start = options.restFromSeconds ?? series.seconds[0] ?? 0;
  requireFinite("restFromSeconds", start);
  requirePositive("restAmperes", restAmperes);
  requireFinite("skipSeconds", skipSeconds, 0);
  requirePositive("voltsStandardUncertainty", u);
  if (!(wanted > 0)) wrongArgument("atRestSeconds", wanted, "a time above 0");
  if (before !== undefined) requireKey("before", before, SLOW);
  const given = options.slowSeconds;
  if (given) {
    requirePositive("slowSeconds.lower", given.lower);
    requireFinite("slowSeconds.upper", given.upper, given.lower * 1.01, 1e9);
  }
  for (let i = 0; i < rows; i++)
    if (Math.abs(series.amperes[i]!) > restAmperes)
      return refuse(
        "not-at-rest",
        "A current flows in these rows.",
        "The rows of the rest alone, or a higher restAmperes.",
      );
  const readings = reduce(series, start, skipSeconds, u);
  const n = readings.seconds.length;
  const restSeconds = rows > 0 ? series.seconds[rows - 1]! - start : 0;
  if (n < 2)
    return refuse(
      "too-few-rows",
      "Fewer than two readings at different times remain.",
      "More rows, or a smaller skipSeconds.",
    );
  if (restSeconds < 300) return refuse("too-short", "The rest lasts less than 5 minutes.", "A longer rest.");
  if (readings.seconds[n - 1]! < LEAST_LEVER * readings.seconds[0]!) return tooNear();

  const change = trend(readings);
  const seen = Math.abs(change.value) > 2 * change.standardUncertainty;
  const byTrend = change.value >= 0 ? "rising" : "falling";
  const direction = before === undefined ? byTrend : before === "charging" ? "falling" : "rising";
  if (seen && direction !== byTrend)
    return refuse(
      "wrong-direction",
      "The voltage goes the other way than after what went on before.",
      "What happened before this rest, and whether a load or charger was on.",
    );
  const slowSeconds = given ?? SLOW[direction === "rising" ? "discharging" : "charging"];

  const allowed = MODELS.filter(
    (model) => n >= parametersOf(model) + 2 || UNTESTED[direction].includes(model),
  );
  let fits = fitAll(allowed, readings, wanted, slowSeconds);
  // Against a range of very slow time constants all readings lie at one place.
  if (fits.length === 0) return tooNear();
  let best = bestOf(fits);
  const spare = spareRows(readings, best.model);
  const misfit = spare > 0 ? Math.sqrt(best.chiSquared / spare) : null;
  if (misfit !== null && misfit > 1) {
    // The readings scatter more than stated: their scatter counts.
    const wider = { ...readings, uncertainties: readings.uncertainties.map((one) => one * misfit) };
    fits = fitAll(allowed, wider, wanted, slowSeconds);
    best = bestOf(fits);
  }
  const weights = fits.map((fit) => Math.exp((akaike(best) - akaike(fit)) / 2));
  const total = weights.reduce((a, b) => a + b, 0);
  const models = fits.map(({ model }, i) => ({ model, weight: weights[i]! / total }));
  const told = mixture(
    fits.flatMap(({ guesses }, i) => {
      const all = guesses.reduce((sum, one) => sum + one.weight, 0);
      return guesses.map(({ value, standardUncertainty, weight }) => ({
        value,
        standardUncertainty: Math.hypot(standardUncertainty, MODEL_UNCERTAINTY_VOLTS),
        weight: (weight / all) * models[i]!.weight,
      }));
    }),
  );
  const common = { direction, restSeconds, rowsUsed: n, misfit, models } as const;
  const slowest = best.logSeconds.at(-1);
  const recorded = ({ logSeconds }: ModelFit) =>
    logSeconds.length > 0 &&
    Math.exp(logSeconds.at(-1)!.value) <= restSeconds &&
    restSeconds >= LEAST_SLOW_RECORDED * slowSeconds.lower;
  let unsure = 0;
  for (const [i, fit] of fits.entries()) {
    // A second exponential that the first does not need is no doubt about the first.
    const needless = fit.model === "two-exponential" && best.model === "one-exponential";
    if (!recorded(fit) && !needless) unsure += models[i]!.weight;
  }
  if (seen && recorded(best) && unsure <= LEAST_SURE)
    return {
      kind: "value",
      ...told,
      model: best.model,
      timeConstantsSeconds: best.logSeconds.map(({ value, standardUncertainty }) => ({
        value: Math.exp(value),
        standardUncertainty: Math.exp(value) * standardUncertainty,
      })),
      correlation: best.correlation,
      ...common,
    };
  const end = readings.volts[n - 1]!;
  const margin = 1.96 * readings.uncertainties[n - 1]! * Math.max(1, misfit ?? 1);
  let reason: SettledVoltageBound["reason"] = "time-constant-unclear";
  if (!seen) reason = "no-relaxation-seen";
  else if (n < 5) reason = "too-few-rows";
  else if (slowest && !recorded(best)) reason = "record-shorter-than-time-constant";
  else if (slowest) reason = "model-unclear";
  const { interval } = told;
  return {
    kind: "bound",
    bound: direction === "rising" ? { atLeastVolts: end - margin } : { atMostVolts: end + margin },
    reason,
    ...(interval.upper - interval.lower <= USELESS_VOLTS ? { expected: { ...told, slowSeconds } } : {}),
    ...common,
  };
}

const tooNear = () =>
  refuse("readings-too-near", "All readings lie near the end of the rest.", "Earlier readings.");

const parametersOf = (model: RelaxationModel): number => (model === "two-exponential" ? 5 : 3);

/** The scatter of the readings is stated, hence without the correction for few rows. */
const akaike = ({ model, chiSquared }: ModelFit): number => chiSquared + 2 * parametersOf(model);

const spareRows = ({ seconds }: Readings, model: RelaxationModel): number =>
  seconds.length - parametersOf(model);

function fitAll(
  models: readonly RelaxationModel[],
  readings: Readings,
  wanted: number,
  slow: Interval,
): readonly ModelFit[] {
  // Time constants found with fewer than two rows to spare are no knowledge.
  const sharp = (model: RelaxationModel) => (spareRows(readings, model) >= 2 ? SHARP : 0);
  return models.flatMap((model) => fitModel(model, readings, wanted, slow, sharp(model)) ?? []);
}

const bestOf = (fits: readonly ModelFit[]): ModelFit =>
  fits.reduce((a, b) => (akaike(b) < akaike(a) ? b : a));
