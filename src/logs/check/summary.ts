import type { Block } from "./blocks.js";

/** @internal What one look at a block tells; it lets most checks skip the rows of a sound block. */
export interface BlockSummary {
  /** Every row has time, voltage and current. */
  readonly complete: boolean;
  readonly completeRows: number;
  /** Every row has a time, each later than the one before it, also across the block's edge. */
  readonly increasing: boolean;
  /** Extremes of the time from row to row, of rows in order. */
  readonly leastStep: number;
  readonly mostStep: number;
  /** Extremes of what is sampled; Infinity and −Infinity of nothing. */
  readonly leastVolts: number;
  readonly mostVolts: number;
  readonly leastAmperes: number;
  readonly mostAmperes: number;
  readonly leastTemperature: number;
  readonly mostTemperature: number;
  /** Rows with a temperature. */
  readonly temperatures: number;
}

/** @internal A block as all checks behind the first see it: impossible values are taken out. */
export interface CheckedBlock extends Block, BlockSummary {}

/** @internal One pass over a block. */
export function summarize(block: Block, secondsBefore: number): BlockSummary {
  const { seconds, volts, amperes, rows } = block;
  let increasing = true;
  let completeRows = 0;
  let [leastStep, mostStep] = [Infinity, -Infinity];
  let before = secondsBefore;
  let [leastVolts, mostVolts] = [Infinity, -Infinity];
  let [leastAmperes, mostAmperes] = [Infinity, -Infinity];
  for (let i = 0; i < rows; i++) {
    const time = seconds[i]!;
    const voltage = volts[i]!;
    const current = amperes[i]!;
    const step = time - before;
    before = time;
    if (!(step > 0)) increasing = false;
    if (step < leastStep) leastStep = step;
    if (step > mostStep) mostStep = step;
    // NaN fails every comparison: what is not sampled changes nothing.
    if (voltage < leastVolts) leastVolts = voltage;
    if (voltage > mostVolts) mostVolts = voltage;
    if (current < leastAmperes) leastAmperes = current;
    if (current > mostAmperes) mostAmperes = current;
    if (!Number.isNaN(time + voltage + current)) completeRows++;
  }
  const [leastTemperature, mostTemperature, temperatures] = extremes(block.temperatureCelsius, rows);
  return {
    complete: completeRows === rows,
    completeRows,
    increasing,
    leastStep,
    mostStep,
    leastVolts,
    mostVolts,
    leastAmperes,
    mostAmperes,
    leastTemperature,
    mostTemperature,
    temperatures,
  };
}

/** @internal The block as the checks see it. */
export function checkedBlock(block: Block, summary: BlockSummary): CheckedBlock {
  // Written out: an object spread from two others is slow to read from.
  return {
    firstIndex: block.firstIndex,
    rows: block.rows,
    seconds: block.seconds,
    volts: block.volts,
    amperes: block.amperes,
    temperatureCelsius: block.temperatureCelsius,
    clockSeconds: block.clockSeconds,
    number: block.number,
    complete: summary.complete,
    completeRows: summary.completeRows,
    increasing: summary.increasing,
    leastStep: summary.leastStep,
    mostStep: summary.mostStep,
    leastVolts: summary.leastVolts,
    mostVolts: summary.mostVolts,
    leastAmperes: summary.leastAmperes,
    mostAmperes: summary.mostAmperes,
    leastTemperature: summary.leastTemperature,
    mostTemperature: summary.mostTemperature,
    temperatures: summary.temperatures,
  };
}

/** @internal Least and greatest value of a column, and how many rows have one. */
export function extremes(
  column: Float64Array | undefined,
  rows: number,
): readonly [least: number, most: number, sampled: number] {
  let [least, most, sampled] = [Infinity, -Infinity, 0];
  if (column)
    for (let i = 0; i < rows; i++) {
      const value = column[i]!;
      if (value < least) least = value;
      if (value > most) most = value;
      if (!Number.isNaN(value)) sampled++;
    }
  return [least, most, sampled];
}

/** @internal Values of a column that are not sampled. */
export function countMissing(column: Float64Array | undefined, rows: number): number {
  if (!column) return rows;
  let missing = 0;
  for (let i = 0; i < rows; i++) if (Number.isNaN(column[i]!)) missing++;
  return missing;
}
