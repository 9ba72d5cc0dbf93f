import type { LogChunk } from "../logs/index.js";
import { requireFinite, wrongArgument } from "../numeric/index.js";
import { type Buckets, emptyBuckets, merge, put, visit } from "./trace-buckets.js";

/** One quantity of a log, thinned: the points of a line that looks like the line through all rows. */
export interface ThinnedChannel {
  /** In order of time [s]. */
  readonly seconds: Float64Array;
  readonly values: Float64Array;
  /** Rows with a value. */
  readonly sampled: number;
  /** Values beyond ±1e12, left out: no reading. */
  readonly beyond: number;
  /** The longest times between two values that follow each other, longest first; of these the picture makes its gaps. */
  readonly longestSteps: readonly { readonly fromSeconds: number; readonly toSeconds: number }[];
}

/** A log of any length, small enough to draw. */
export interface ThinnedTrace {
  readonly rows: number;
  /** Rows whose time is missing or beyond ±1e11 s; they are not in the channels. */
  readonly withoutTime: number;
  /** Rows whose time lies before that of the row above them; drawn in order of time. */
  readonly back: number;
  /** First and last time [s]; NaN without a row. */
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly volts: ThinnedChannel;
  readonly amperes: ThinnedChannel;
}

/** Takes the chunks of a log one after the other. */
export interface TraceThinner {
  push(chunk: LogChunk): void;
  finish(): ThinnedTrace;
}

/** Longest steps kept for each channel. Our choice: more gaps than that are told apart by nobody. */
const STEPS_KEPT = 24;
/** No clock shows more [s]: it is the year 5138. Times the inverse of the first width it stays below 2⁵³. */
const MOST_SECONDS = 1e11;
/** No meter shows more. */
const MOST_VALUE = 1e12;
/** Pixels of the widest picture. */
const WIDEST = 2000;
/** Width of the first buckets [s]: below the step of any logger, a power of two so that multiples stay exact. */
const FIRST_WIDTH = 2 ** -16;

interface Channel {
  readonly buckets: Buckets;
  readonly stepFrom: Float64Array;
  readonly stepTo: Float64Array;
  steps: number;
  /** A step must be longer than this to be kept. */
  shortest: number;
  before: number;
  sampled: number;
  beyond: number;
}

/**
 * Thins a log to what a picture of a given width can show, in one pass and in memory that does not grow with the log.
 *
 * Scope: voltage and current over time; first, last, least and greatest value of every stretch of time are kept, so no
 * peak is lost. The time span need not be known. Rows that run back in time are drawn in order of time and counted.
 *
 * @param columns stretches of time to tell apart at least [1] (16..8192), such as the width of the picture in pixels;
 *   default 2000, the widest picture
 * @returns an accumulator: `push` the chunks in the order of the file, then `finish`
 * @throws RangeError when `columns` is no whole number within its bounds
 * @example
 * ```ts
 * import { createTraceThinner } from "crankworthy/pictures";
 * const thinner = createTraceThinner(64);
 * const seconds = Float64Array.from({ length: 10000 }, (_, i) => i);
 * const volts = seconds.map((i) => (i === 5000 ? 9.6 : 12.6));
 * thinner.push({ firstRow: 1, rows: 10000, seconds, volts, amperes: seconds.map(() => Number.NaN) });
 * const trace = thinner.finish();
 * Math.min(...trace.volts.values); // => 9.6
 * trace.volts.values.length < 600; // => true
 * ```
 */
