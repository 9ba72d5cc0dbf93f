import type { Estimate } from "../../numeric/index.js";

/** @internal The middle value of a copy; 0 for none. */
export function medianOf(values: Float64Array | readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  if (sorted.length === 0) return 0;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/**
 * @internal Noise of one row, from differences of neighbours: 1.4826·median|Δ|/√2. Steps and slow drift hardly show in a
 * median of differences; a signal that moves all the time counts as noise, which errs on the wide side.
 */
export function noiseOf(values: Float64Array): number {
  if (values.length < 3) return 0;
  const steps = new Float64Array(values.length - 1);
  for (let i = 1; i < values.length; i++) steps[i - 1] = Math.abs(values[i]! - values[i - 1]!);
  return (1.4826 * medianOf(steps)) / Math.SQRT2;
}

/**
 * @internal The least change between neighbours: the meter's resolution where it rounds, next to nothing where it does not. A column
 * of four levels or fewer tells none (a load switched on and off has steps, not a resolution): 0.
 */
export function resolutionOf(values: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  let [low, high] = [values[0] ?? 0, values[0] ?? 0];
  for (let i = 1; i < values.length; i++) {
    const value = values[i]!;
    if (value < low) low = value;
    if (value > high) high = value;
    const step = Math.abs(value - values[i - 1]!);
    // Sums of decimals differ by rounding alone at 1e-15 of their size.
    if (step > 1e-9 * Math.abs(value) && step < least) least = step;
  }
  return least < (high - low) / 4 ? least : 0;
}

/** @internal Mean, with the uncertainty from the scatter of the means of blocks: rows that follow each other count once. */
export function blockMean(values: Float64Array, blocks = 8): Estimate {
  const n = values.length;
  const count = Math.max(1, Math.min(blocks, n));
  const means: number[] = [];
  let total = 0;
  for (let b = 0; b < count; b++) {
    const from = Math.floor((b * n) / count);
    const to = Math.floor(((b + 1) * n) / count);
    let sum = 0;
    for (let i = from; i < to; i++) sum += values[i]!;
    total += sum;
    means.push(sum / (to - from));
  }
  const value = total / n;
  if (count < 2) return { value, standardUncertainty: 0 };
  const squares = means.reduce((sum, one) => sum + (one - value) ** 2, 0);
  return { value, standardUncertainty: fewBlocks(count) * Math.sqrt(squares / (count * (count - 1))) };
}

/** A standard deviation of few values is itself uncertain: widened as Student's t asks (JCGM 100 G.3), so that 1.96·u covers 95 %. */
function fewBlocks(count: number): number {
  if (count === 2) return 6.48;
  if (count === 3) return 2.2;
  return Math.sqrt((count - 1) / (count - 3));
}

/** @internal First row at or after a time. */
export function rowAtOrAfter(seconds: Float64Array, time: number): number {
  let [low, high] = [0, seconds.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (seconds[middle]! < time) low = middle + 1;
    else high = middle;
  }
  return low;
}
