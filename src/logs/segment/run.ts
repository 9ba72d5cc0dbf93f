import type { LogChunk } from "../chunk.js";
import { rowNumber } from "../chunk.js";
import { gapVariance } from "../measure/charge-moved.js";
import {
  BEFORE_SECONDS,
  BEFORE_VOLTS,
  CELSIUS_ROWS,
  CHARGE_IN,
  CHARGE_OUT,
  EDGE_OPEN,
  FIRST_AMPERES,
  FIRST_CHANGE,
  FIRST_ROW,
  FIRST_STEP,
  FIRST_VOLTS,
  FROM,
  INNER_FROM,
  LAST_AMPERES,
  LAST_CHANGE,
  LAST_ROW,
  LAST_STEP,
  LAST_VOLTS,
  LEAST_AMPERES,
  LEAST_VOLTS,
  LEAST_VOLTS_ROW,
  LONGEST_GAP,
  MOST_AMPERES,
  MOST_VOLTS,
  NOISE,
  ROWS,
  type Run,
  SECOND_LAST_SECONDS,
  SECOND_LAST_VOLTS,
  SIZE,
  START_EDGES,
  SUM_AMPERES,
  SUM_CELSIUS,
  SUM_SQUARES,
  SUM_VOLTS,
  THIRD_LAST_SECONDS,
  THIRD_LAST_VOLTS,
  TO,
  VARIANCE,
  VOLT_SECONDS,
} from "./run-slots.js";

export const newRun = (): Run => new Float64Array(SIZE);

export function startRun(
  run: Run,
  chunk: LogChunk,
  index: number,
  before: Run | undefined,
  edgeSeconds: number,
): void {
  const row = rowNumber(chunk, index);
  const seconds = chunk.seconds[index]!;
  const volts = chunk.volts[index]!;
  const amperes = chunk.amperes[index]!;
  run.fill(0);
  run[ROWS] = 1;
  run[FIRST_ROW] = run[LAST_ROW] = row;
  run[FROM] = run[TO] = run[INNER_FROM] = seconds;
  run[FIRST_VOLTS] = run[LAST_VOLTS] = run[SUM_VOLTS] = volts;
  run[FIRST_AMPERES] = run[LAST_AMPERES] = run[SUM_AMPERES] = amperes;
  run[SUM_SQUARES] = amperes * amperes;
  run[LEAST_VOLTS] = run[MOST_VOLTS] = volts;
  run[LEAST_VOLTS_ROW] = row;
  run[LEAST_AMPERES] = run[MOST_AMPERES] = amperes;
  run[SECOND_LAST_SECONDS] = run[THIRD_LAST_SECONDS] = Number.NaN;
  run[BEFORE_SECONDS] = before ? before[TO]! : Number.NaN;
  run[BEFORE_VOLTS] = before ? before[LAST_VOLTS]! : Number.NaN;
  run[EDGE_OPEN] = 1;
  countStartEdge(run, seconds, volts, edgeSeconds);
  if (chunk.temperatureCelsius) addCelsius(run, chunk.temperatureCelsius[index]!);
}

function countStartEdge(run: Run, seconds: number, volts: number, edgeSeconds: number): void {
  const near = run[START_EDGES]! < 2 && seconds - run[BEFORE_SECONDS]! <= edgeSeconds;
  if (run[START_EDGES]! < 3 && (near || volts === run[BEFORE_VOLTS])) run[START_EDGES]!++;
  else {
    run[EDGE_OPEN] = 0;
    run[INNER_FROM] = seconds;
  }
}

/** Ampere-seconds that go in on a straight line that changes sign, split at zero as `chargeMoved` does. */
function chargeInto(step: number, a: number, b: number): number {
  const inward = Math.max(a, b);
  return (inward * inward * step) / (2 * (Math.abs(a) + Math.abs(b)));
}

/** A gap, as of `chargeMoved`; for its median stands the interval before, since nothing is known of those to come. */
const GAP_SECONDS = 900;
const GAP_FACTOR = 3;

/** Variance of the charge of one interval [A²s²]: the current lay between its ends, or in a gap anywhere up to twice the stronger. */
function between(step: number, stepBefore: number, a: number, b: number): number {
  if (step > GAP_SECONDS && step > GAP_FACTOR * stepBefore) return gapVariance(step, a, b);
  const spread = (b - a) * step;
  return (spread * spread) / 12;
}

