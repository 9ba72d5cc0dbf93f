import { createGapCandidates } from "./gap-candidates.js";
import { createIntervalCounts } from "./intervals.js";
import type { CheckSettings } from "./options.js";
import type { LogSampling } from "./quality.js";
import { createRanges } from "./ranges.js";
import type { CheckedBlock } from "./summary.js";
import type { Found } from "./whole-log.js";

interface GapsFound {
  readonly sampling?: LogSampling;
  readonly loadedMedianSeconds?: number | undefined;
  readonly restMedianSeconds?: number | undefined;
  readonly found: readonly Found[];
}

/** Intervals this near to each other are one rate (our choice): a logger's timer is better, its queue hardly worse. */
const SAME = 0.05;
/** Intervals of one length in a row that make it a rate of the logger and no loss: losses do not come like that. */
const RATE_RUN = 3;
/** Without a rate in half of the intervals, a gap is this many times their 99th percentile. */
const NO_RATE_FACTOR = 3;
/** Fewer intervals have no way of their own: the longest would be the one in ten. */
const FEW_INTERVALS = 30;

/**
 * @internal Intervals between rows with a voltage or a current: how the log is sampled, and where rows are missing.
 *
 * A change-driven logger writes seldom at rest and often under load, so there are two limits: between rows that both carry
 * current, the slowest rate under current; elsewhere the slowest rate of all. Both are known at the end only.
 */
