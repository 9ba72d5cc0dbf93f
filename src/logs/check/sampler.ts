/** @internal Keeps every value of a stream up to a number, then every second, fourth, … of them: bounded, and the same for the same stream. */
export interface Sampler {
  add(value: number): void;
  /** All sampled values of a column. `complete`: none is missing. */
  take(column: Float64Array, rows: number, complete: boolean): void;
  /** Values seen. */
  readonly seen: () => number;
  /** Kept values in rising order. */
  sorted(): Float64Array;
}

/** @internal */
export function createSampler(capacity: number): Sampler {
  const kept = new Float64Array(capacity);
  let [count, seen, stride, wait] = [0, 0, 1, 1];

  function keep(value: number): void {
    if (count === capacity) {
      count = capacity >> 1;
      for (let i = 0; i < count; i++) kept[i] = kept[2 * i]!;
      stride *= 2;
    }
    kept[count++] = value;
    wait = stride;
  }
  return {
    add(value) {
      seen++;
      if (--wait === 0) keep(value);
    },
    take(column, rows, complete) {
      if (complete) {
        let i = wait - 1;
        while (i < rows) {
          keep(column[i]!);
          i += wait;
        }
        wait = i - rows + 1;
        seen += rows;
        return;
      }
      for (let i = 0; i < rows; i++) {
        const value = column[i]!;
        // NaN: not sampled.
        if (Number.isNaN(value)) continue;
        seen++;
        if (--wait === 0) keep(value);
      }
    },
    seen: () => seen,
    sorted: () => kept.slice(0, count).sort(),
  };
}

/** @internal The value below which a share of the sorted values lies; NaN of none. */
export function quantile(sorted: Float64Array, share: number): number {
  const last = sorted.length - 1;
  return last < 0 ? Number.NaN : sorted[Math.round(share * last)]!;
}

/** @internal The usual median: the mean of the middle two of an even number; NaN of none. */
export function median(sorted: Float64Array): number {
  const half = sorted.length >> 1;
  if (sorted.length === 0) return Number.NaN;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
