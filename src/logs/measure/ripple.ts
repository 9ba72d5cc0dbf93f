import { type Estimate, type Refusal, refuse, requireFinite, requirePositive } from "../../numeric/index.js";
import { medianStep } from "./align-current.js";
import { noiseInPeaks } from "./noise-in-peaks.js";
import { blockMean, resolutionOf } from "./scatter.js";
import { refuseVoltageDisorder, type VoltageSeries } from "./voltage-series.js";

/**
 * Share of what is taken off the peaks that is in doubt, since ripple is no sine. Our choice: noise raises the tops of a rectified
 * six-pulse wave 13 to 35 % less, those of a near-square one up to twice as much (computed).
 */
const SHAPE = 0.5;

/** A running alternator. */
export interface AlternatorSpeed {
  /** Of the crankshaft [1/min] (> 0). */
  readonly engineRevolutionsPerMinute: number;
  /** Turns of the alternator per turn of the engine (> 0). Cars: about 2 to 3 (from memory). */
  readonly pulleyRatio: number;
  /** Pole pairs of the rotor (> 0). Claw-pole car alternators: usually 6 (from memory). */
  readonly polePairs: number;
}

/**
 * Ripple frequency of a three-phase alternator with six diodes.
 *
 * Scope: all diodes sound. With one diode open or shorted a part at a sixth of this frequency is added, so a sound ripple needs
 * the faster sampling.
 *
 * @returns pulses of the rectified voltage per second [Hz]
 *
 * Equation: f = 6·p·i·n/60 (p pole pairs, i pulley ratio, n engine speed): six pulses per electrical turn, computed.
 * @example
 * ```ts
 * import { alternatorRippleHertz } from "crankworthy/logs";
 * alternatorRippleHertz({ engineRevolutionsPerMinute: 800, pulleyRatio: 2.5, polePairs: 6 }); // => 1200
 * ```
 */
export function alternatorRippleHertz(speed: AlternatorSpeed): number {
  const { engineRevolutionsPerMinute, pulleyRatio, polePairs } = speed;
  requirePositive("engineRevolutionsPerMinute", engineRevolutionsPerMinute);
  requirePositive("pulleyRatio", pulleyRatio);
  requirePositive("polePairs", polePairs);
  return (6 * polePairs * pulleyRatio * engineRevolutionsPerMinute) / 60;
}

/** AC part of a voltage. */
export interface Ripple {
  /** Root mean square without the slow part [V]. */
  readonly rmsVolts: Estimate;
  /** Between lowest and highest row of about five periods, mean over all such stretches, without what the meter's noise adds [V]. */
  readonly peakToPeakVolts: Estimate;
  /** `lower`: so few rows a period that the peaks lie between rows. */
  readonly peakToPeakBound: "two-sided" | "lower";
  readonly samplesPerSecond: number;
  /** Half of it: what is faster than this shows up as something slower. */
  readonly nyquistHertz: number;
  /**
   * `aliasing-possible`: harmonics of the ripple lie above the Nyquist frequency, and a log does not tell whether a filter removed
   * them. `energy-near-nyquist`: neighbouring rows go opposite ways, so most of what was recorded lies in the upper half of the band.
   */
  readonly doubts: readonly ("aliasing-possible" | "energy-near-nyquist")[];
  readonly rows: number;
}

/** Settings of {@link measureRipple}. */
export interface RippleOptions {
  /** Expected frequency of the ripple [Hz] (> 0), as of {@link alternatorRippleHertz}. Required. */
  readonly rippleHertz: number;
  /** Standard deviation of the voltmeter's noise, white, taken off both figures [V] (≥ 0). Default 0: it stays in. */
  readonly meterNoiseVolts?: number;
}

/**
 * Ripple of a voltage: root mean square and peak to peak of what changes faster than a few ripple periods.
 *
 * Scope: evenly sampled rows with the engine running at one speed. The Nyquist condition: more than two samples a period, or
 * the ripple cannot be told from slower changes. Loggers at 1 to 100 Hz show none of an alternator's ripple, which lies near 1 kHz
 * and above. Slow changes are removed by a moving mean over five periods,
 * taken twice: where the true frequency is another, at most 0.4 % of the ripple goes with them. Peaks need ten samples a period (our choice: the
 * highest row then lies at most 5 % of a sine's amplitude below the peak). The meter's noise raises the highest row and lowers the
 * lowest; what it does so on average to a sine of the measured size is taken off. The uncertainty holds: scatter between stretches,
 * resolution, peaks between rows, half of what was taken off the peaks (ripple is no sine: our choice). Not
 * in it: bandwidth of the logger, noise of the meter unless given.
 *
 * @param series evenly spaced rows in order of time
 * @param options ripple frequency [Hz] is required
 * @returns both figures [V]; hand `rmsVolts` to `judgeRipple` as `true-rms` only for the place it was measured at
 *
 * Refuses `out-of-order`, `too-few-rows` (under 20 ripple periods or 64 rows), `uneven-sampling` (a step more than a tenth
 * off), `sampling-too-slow` (not above twice the ripple frequency), `below-meter-noise`.
 *
 * Equation: rms² = mean((V − slow part)²) − u_meter²; peak to peak = mean(highest − lowest) − 2·E(max(sₖ + nₖ) − max(sₖ)), s a sine of
 * amplitude √2·rms, n the noise.
 * @example
 * ```ts
 * import { measureRipple } from "crankworthy/logs";
 * const seconds = Float64Array.from({ length: 2000 }, (_, i) => i / 20_000);
 * const series = { seconds, volts: seconds.map((t) => 14.2 + 0.1 * Math.sin(2 * Math.PI * 1000 * t)) };
 * measureRipple(series, { rippleHertz: 1000 }).rmsVolts.value; // => 0.0707
 * measureRipple(series, { rippleHertz: 12_000 }).code; // => "sampling-too-slow"
 * ```
 */