/** Adds the straight line between two runs. */
export function addInterval(run: Run, step: number, a: number, b: number): void {
  const moved = ((a + b) / 2) * step;
  const into = a >= 0 && b >= 0 ? moved : a <= 0 && b <= 0 ? 0 : chargeInto(step, a, b);
  run[CHARGE_IN]! += into;
  run[CHARGE_OUT]! += into - moved;
  const change = b - a;
  run[VARIANCE]! += between(step, run[LAST_STEP]!, a, b);
  const width = (step + run[LAST_STEP]!) / 2;
  run[NOISE]! -= change * run[LAST_CHANGE]! * width * width;
  if (run[ROWS] === 1) [run[FIRST_STEP], run[FIRST_CHANGE]] = [step, change];
  run[LAST_STEP] = step;
  run[LAST_CHANGE] = change;
  if (step > run[LONGEST_GAP]!) run[LONGEST_GAP] = step;
}

/** Adds the rows from `from` to before `to`; the first of them follows the last row of the run. */
export function addRows(run: Run, chunk: LogChunk, from: number, to: number, edgeSeconds: number): void {
  const { seconds, volts, amperes, temperatureCelsius } = chunk;
  // Rows that may be edge rows are looked at one by one.
  for (let i = from; i < to && run[EDGE_OPEN] === 1; i++)
    countStartEdge(run, seconds[i]!, volts[i]!, edgeSeconds);
  addSums(run, chunk, from, to);
  for (let i = Math.max(from, to - 3); i < to; i++) {
    run[THIRD_LAST_SECONDS] = run[SECOND_LAST_SECONDS]!;
    run[THIRD_LAST_VOLTS] = run[SECOND_LAST_VOLTS]!;
    run[SECOND_LAST_SECONDS] = run[TO]!;
    run[SECOND_LAST_VOLTS] = run[LAST_VOLTS]!;
    run[TO] = seconds[i]!;
    run[LAST_VOLTS] = volts[i]!;
  }
  run[LAST_AMPERES] = amperes[to - 1]!;
  run[LAST_ROW] = rowNumber(chunk, to - 1);
  if (!temperatureCelsius) return;
  let [sum, count] = [run[SUM_CELSIUS]!, run[CELSIUS_ROWS]!];
  for (let i = from; i < to; i++) {
    const celsius = temperatureCelsius[i]!;
    if (Number.isNaN(celsius)) continue;
    sum += celsius;
    count++;
  }
  run[SUM_CELSIUS] = sum;
  run[CELSIUS_ROWS] = count;
}

// Everything in local variables: this loop sees every row of a log.
function addSums(run: Run, chunk: LogChunk, from: number, to: number): void {
  const { seconds, volts, amperes } = chunk;
  let [time, voltage, current] = [run[TO]!, run[LAST_VOLTS]!, run[LAST_AMPERES]!];
  // From where they stand: the order of summing does not depend on how rows are cut into chunks.
  let [chargeIn, chargeOut, variance] = [run[CHARGE_IN]!, run[CHARGE_OUT]!, run[VARIANCE]!];
  let [noise, stepBefore, changeBefore] = [run[NOISE]!, run[LAST_STEP]!, run[LAST_CHANGE]!];
  let [voltSeconds, sumVolts] = [run[VOLT_SECONDS]!, run[SUM_VOLTS]!];
  let [sumAmperes, sumSquares] = [run[SUM_AMPERES]!, run[SUM_SQUARES]!];
  let [leastVolts, mostVolts, leastAmperes] = [run[LEAST_VOLTS]!, run[MOST_VOLTS]!, run[LEAST_AMPERES]!];
  let [mostAmperes, longest, leastAt] = [run[MOST_AMPERES]!, run[LONGEST_GAP]!, -1];
  for (let i = from; i < to; i++) {
    const t = seconds[i]!;
    const v = volts[i]!;
    const a = amperes[i]!;
    const step = t - time;
    const moved = ((current + a) / 2) * step;
    if (current >= 0 && a >= 0) chargeIn += moved;
    else if (current <= 0 && a <= 0) chargeOut -= moved;
    // In − out is the trapezoid.
    else {
      const into = chargeInto(step, current, a);
      chargeIn += into;
      chargeOut += into - moved;
    }
    const change = a - current;
    variance += between(step, stepBefore, current, a);
    const width = (step + stepBefore) / 2;
    noise -= change * changeBefore * width * width;
    stepBefore = step;
    changeBefore = change;
    if (step > longest) longest = step;
    voltSeconds += ((voltage + v) / 2) * step;
    sumVolts += v;
    sumAmperes += a;
    sumSquares += a * a;
    if (v < leastVolts) {
      leastVolts = v;
      leastAt = i;
    } else if (v > mostVolts) mostVolts = v;
    if (a < leastAmperes) leastAmperes = a;
    else if (a > mostAmperes) mostAmperes = a;
    time = t;
    voltage = v;
    current = a;
  }
  if (run[ROWS] === 1 && from < to) {
    run[FIRST_STEP] = seconds[from]! - run[FROM]!;
    run[FIRST_CHANGE] = amperes[from]! - run[FIRST_AMPERES]!;
  }
  run[NOISE] = noise;
  run[LAST_STEP] = stepBefore;
  run[LAST_CHANGE] = changeBefore;
  run[ROWS]! += to - from;
  run[CHARGE_IN] = chargeIn;
  run[CHARGE_OUT] = chargeOut;
  run[VARIANCE] = variance;
  run[VOLT_SECONDS] = voltSeconds;
  run[SUM_VOLTS] = sumVolts;
  run[SUM_AMPERES] = sumAmperes;
  run[SUM_SQUARES] = sumSquares;
  run[LEAST_VOLTS] = leastVolts;
  if (leastAt >= 0) run[LEAST_VOLTS_ROW] = rowNumber(chunk, leastAt);
  run[MOST_VOLTS] = mostVolts;
  run[LEAST_AMPERES] = leastAmperes;
  run[MOST_AMPERES] = mostAmperes;
  run[LONGEST_GAP] = longest;
}

