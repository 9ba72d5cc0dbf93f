import type { LogChunk } from "../chunk.js";
import { rowNumber } from "../chunk.js";
import type { LogSegment } from "../segments.js";
import { createHolding } from "./holding.js";
import { createRowClasses, type RowClass } from "./row-class.js";
import { type SegmentRule, segmentRule } from "./rule.js";
import { addRows, newRun, startRun } from "./run.js";
import type { Run } from "./run-slots.js";

/** Cuts a log into segments while it goes by. */
export interface Segmenter {
  /**
   * Takes the next rows and returns the segments that have ended, in order.
   *
   * @throws RangeError for a row without time or voltage, or one that runs back in time
   */
  push(chunk: LogChunk): readonly LogSegment[];
  /** Returns what is left, up to the last row. */
  finish(): readonly LogSegment[];
}

/**
 * Cuts a log into rest, discharge, charge, cranks, load steps and engine running, by current and voltage with hysteresis.
 *
 * Scope: rows in order of time, each with time and voltage (see `completeRows`), at even or uneven times. Every row belongs to
 * exactly one segment; memory does not grow with the log. A change of current is where a segment ends, so its border lies
 * between two rows; rows beside it that may hold the mean of both sides belong to their segment and are counted in
 * `edges`. A row without current is judged by voltage alone: a dip is a crank, what follows above 13.2 V a running engine, a
 * held voltage a rest, everything else unclassified. Current is not what a starter does: a load test of 2 C for 15 s looks the same as a crank.
 *
 * @param rule thresholds; see {@link SegmentRule}
 * @returns an accumulator: `push` chunks, then `finish`
 * @throws RangeError for a rule that cannot be
 * @example
 * ```ts
 * import { createSegmenter } from "crankworthy/logs";
 * const seconds = Float64Array.of(0, 60, 120, 180, 240, 300);
 * const amperes = Float64Array.of(0, 0, 0, -5, -5, -5);
 * const segmenter = createSegmenter({ ratedAmpereHours: 60 });
 * const ended = segmenter.push({ firstRow: 1, rows: 6, seconds, volts: seconds.map(() => 12.5), amperes });
 * [...ended, ...segmenter.finish()].map((segment) => `${segment.kind} ${segment.firstRow}-${segment.lastRow}`); // => ["rest 1-3", "discharge 4-6"]
 * ```
 */
export function createSegmenter(rule?: SegmentRule): Segmenter {
  const full = segmentRule(rule);
  const classes = createRowClasses(full);
  const holding = createHolding(full);
  const { edgeSeconds } = full;
  let run: Run = newRun();
  let running: RowClass | undefined;
  let latest = Number.NEGATIVE_INFINITY;

  return {
    push(chunk) {
      const { rows, seconds, volts, amperes } = chunk;
      let from = 0;
      for (let i = 0; i < rows; i++) {
        i = classes.skip(chunk, i);
        if (i === rows) break;
        const time = seconds[i]!;
        if (i > 0) latest = Math.max(latest, seconds[i - 1]!);
        if (!(time >= latest) || Number.isNaN(volts[i]!)) refuseRow(chunk, i, latest);
        latest = time;
        const next = classes.next(time, volts[i]!, amperes[i]!);
        if (next === running) continue;
        const before = run;
        if (running !== undefined) {
          if (i > from) addRows(run, chunk, from, i, edgeSeconds);
          run = holding.push(running, run, next, time);
        }
        startRun(run, chunk, i, running === undefined ? undefined : before, edgeSeconds);
        running = next;
        from = i + 1;
      }
      if (rows > from) addRows(run, chunk, from, rows, edgeSeconds);
      if (rows > 0) latest = seconds[rows - 1]!;
      return running === undefined ? [] : holding.take(running, run, latest);
    },
    finish() {
      const rest = running === undefined ? [] : holding.finish(running, run);
      running = undefined;
      run = newRun();
      return rest;
    },
  };
}

function refuseRow(chunk: LogChunk, index: number, latest: number): never {
  const time = chunk.seconds[index];
  throw new RangeError(
    `chunk, row ${rowNumber(chunk, index)}: received ${time} s and ${chunk.volts[index]} V after ${latest} s, expected time and voltage, in order of time`,
  );
}

/**
 * Cuts chunks in memory into segments.
 *
 * @param chunks of one log, in order
 * @param rule thresholds
 * @returns the segments, in order
 * @throws as {@link createSegmenter}
 * @example
 * ```ts
 * import { segmentLog } from "crankworthy/logs";
 * const seconds = Float64Array.of(0, 60, 120);
 * const chunk = { firstRow: 1, rows: 3, seconds, volts: seconds.map(() => 12.6), amperes: seconds.map(() => 0.01) };
 * segmentLog([chunk])[0].reason.code; // => "current-near-zero"
 * ```
 */
export function segmentLog(chunks: Iterable<LogChunk>, rule?: SegmentRule): LogSegment[] {
  const segmenter = createSegmenter(rule);
  const segments: LogSegment[] = [];
  for (const chunk of chunks) segments.push(...segmenter.push(chunk));
  segments.push(...segmenter.finish());
  return segments;
}
