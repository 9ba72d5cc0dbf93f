/**
 * @internal Counts of intervals by length, eight classes to the octave, with the sum in each: enough for a median that is
 * exact for a regular log, in a memory that does not grow.
 */
export interface IntervalCounts {
  add(seconds: number, count: number, sum: number): void;
  merge(other: IntervalCounts): void;
  readonly counts: Float64Array;
  readonly sums: Float64Array;
  readonly total: () => number;
  /** Mean of the class that holds this share of the intervals; undefined of none. */
  quantile(share: number): number | undefined;
  /** Intervals whose class has a mean outside these. */
  outside(lower: number, upper: number): number;
}

const OCTAVES = 96;
const LOWEST = -40;

/** Exponent of a double, as stored, that the lowest octave has. */
const LOWEST_EXPONENT = 1023 + LOWEST;

/**
 * @internal Gives the class of an interval, an eighth of an octave, 7 to 12 % wide: exponent and first three digits of the
 * number as it lies in memory, ten times faster than its logarithm.
 */
export function createIntervalClass(): (seconds: number) => number {
  const double = new Float64Array(1);
  const words = new Uint32Array(double.buffer);
  double[0] = 1;
  const high = words[1] === 0 ? 0 : 1;
  return (seconds) => {
    double[0] = seconds;
    const place = (words[high]! >>> 17) - LOWEST_EXPONENT * 8;
    return Math.min(OCTAVES * 8 - 1, Math.max(0, place));
  };
}

/** @internal */
export function createIntervalCounts(): IntervalCounts {
  const intervalClass = createIntervalClass();
  const counts = new Float64Array(OCTAVES * 8);
  const sums = new Float64Array(OCTAVES * 8);
  const total = () => counts.reduce((all, one) => all + one, 0);
  return {
    add(seconds, count, sum) {
      const at = intervalClass(seconds);
      counts[at]! += count;
      sums[at]! += sum;
    },
    merge(other) {
      for (let i = 0; i < counts.length; i++) {
        counts[i]! += other.counts[i]!;
        sums[i]! += other.sums[i]!;
      }
    },
    counts,
    sums,
    total,
    quantile(share) {
      let left = share * total();
      for (let i = 0; i < counts.length; i++) {
        left -= counts[i]!;
        if (counts[i]! > 0 && left <= 0) return sums[i]! / counts[i]!;
      }
      return undefined;
    },
    outside(lower, upper) {
      let sum = 0;
      for (let i = 0; i < counts.length; i++) {
        if (counts[i] === 0) continue;
        const mean = sums[i]! / counts[i]!;
        if (mean < lower || mean > upper) sum += counts[i]!;
      }
      return sum;
    },
  };
}
