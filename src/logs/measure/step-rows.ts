import type { LogSeries } from "../series.js";

/** @internal Settled rows on both sides of a step, each list starting at the step. */
export interface FoundStep {
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** Up to {@link WIDER} settled rows a side, whatever their distance: for the slope. */
  readonly widerBefore: readonly number[];
  readonly widerAfter: readonly number[];
  readonly spanSeconds: number;
  readonly edgeRows: number;
}

interface StepRule {
  readonly leastStepAmperes: number;
  readonly windowSeconds: number;
  readonly settledShare: number;
}

const WIDER = 6;
/** A row whose voltage went this share of the way to the other side is an edge row (our choice; a mean of both lies at 0.5). */
const EDGE_SHARE = 0.25;

/** @internal Finds steps of the current and the settled rows beside them. */
export function findSteps(series: LogSeries, rule: StepRule): readonly FoundStep[] {
  const { amperes } = series;
  const rows = amperes.length;
  const found: FoundStep[] = [];
  let last = 0;
  while (last < rows - 1) {
    const first = last;
    let change = amperes[first + 1]! - amperes[first]!;
    last++;
    if (Math.abs(change) < 0.1 * rule.leastStepAmperes) continue;
    // A step may take several rows, as long as each goes on in its direction.
    while (last < rows - 1) {
      const more = amperes[last + 1]! - amperes[last]!;
      if (more * change <= 0 || Math.abs(more) < 0.1 * Math.abs(change)) break;
      change += more;
      last++;
    }
    if (Math.abs(change) < rule.leastStepAmperes) continue;
    const step = settledRows(series, first, last, rule);
    if (step) found.push(step);
  }
  return found;
}

function settledRows(series: LogSeries, first: number, last: number, rule: StepRule): FoundStep | undefined {
  const { seconds, volts, amperes } = series;
  const tolerance = rule.settledShare * Math.abs(amperes[last]! - amperes[first]!);
  const side = (start: number, direction: 1 | -1): number[] => {
    const list: number[] = [];
    for (let i = start; i >= 0 && i < seconds.length && list.length < 64; i += direction) {
      if (Math.abs(amperes[i]! - amperes[start]!) > tolerance) break;
      list.push(i);
    }
    return list;
  };
  let before = side(first, -1);
  let after = side(last, 1);
  const rows = before.length + after.length;
  // A voltage that the logger repeats on both sides was read once, somewhere across the step.
  const repeated = new Set(
    before.slice(0, 3).filter((a) => after.slice(0, 3).some((b) => volts[a] === volts[b])),
  );
  const across = new Set([...repeated].map((row) => volts[row]));
  before = before.filter((row, i) => i >= 3 || !across.has(volts[row]));
  after = after.filter((row, i) => i >= 3 || !across.has(volts[row]));
  if (isMean(volts, before, after)) before = before.slice(1);
  if (isMean(volts, after, before)) after = after.slice(1);
  if (before.length === 0 || after.length === 0) return undefined;
  const near = (list: readonly number[]) =>
    list.filter((row) => Math.abs(seconds[row]! - seconds[list[0]!]!) <= rule.windowSeconds);
  return {
    before: near(before),
    after: near(after),
    widerBefore: before.slice(0, WIDER),
    widerAfter: after.slice(0, WIDER),
    spanSeconds: seconds[after[0]!]! - seconds[before[0]!]!,
    edgeRows: rows - before.length - after.length + last - first - 1,
  };
}

/** Whether the row at the step has gone part of the way from its own side's level to the other's. */
function isMean(volts: Float64Array, own: readonly number[], other: readonly number[]): boolean {
  if (own.length < 2 || other.length === 0) return false;
  const level = volts[own[1]!]!;
  const far = volts[other[Math.min(1, other.length - 1)]!]!;
  const share = (volts[own[0]!]! - level) / (far - level);
  return share > EDGE_SHARE && share < 1;
}