export function measureRipple(
  series: VoltageSeries,
  options: RippleOptions,
):
  | Ripple
  | Refusal<"out-of-order" | "too-few-rows" | "uneven-sampling" | "sampling-too-slow" | "below-meter-noise"> {
  const disorder = refuseVoltageDisorder(series);
  if (disorder) return disorder;
  const { rippleHertz, meterNoiseVolts = 0 } = options;
  requirePositive("rippleHertz", rippleHertz);
  requireFinite("meterNoiseVolts", meterNoiseVolts, 0, 1e12);
  const { seconds, volts } = series;
  const few = () =>
    refuse("too-few-rows", "Under 20 ripple periods or 64 rows are recorded.", "A longer log.");
  if (seconds.length < 64) return few();
  const step = medianStep(seconds);
  for (let i = 1; i < seconds.length; i++)
    if (Math.abs(seconds[i]! - seconds[i - 1]! - step) > 0.1 * step || !(step > 0))
      return refuse("uneven-sampling", "Rows do not come at equal steps.", "An evenly sampled stretch.");
  const perPeriod = 1 / (step * rippleHertz);
  // At exactly two a period rounding of the times must not decide.
  if (!(perPeriod > 2 * (1 + 1e-6)))
    return refuse(
      "sampling-too-slow",
      "Ripple needs more than two samples a period; slower sampling shows it as something else.",
      "A faster logger, or an AC voltmeter.",
    );
  const half = Math.max(2, Math.round(2.5 * perPeriod));
  // Also keeps half below the number of rows, whatever frequency is given.
  if (seconds.length < 20 * perPeriod) return few();
  const varying = withoutSlowPart(volts, half);
  const squares = blockMean(varying.map((one) => one * one));
  const meanSquare = squares.value - meterNoiseVolts ** 2;
  const noisy = () =>
    refuse("below-meter-noise", "The ripple is smaller than the meter's noise.", "A quieter meter.");
  if (!(meanSquare > 0 || meterNoiseVolts === 0)) return noisy();
  const rms = Math.sqrt(Math.max(0, meanSquare));
  const rounding = resolutionOf(volts) / Math.sqrt(12);
  const peaks = heightOfStretches(varying, 2 * half + 1);
  const raised = 2 * noiseInPeaks(Math.SQRT2 * rms, meterNoiseVolts, 2 * half + 1);
  const peakToPeak = peaks.value - raised;
  if (meterNoiseVolts > 0 && !(peakToPeak > 0)) return noisy();
  // The highest of a few rows a period lies below a sine's peak by at most this share.
  const missed = peakToPeak * (1 - Math.cos(Math.PI / perPeriod));
  const enough = perPeriod >= 10;
  const doubts: Ripple["doubts"][number][] = [];
  if (!enough) doubts.push("aliasing-possible");
  if (neighbourCorrelation(varying) < 0) doubts.push("energy-near-nyquist");
  return {
    rmsVolts: {
      value: rms,
      standardUncertainty: Math.hypot(rms > 0 ? squares.standardUncertainty / (2 * rms) : 0, rounding),
    },
    peakToPeakVolts: {
      value: peakToPeak,
      standardUncertainty: Math.hypot(
        peaks.standardUncertainty,
        SHAPE * raised,
        missed / Math.sqrt(3),
        rounding * Math.SQRT2,
      ),
    },
    peakToPeakBound: enough ? "two-sided" : "lower",
    samplesPerSecond: 1 / step,
    nyquistHertz: 1 / (2 * step),
    doubts,
    rows: varying.length,
  };
}

/** What is left of a voltage without its slow part; the first and last 2·half rows are gone. */
function withoutSlowPart(volts: Float64Array, half: number): Float64Array {
  const reference = volts[0]!;
  const fromZero = volts.map((one) => one - reference);
  const slow = movingMean(movingMean(fromZero, half), half);
  return slow.map((one, i) => fromZero[i + 2 * half]! - one);
}

/** Means over 2·half steps, the end rows counted half: a whole number of periods averages out exactly. */
function movingMean(values: Float64Array, half: number): Float64Array {
  const out = new Float64Array(values.length - 2 * half);
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    if (i > 0) sum += (values[i - 1]! + values[i]!) / 2;
    if (i > 2 * half) sum -= (values[i - 2 * half - 1]! + values[i - 2 * half]!) / 2;
    if (i >= 2 * half) out[i - 2 * half] = sum / (2 * half);
  }
  return out;
}

function heightOfStretches(varying: Float64Array, width: number): Estimate {
  const heights: number[] = [];
  for (let from = 0; from + width <= varying.length; from += width) {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = from; i < from + width; i++) {
      low = Math.min(low, varying[i]!);
      high = Math.max(high, varying[i]!);
    }
    heights.push(high - low);
  }
  return blockMean(Float64Array.from(heights), heights.length);
}

function neighbourCorrelation(varying: Float64Array): number {
  let [products, squares] = [0, 0];
  for (let i = 1; i < varying.length; i++) {
    products += varying[i]! * varying[i - 1]!;
    squares += varying[i]! ** 2;
  }
  return squares > 0 ? products / squares : 0;
}