export function createTraceThinner(columns = WIDEST): TraceThinner {
  requireFinite("columns", columns, 16, 8192);
  if (!Number.isInteger(columns)) wrongArgument("columns", columns, "a whole number");
  // After folding by two at least half of the buckets are in use.
  const count = 2 ** Math.ceil(Math.log2(2 * columns));
  let volts = channel(count);
  let amperes = channel(count);
  let width = FIRST_WIDTH;
  let inverse = 1 / width;
  // Numbers of the first and last bucket in use; bucket k lies at place k modulo count.
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let [rows, withoutTime, back] = [0, 0, 0];
  let [from, to, before] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];

  const place = (bucket: number): number => bucket - count * Math.floor(bucket / count);

  const fold = (lower: number, upper: number): void => {
    const [oldLow, oldHigh, oldInverse] = [low, high, inverse];
    while (Math.floor(upper * inverse) - Math.floor(lower * inverse) >= count) {
      width *= 2;
      inverse = 1 / width;
    }
    const ratio = inverse / oldInverse;
    for (const old of [volts, amperes]) {
      const next = channel(count);
      Object.assign(next, old, { buckets: next.buckets });
      for (let k = oldLow; k <= oldHigh; k++)
        merge(old.buckets, place(k), next.buckets, place(Math.floor(k * ratio)));
      if (old === volts) volts = next;
      else amperes = next;
    }
    low = Math.floor(oldLow * ratio);
    high = Math.floor(oldHigh * ratio);
  };

  return {
    push(chunk) {
      const length = chunk.rows;
      const { seconds, volts: chunkVolts, amperes: chunkAmperes } = chunk;
      if (seconds.length < length || chunkVolts.length < length || chunkAmperes.length < length)
        wrongArgument("chunk.rows", length, "no more than the columns hold");
      rows += length;
      for (let i = 0; i < length; i++) {
        const time = seconds[i]!;
        if (!(time <= MOST_SECONDS && time >= -MOST_SECONDS)) {
          withoutTime++;
          continue;
        }
        if (time < before) back++;
        before = time;
        if (time < from) from = time;
        if (time > to) to = time;
        let bucket = Math.floor(time * inverse);
        if (bucket < low || bucket > high) {
          // A first row alone never needs folding: low and high are infinite then.
          if (
            rows - withoutTime > 0 &&
            low <= high &&
            Math.max(high, bucket) - Math.min(low, bucket) >= count
          ) {
            fold(from, to);
            bucket = Math.floor(time * inverse);
          }
          if (bucket < low) low = bucket;
          if (bucket > high) high = bucket;
        }
        const slot = place(bucket);
        const v = chunkVolts[i]!;
        const a = chunkAmperes[i]!;
        // NaN: not sampled.
        if (!Number.isNaN(v)) take(volts, slot, time, v);
        if (!Number.isNaN(a)) take(amperes, slot, time, a);
      }
    },
    finish() {
      const empty = !(from <= to);
      return {
        rows,
        withoutTime,
        back,
        fromSeconds: empty ? Number.NaN : from,
        toSeconds: empty ? Number.NaN : to,
        volts: thinned(volts, low, high, place),
        amperes: thinned(amperes, low, high, place),
      };
    },
  };
}

function channel(count: number): Channel {
  return {
    buckets: emptyBuckets(count),
    stepFrom: new Float64Array(STEPS_KEPT),
    stepTo: new Float64Array(STEPS_KEPT),
    steps: 0,
    shortest: 0,
    before: Number.NaN,
    sampled: 0,
    beyond: 0,
  };
}

function take(into: Channel, slot: number, time: number, value: number): void {
  if (!(value <= MOST_VALUE && value >= -MOST_VALUE)) {
    into.beyond++;
    return;
  }
  into.sampled++;
  put(into.buckets, slot, time, value);
  if (time - into.before > into.shortest) keepStep(into, time);
  into.before = time;
}

// Rare: only a step longer than one of those kept comes here.
function keepStep(into: Channel, time: number): void {
  const { stepFrom, stepTo } = into;
  let slot = into.steps;
  if (into.steps < STEPS_KEPT) into.steps++;
  else {
    slot = 0;
    for (let i = 1; i < STEPS_KEPT; i++)
      if (stepTo[i]! - stepFrom[i]! < stepTo[slot]! - stepFrom[slot]!) slot = i;
  }
  stepFrom[slot] = into.before;
  stepTo[slot] = time;
  if (into.steps < STEPS_KEPT) return;
  into.shortest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < STEPS_KEPT; i++) into.shortest = Math.min(into.shortest, stepTo[i]! - stepFrom[i]!);
}

function thinned(
  { buckets, sampled, beyond, steps, stepFrom, stepTo }: Channel,
  low: number,
  high: number,
  place: (bucket: number) => number,
): ThinnedChannel {
  const seconds: number[] = [];
  const values: number[] = [];
  for (let k = low; k <= high; k++)
    visit(buckets, place(k), (time, value) => {
      seconds.push(time);
      values.push(value);
    });
  const longestSteps = Array.from({ length: steps }, (_, i) => ({
    fromSeconds: stepFrom[i]!,
    toSeconds: stepTo[i]!,
  })).sort(
    (a, b) => b.toSeconds - b.fromSeconds - (a.toSeconds - a.fromSeconds) || a.fromSeconds - b.fromSeconds,
  );
  return {
    seconds: Float64Array.from(seconds),
    values: Float64Array.from(values),
    sampled,
    beyond,
    longestSteps,
  };
}