export function createGaps(settings: CheckSettings) {
  const { gapFactor, loadedAmperes, rangesPerDefect } = settings;
  const counts = [createIntervalCounts(), createIntervalCounts()] as const;
  const candidates = createGapCandidates(rangesPerDefect);
  const rate = [0, 0];
  let inRates = 0;
  // Fields of an object, since numbers that a closure writes are made anew with every write.
  // The run of like intervals that is going on: the first of them, where it began, how many, how many under current.
  const state = { reference: Number.NaN, start: 0.5, count: 0, loaded: 0, least: Infinity, most: 0 };
  // The last row that counts.
  const before = { seconds: Number.NaN, volts: Number.NaN, amperes: Number.NaN, number: 0, index: -1 };

  function learn(mean: number, count: number, loaded: number): void {
    if (loaded >= RATE_RUN && mean > rate[1]!) rate[1] = mean;
    if (count >= RATE_RUN && mean > rate[0]!) rate[0] = mean;
  }
  function closeRun(reference: number, seconds: number, count: number, loaded: number): void {
    if (count === 0) return;
    const mean = seconds / count;
    if (count > loaded) counts[0].add(reference, count - loaded, mean * (count - loaded));
    if (loaded) counts[1].add(reference, loaded, mean * loaded);
    if (count >= RATE_RUN) inRates += count;
    learn(mean, count, loaded);
  }
  const isLoaded = (current: number) => current >= loadedAmperes || current <= -loadedAmperes;

  /** A block without a break in the run, all of it or nothing under current: counted as a whole. */
  function goesOn(block: CheckedBlock): boolean {
    const { rows, leastAmperes, mostAmperes, leastStep, mostStep } = block;
    if (!(block.complete && block.increasing && state.count >= RATE_RUN)) return false;
    if (!(leastStep >= state.reference * (1 - SAME) && mostStep <= state.reference * (1 + SAME)))
      return false;
    // The steps are those of this run only if the row before the block is the last that counts.
    if (block.firstIndex !== before.index + 1) return false;
    const all = leastAmperes >= loadedAmperes || mostAmperes <= -loadedAmperes;
    const none = leastAmperes > -loadedAmperes && mostAmperes < loadedAmperes;
    if (!all && !none) return false;
    state.count += rows;
    if (all) state.loaded += isLoaded(before.amperes) ? rows : rows - 1;
    if (leastStep < state.least) state.least = leastStep;
    if (mostStep > state.most) state.most = mostStep;
    keep(block, rows - 1);
    return true;
  }
  function keep(block: CheckedBlock, i: number): void {
    before.seconds = block.seconds[i]!;
    before.number = block.number(i);
    before.index = block.firstIndex + i;
    before.volts = block.volts[i]!;
    before.amperes = block.amperes[i]!;
  }

  return {
    /** `setBacks`: rows of this block at which the clock was set back; no interval reaches across. */
    scan(block: CheckedBlock, setBacks: readonly number[]): void {
      if (goesOn(block)) return;
      const { seconds, volts, amperes, rows } = block;
      const whole = block.complete && block.increasing;
      let { reference, start, count, loaded, least, most } = state;
      let last = -1;
      let nextSetBack = 0;
      let secondsBefore = before.seconds;
      let loadedBefore = isLoaded(before.amperes);
      let [lower, upper] = [reference * (1 - SAME), reference * (1 + SAME)];
      for (let i = 0; i < rows; i++) {
        const time = seconds[i]!;
        const current = amperes[i]!;
        if (!whole) {
          if (setBacks.length > nextSetBack && setBacks[nextSetBack]! <= i) {
            nextSetBack++;
            closeRun(reference, secondsBefore - start, count, loaded);
            [reference, lower, upper, count, loaded] = [Number.NaN, Number.NaN, Number.NaN, 0, 0];
            secondsBefore = Number.NaN;
          }
          if (Number.isNaN(time) || (Number.isNaN(current) && Number.isNaN(volts[i]!))) continue;
          // Out of order or at the same time: no interval.
          if (time <= secondsBefore) continue;
        }
        const loadedNow = current >= loadedAmperes || current <= -loadedAmperes;
        const step = time - secondsBefore;
        const both = loadedNow && loadedBefore;
        if (step < least) least = step;
        if (step > most) most = step;
        if (step >= lower && step <= upper) {
          count++;
          if (both) loaded++;
          if (count === RATE_RUN) learn((time - start) / count, count, loaded);
        } else if (step > 0) {
          closeRun(reference, secondsBefore - start, count, loaded);
          [reference, start, count, loaded] = [step, secondsBefore, 1, both ? 1 : 0];
          [lower, upper] = [step * (1 - SAME), step * (1 + SAME)];
        }
        if (count < RATE_RUN && step > gapFactor * rate[both ? 1 : 0]!)
          candidates.add({
            seconds: step,
            firstRow: last < 0 ? before.number : block.number(last),
            lastRow: block.number(i),
            index: block.firstIndex + i,
            voltsChange: volts[i]! - (last < 0 ? before.volts : volts[last]!),
            amperesBefore: last < 0 ? before.amperes : amperes[last]!,
            amperesAfter: current,
            loaded: both,
          });
        secondsBefore = time;
        loadedBefore = loadedNow;
        last = i;
      }
      Object.assign(state, { reference, start, count, loaded, least, most });
      before.seconds = secondsBefore;
      if (last >= 0) keep(block, last);
    },
    finish(): GapsFound {
      closeRun(state.reference, before.seconds - state.start, state.count, state.loaded);
      state.count = 0;
      const [still, underLoad] = [counts[0].total(), counts[1].total()];
      const all = still + underLoad;
      const gaps = createRanges("gap", "note", "seconds", rangesPerDefect);
      if (all === 0) return { found: [] };
      const both = createIntervalCounts();
      both.merge(counts[0]);
      both.merge(counts[1]);
      const medianSeconds = both.quantile(0.5)!;
      const hasRate = inRates >= all / 2;
      const limit = (loaded: boolean) => {
        if (!hasRate) return NO_RATE_FACTOR * both.quantile(0.99)!;
        // What one interval in ten exceeds is this logger's way.
        const these = counts[loaded ? 1 : 0];
        const own = these.total() >= FEW_INTERVALS ? these.quantile(0.9)! : 0;
        return gapFactor * Math.max(own, loaded && rate[1]! > 0 ? rate[1]! : rate[0]!);
      };
      const usual = (loaded: boolean) => (hasRate ? limit(loaded) / gapFactor : medianSeconds);
      candidates.finish(gaps, limit, usual, loadedAmperes);
      const sampling: LogSampling = {
        medianSeconds,
        leastSeconds: state.least,
        mostSeconds: state.most,
        kind: both.outside(medianSeconds / 2, medianSeconds * 1.5) > all / 100 ? "change-driven" : "regular",
        ...(hasRate && { slowestRateSeconds: rate[0]! }),
      };
      return {
        sampling,
        loadedMedianSeconds: counts[1].quantile(0.5),
        restMedianSeconds: counts[0].quantile(0.5),
        found: [gaps.finish()],
      };
    },
  };
}
