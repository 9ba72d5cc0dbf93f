import type { Estimate } from "../../numeric/index.js";
import { medianOf, rowAtOrAfter } from "./scatter.js";

/** A time in which modules woke after the draw had settled. */
export interface WakeUp {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** Strongest draw, positive [A]. */
  readonly peakAmperes: number;
  /** Taken from the battery during the wake-up, settled draw included [Ah]. */
  readonly ampereHours: number;
}

/** @internal Median by time of a window, and how many pieces it was taken from. */
export interface WindowLevel {
  readonly value: number;
  readonly pieces: number;
}

/** @internal Median by time of the straight lines between rows. */
export function levelBetween(
  seconds: Float64Array,
  draw: Float64Array,
  from: number,
  to: number,
): WindowLevel {
  const pieces: { readonly value: number; readonly time: number }[] = [];
  let total = 0;
  for (let i = Math.max(1, rowAtOrAfter(seconds, from)); i < seconds.length; i++) {
    const [left, right] = [Math.max(from, seconds[i - 1]!), Math.min(to, seconds[i]!)];
    if (left >= to) break;
    if (!(right > left)) continue;
    const middle = ((left + right) / 2 - seconds[i - 1]!) / (seconds[i]! - seconds[i - 1]!);
    pieces.push({ value: draw[i - 1]! * (1 - middle) + draw[i]! * middle, time: right - left });
    total += right - left;
  }
  pieces.sort((a, b) => a.value - b.value);
  let passed = 0;
  for (const { value, time } of pieces) {
    passed += time;
    if (passed >= total / 2) return { value, pieces: pieces.length };
  }
  return { value: pieces.at(-1)?.value ?? 0, pieces: pieces.length };
}

/**
 * @internal By how much the levels of two windows differ under white noise of the rows, at 95 %: 2·√2·1.2533·σ/√n, the median
 * of n being 1.2533 times as uncertain as their mean.
 */
export function levelNoise(noise: number, pieces: number): number {
  return (2 * Math.SQRT2 * 1.2533 * noise) / Math.sqrt(Math.max(1, pieces));
}

/** @internal The first of two windows at the level of the last two that agree; nothing where the draw falls or rises on after them. */
export function settledWindow(
  levels: readonly number[],
  tolerance: (level: number) => number,
): { readonly window: number; readonly level: number } | undefined {
  let last = levels.length - 2;
  while (last >= 0 && Math.abs(levels[last]! - levels[last + 1]!) > tolerance(levels[last + 1]!)) last--;
  if (last < 0 || levels.length - 2 - last > MOST_AWAKE_WINDOWS) return undefined;
  const anchor = levels[last + 1]!;
  const near = (level: number) => Math.abs(level - anchor) <= tolerance(anchor);
  for (const later of levels.slice(last + 2)) if (later < anchor - tolerance(anchor)) return undefined;
  const window = levels.findIndex((one, w) => near(one) && w + 1 < levels.length && near(levels[w + 1]!));
  return { window, level: medianOf(levels.slice(window).filter(near)) };
}

/** A log may end in a wake-up, but not in a longer time awake (our choice). */
const MOST_AWAKE_WINDOWS = 2;

/** @internal First row from which the draw stays within reach, near the first settled window. */
export function settledFrom(seconds: Float64Array, draw: Float64Array, from: number, reach: number): number {
  let row = Math.min(rowAtOrAfter(seconds, from), draw.length - 1);
  while (row < draw.length - 1 && draw[row]! > reach) row++;
  while (row > 0 && draw[row - 1]! <= reach) row--;
  return row;
}

/** @internal Runs of rows above a threshold; runs less than a minute apart are one. */
export function findWakeUps(
  seconds: Float64Array,
  draw: Float64Array,
  fromRow: number,
  threshold: number,
): readonly WakeUp[] {
  const found: WakeUp[] = [];
  let i = fromRow;
  while (i < draw.length) {
    if (!(draw[i]! > threshold)) {
      i++;
      continue;
    }
    const first = i;
    let last = i;
    let peak = draw[i]!;
    for (; i < draw.length && seconds[i]! - seconds[last]! <= MERGE_SECONDS; i++) {
      if (!(draw[i]! > threshold)) continue;
      last = i;
      peak = Math.max(peak, draw[i]!);
    }
    const begin = Math.max(fromRow, first - 1);
    const end = Math.min(draw.length - 1, last + 1);
    let ampereSeconds = 0;
    for (let k = begin + 1; k <= end; k++)
      ampereSeconds += ((draw[k]! + draw[k - 1]!) / 2) * (seconds[k]! - seconds[k - 1]!);
    found.push({
      fromSeconds: seconds[begin]!,
      toSeconds: seconds[end]!,
      peakAmperes: peak,
      ampereHours: ampereSeconds / 3600,
    });
    i = Math.max(i, last + 1);
  }
  return found;
}

/** One wake-up flickers: shorter pauses do not end it (our choice). */
const MERGE_SECONDS = 60;

/** @internal Mean by time from a row on, outside some times; uncertainty from the scatter of windows. */
export function meanOutside(
  seconds: Float64Array,
  draw: Float64Array,
  fromRow: number,
  outside: readonly WakeUp[],
  windowSeconds: number,
  tolerance: number,
): Estimate {
  const sums = new Map<number, { charge: number; time: number }>();
  let [charge, total, next] = [0, 0, 0];
  for (let i = fromRow + 1; i < seconds.length; i++) {
    const [left, right] = [seconds[i - 1]!, seconds[i]!];
    while (next < outside.length && outside[next]!.toSeconds <= left) next++;
    const wake = outside[next];
    if (wake && left >= wake.fromSeconds && right <= wake.toSeconds) continue;
    const part = ((draw[i - 1]! + draw[i]!) / 2) * (right - left);
    const key = Math.floor((left - seconds[fromRow]!) / windowSeconds);
    const window = sums.get(key) ?? { charge: 0, time: 0 };
    window.charge += part;
    window.time += right - left;
    sums.set(key, window);
    charge += part;
    total += right - left;
  }
  if (!(total > 0)) return { value: draw[fromRow]!, standardUncertainty: tolerance / Math.sqrt(3) };
  const value = charge / total;
  let [squares, shares] = [0, 0];
  for (const { charge: own, time } of sums.values()) {
    const share = time / total;
    squares += time > 0 ? (share * (own / time - value)) ** 2 : 0;
    shares += share * share;
  }
  // Too few windows to judge by their scatter: they agreed within the tolerance, that much is known.
  if (shares > 1 / 4) return { value, standardUncertainty: tolerance / Math.sqrt(3) };
  return { value, standardUncertainty: Math.sqrt(squares / (1 - shares)) };
}