/** Appends `next`, and the interval between the two, to `run`; `next` is empty afterwards. */
export function mergeRun(run: Run, next: Run): void {
  if (next[ROWS] === 0) return;
  if (run[ROWS] === 0) {
    run.set(next);
    next[ROWS] = 0;
    return;
  }
  const step = next[FROM]! - run[TO]!;
  addInterval(run, step, run[LAST_AMPERES]!, next[FIRST_AMPERES]!);
  if (next[ROWS]! > 1) {
    const width = (run[LAST_STEP]! + next[FIRST_STEP]!) / 2;
    run[NOISE]! -= run[LAST_CHANGE]! * next[FIRST_CHANGE]! * width * width;
    run[LAST_STEP] = next[LAST_STEP]!;
    run[LAST_CHANGE] = next[LAST_CHANGE]!;
  }
  run[VOLT_SECONDS]! += ((run[LAST_VOLTS]! + next[FIRST_VOLTS]!) / 2) * step + next[VOLT_SECONDS]!;
  for (const sum of MERGED_SUMS) run[sum]! += next[sum]!;
  if (next[LEAST_VOLTS]! < run[LEAST_VOLTS]!) {
    run[LEAST_VOLTS] = next[LEAST_VOLTS]!;
    run[LEAST_VOLTS_ROW] = next[LEAST_VOLTS_ROW]!;
  }
  run[MOST_VOLTS] = Math.max(run[MOST_VOLTS]!, next[MOST_VOLTS]!);
  run[LEAST_AMPERES] = Math.min(run[LEAST_AMPERES]!, next[LEAST_AMPERES]!);
  run[MOST_AMPERES] = Math.max(run[MOST_AMPERES]!, next[MOST_AMPERES]!);
  run[LONGEST_GAP] = Math.max(run[LONGEST_GAP]!, next[LONGEST_GAP]!);
  const rows = next[ROWS]!;
  if (rows < 3) {
    run[THIRD_LAST_SECONDS] = rows === 2 ? run[TO]! : run[SECOND_LAST_SECONDS]!;
    run[THIRD_LAST_VOLTS] = rows === 2 ? run[LAST_VOLTS]! : run[SECOND_LAST_VOLTS]!;
    run[SECOND_LAST_SECONDS] = rows === 2 ? next[SECOND_LAST_SECONDS]! : run[TO]!;
    run[SECOND_LAST_VOLTS] = rows === 2 ? next[SECOND_LAST_VOLTS]! : run[LAST_VOLTS]!;
  } else for (let at = SECOND_LAST_SECONDS; at <= THIRD_LAST_VOLTS; at++) run[at] = next[at]!;
  run[LAST_ROW] = next[LAST_ROW]!;
  run[TO] = next[TO]!;
  run[LAST_VOLTS] = next[LAST_VOLTS]!;
  run[LAST_AMPERES] = next[LAST_AMPERES]!;
  if (run[EDGE_OPEN] === 1) {
    run[EDGE_OPEN] = 0;
    run[INNER_FROM] = next[FROM]!;
  }
  next[ROWS] = 0;
}

const MERGED_SUMS: readonly number[] = [
  ROWS,
  CHARGE_IN,
  CHARGE_OUT,
  VARIANCE,
  NOISE,
  SUM_VOLTS,
  SUM_AMPERES,
  SUM_SQUARES,
  SUM_CELSIUS,
  CELSIUS_ROWS,
];

function addCelsius(run: Run, celsius: number): void {
  if (Number.isNaN(celsius)) return;
  run[SUM_CELSIUS]! += celsius;
  run[CELSIUS_ROWS]! += 1;
}
