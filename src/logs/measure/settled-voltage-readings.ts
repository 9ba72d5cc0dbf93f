import { type Estimate, type Interval, normalCdf } from "../../numeric/index.js";
import type { LogSeries } from "../series.js";

/** Reduced readings of a rest. @internal */
export interface Readings {
  /** Since the load or charger went off [s]. */
  readonly seconds: Float64Array;
  readonly volts: Float64Array;
  /** [V] */
  readonly uncertainties: Float64Array;
}

/** A guess of the wanted voltage that one set of time constants makes. @internal */
export interface Guess {
  readonly value: number;
  readonly standardUncertainty: number;
  /** Not yet normalised. */
  readonly weight: number;
}

/** Nothing of a rest is sampled earlier, and logarithms stay finite [s]. */
const FIRST_SECONDS = 1e-3;
/** More readings than this are averaged in steps that widen with time. */
const MOST_READINGS = 80;
/** Averaging does not remove a reading's resolution: at best a quarter is left. Our choice. */
const LEAST_SHARE = 1 / 4;

/** Readings after the skipped seconds, averaged where there are many; steps are even in the root of time. @internal */
export function reduce({ seconds, volts }: LogSeries, start: number, skip: number, u: number): Readings {
  const rows: [number, number][] = [];
  for (let i = 0; i < seconds.length; i++) {
    const time = seconds[i]! - start;
    if (time >= Math.max(skip, FIRST_SECONDS)) rows.push([time, volts[i]!]);
  }
  const first = Math.sqrt(rows[0]?.[0] ?? 0);
  const width = (Math.sqrt(rows.at(-1)?.[0] ?? 0) - first) / MOST_READINGS;
  const bins: { sumTime: number; sumVolts: number; count: number; bin: number }[] = [];
  for (const [time, volt] of rows) {
    const bin =
      rows.length <= MOST_READINGS
        ? time
        : Math.min(MOST_READINGS - 1, Math.floor((Math.sqrt(time) - first) / width));
    const latest = bins.at(-1);
    if (latest?.bin === bin) {
      latest.sumTime += time;
      latest.sumVolts += volt;
      latest.count++;
    } else bins.push({ sumTime: time, sumVolts: volt, count: 1, bin });
  }
  return {
    seconds: Float64Array.from(bins, ({ sumTime, count }) => sumTime / count),
    volts: Float64Array.from(bins, ({ sumVolts, count }) => sumVolts / count),
    uncertainties: Float64Array.from(bins, ({ count }) => u * Math.max(LEAST_SHARE, 1 / Math.sqrt(count))),
  };
}

/** Mean of the later half less mean of the earlier one. @internal */
export function trend({ volts, uncertainties }: Readings): Estimate {
  const half = volts.length >> 1;
  const later = volts.length - half;
  let [value, variance] = [0, 0];
  for (let i = 0; i < half; i++) {
    value += volts[later + i]! / half - volts[i]! / half;
    variance += (uncertainties[later + i]! ** 2 + uncertainties[i]! ** 2) / half ** 2;
  }
  return { value, standardUncertainty: Math.sqrt(variance) };
}

/** Mean, standard deviation and 95 % interval of weighted normal distributions. @internal */
export function mixture(all: readonly Guess[]): {
  readonly volts: Estimate;
  readonly interval: Interval;
} {
  // What weighs less than this moves no quantile that anyone could see, and costs as much as the rest.
  const heaviest = all.reduce((most, { weight }) => Math.max(most, weight), 0);
  const guesses = all.filter(({ weight }) => weight >= 1e-7 * heaviest);
  let [mean, squares] = [0, 0];
  for (const { value, weight } of guesses) mean += weight * value;
  for (const { value, standardUncertainty, weight } of guesses)
    squares += weight * (standardUncertainty ** 2 + (value - mean) ** 2);
  const deviation = Math.sqrt(squares);
  const below = (volts: number) =>
    guesses.reduce(
      (sum, { value, standardUncertainty: u, weight }) => sum + weight * normalCdf((volts - value) / u),
      0,
    );
  const quantile = (share: number): number => {
    // No share of 2.5 % lies further than √39 standard deviations from the mean (Cantelli).
    let [low, high] = [mean - 7 * deviation, mean + 7 * deviation];
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2;
      if (below(middle) < share) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  return {
    volts: { value: mean, standardUncertainty: deviation },
    interval: { lower: quantile(0.025), upper: quantile(0.975) },
  };
}
