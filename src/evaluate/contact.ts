/** Spread between placings of the clamps against what repeats within a placing, all relative to the mean. */
export interface ContactSpread {
  readonly between: number;
  readonly within: number;
  /** Largest spread that repeatability alone explains. */
  readonly limit: number;
  /** Standard uncertainty that setting the clamps anew adds to the mean. */
  readonly standardUncertainty: number;
}

/** A display cannot show less scatter than its last digit hides, as a fraction of the reading. Our choice. */
const LEAST_REPEATABILITY = 0.003;
/** The range of a few means reaches 3.5 of their standard deviations by chance about once in 100. Our choice. */
const RANGE_LIMIT = 3.5;

/**
 * What clamps, adapters and studs add to a reading: the spread of the means of each placing, held against the scatter
 * within the placings. One-way analysis of variance, by ranges.
 *
 * @param readings placing after placing, a whole number of placings
 * @param size readings of each placing, 2 or more
 */
export function contactSpread(readings: readonly number[], size: number): ContactSpread {
  const placings = readings.length / size;
  let total = 0;
  for (const one of readings) total += one;
  const mean = total / readings.length;
  let squares = 0;
  let meanSquares = 0;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let from = 0; from < readings.length; from += size) {
    let sum = 0;
    for (let i = from; i < from + size; i++) sum += readings[i]!;
    const placing = sum / size;
    for (let i = from; i < from + size; i++) squares += (readings[i]! - placing) ** 2;
    meanSquares += (placing - mean) ** 2;
    lowest = Math.min(lowest, placing);
    highest = Math.max(highest, placing);
  }
  const within = Math.max(LEAST_REPEATABILITY, Math.sqrt(squares / (placings * (size - 1))) / mean);
  return {
    between: (highest - lowest) / mean,
    within,
    limit: (RANGE_LIMIT * within) / Math.sqrt(size),
    standardUncertainty: Math.sqrt(meanSquares / (placings - 1) / placings) / mean,
  };
}
