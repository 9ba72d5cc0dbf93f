import { isRefusal, type Mutable } from "../../numeric/index.js";
import type { LogChunk } from "../chunk.js";
import { type Block, createBlocks } from "./blocks.js";
import { createClipping } from "./clipping.js";
import { createDuplicates } from "./duplicates.js";
import { createGaps } from "./gaps.js";
import { createIdleCurrent } from "./idle-current.js";
import { createImpossible } from "./impossible.js";
import { requireLagRange } from "./lag-estimate.js";
import { createLagWindows, LAG_AMPERES, LAG_WINDOW_ROWS } from "./lag-windows.js";
import { checkSettings, type LogCheckOptions } from "./options.js";
import { DEFECT_CODES, type LogDefect, type LogDefectTotal, type LogQuality } from "./quality.js";
import { slowSampling } from "./question.js";
import { createSign, signSuspicion } from "./sign.js";
import { createStuck } from "./stuck.js";
import { checkedBlock, countMissing, extremes, summarize } from "./summary.js";
import { createPolarity, otherSystem } from "./system.js";
import { createTimeOrder } from "./time-order.js";
import { createTimeScale, timeScaleDefect } from "./time-scale.js";
import { createTogether } from "./together.js";
import { createUnits } from "./units.js";
import { type Found, wholeLog } from "./whole-log.js";

/** Checks a log piece by piece, in bounded memory whatever its length. */
export interface LogCheck {
  /** The next rows. Their arrays may be used again afterwards. */
  push(chunk: LogChunk): void;
  /** What was found; to be called once, behind the last rows. */
  finish(): LogQuality;
}

/**
 * Starts a check that takes a log piece by piece.
 *
 * Scope: as {@link checkLog}. What is found does not depend on how the rows are cut into chunks.
 *
 * @param options limits and questions, each with a default
 * @returns an accumulator: `push` every chunk, then `finish`
 * @example
 * ```ts
 * import { createLogCheck } from "crankworthy/logs";
 * const check = createLogCheck({ questions: ["crank"] });
 * check.push({
 *   firstRow: 1,
 *   rows: 3,
 *   seconds: Float64Array.of(0, 1, 2),
 *   volts: Float64Array.of(12.6, 10.1, 10.4),
 *   amperes: Float64Array.of(0, -200, -180),
 * });
 * check.finish().defects[0].code; // => "sampling-too-slow"
 * ```
 */
export function createLogCheck(options?: LogCheckOptions): LogCheck {
  const settings = checkSettings(options);
  if (settings.lag) requireLagRange(settings.lag);
  const impossible = createImpossible(settings);
  const units = createUnits();
  const order = createTimeOrder(settings);
  const duplicates = createDuplicates(settings);
  const gaps = createGaps(settings);
  const timeScale = createTimeScale();
  const together = createTogether(settings);
  const stuck = createStuck(settings);
  const clipping = createClipping(settings);
  const idle = createIdleCurrent(settings);
  const sign = createSign();
  const polarity = createPolarity(settings);
  const lag = createLagWindows(settings.lag);
  const missing = { seconds: 0, volts: 0, amperes: 0, temperatureCelsius: 0, clockSeconds: 0 };
  let [rows, completeRows, firstRow, lastRow] = [0, 0, 0, 0];
  let [before, fromSeconds, toSeconds] = [Number.NEGATIVE_INFINITY, Infinity, -Infinity];

  function use(raw: Block): void {
    let summary = summarize(raw, before);
    completeRows += summary.completeRows;
    if (!summary.complete)
      for (const name of ["seconds", "volts", "amperes"] as const)
        missing[name] += countMissing(raw[name], raw.rows);
    missing.temperatureCelsius += raw.rows - summary.temperatures;
    missing.clockSeconds += countMissing(raw.clockSeconds, raw.rows);
    units.scan(raw, summary);
    together.scan(raw, summary.complete);
    const clean = impossible.clean(raw, summary);
    if (clean !== raw) summary = summarize(clean, before);
    before = clean.seconds[clean.rows - 1]!;
    if (rows === 0) firstRow = raw.number(0);
    lastRow = raw.number(raw.rows - 1);
    rows += raw.rows;
    const [least, most] = summary.increasing
      ? [clean.seconds[0]!, before]
      : extremes(clean.seconds, raw.rows);
    fromSeconds = Math.min(fromSeconds, least);
    toSeconds = Math.max(toSeconds, most);
    const block = checkedBlock(clean, summary);
    gaps.scan(block, order.scan(block));
    duplicates.scan(block);
    timeScale.scan(block);
    stuck.scan(block);
    clipping.scan(block);
    idle.scan(block);
    sign.scan(block);
    polarity.scan(block);
    if (block.mostAmperes - block.leastAmperes >= LAG_AMPERES)
      for (let from = 0; from + LAG_WINDOW_ROWS <= block.rows; from += LAG_WINDOW_ROWS)
        lag.add(block.seconds, block.volts, block.amperes, from, LAG_WINDOW_ROWS);
  }
  const blocks = createBlocks(use);

  return {
    push: blocks.push,
    finish(): LogQuality {
      blocks.finish();
      const log = { firstRow, lastRow, count: rows };
      const { sampling, loadedMedianSeconds, restMedianSeconds, found: gapsFound } = gaps.finish();
      const scale = timeScale.finish();
      const evidence = sign.finish();
      const { found: unitsFound, explained, sortedVolts } = units.finish(evidence, log);
      const lagFound = missing.amperes < rows ? lag.finish() : undefined;
      const found: Found[] = [
        ...order.finish(),
        ...duplicates.finish(),
        ...gapsFound,
        ...(scale ? timeScaleDefect(scale, log) : []),
        ...impossible.finish(explained),
        ...together.finish(),
        ...stuck.finish(),
        ...clipping.finish(),
        ...idle.finish(),
        ...unitsFound,
        ...signSuspicion(evidence),
        polarity.finish(),
        ...otherSystem(sortedVolts, log),
      ];
      if (lagFound && !isRefusal(lagFound)) {
        const { value, standardUncertainty } = lagFound.lagSeconds;
        // Within two standard uncertainties of zero there may be none.
        if (Math.abs(value) > 2 * standardUncertainty)
          found.push(wholeLog("current-lag", "warning", log, { lagSeconds: value, standardUncertainty }));
      }
      found.push(slowSampling(settings.questions, sampling, loadedMedianSeconds, restMedianSeconds, log));
      const quality: Mutable<LogQuality> = { rows, completeRows, missing, ...inOrder(found) };
      if (toSeconds >= fromSeconds) quality.span = { fromSeconds, toSeconds };
      if (sampling) quality.sampling = sampling;
      if (lagFound) quality.lag = lagFound;
      if (scale) quality.timeScale = scale;
      return quality;
    },
  };
}

/** By code, then by row. */
function inOrder(found: readonly Found[]): { defects: LogDefect[]; totals: LogDefectTotal[] } {
  const place = (one: { readonly code: LogDefect["code"] }) => DEFECT_CODES.indexOf(one.code);
  const defects = found.flatMap((one) => one.defects);
  const totals = found.flatMap((one) => one.total ?? []);
  return {
    defects: defects.sort((a, b) => place(a) - place(b) || a.firstRow - b.firstRow),
    totals: totals.sort((a, b) => place(a) - place(b)),
  };
}

/**
 * Reports every defect of a log with rows, rule and severity. Nothing is repaired.
 *
 * Scope: one 12 V lead-acid battery, any sampling, change-driven too; time, voltage, current, and temperature or a second
 * clock where there are. Suspicions rest on typical ranges and say their numbers; a log without any defect may still be
 * wrong. Impossible and sentinel numbers count as not sampled in the other checks.
 *
 * @param chunks the log from its first row on
 * @param options limits and questions, each with a default
 * @returns counts, sampling, defects, lag between current and voltage
 *
 * Source: limits are our choice, with their reasons at the options; the time scale is that of the Battery Data Format.
 * @example
 * ```ts
 * import { checkLog } from "crankworthy/logs";
 * const seconds = Float64Array.of(0, 1, 2, 1.9, 3, 4);
 * const volts = Float64Array.of(12.6, 12.6, 12.59, 12.6, 999, 12.6);
 * const quality = checkLog([{ firstRow: 1, rows: 6, seconds, volts, amperes: seconds.map(() => 0) }]);
 * quality.defects.map((one) => `${one.code} ${one.firstRow}`); // => ["time-out-of-order 4", "sentinel-number 5"]
 * quality.defects[0].severity; // => "warning"
 * ```
 */
export function checkLog(chunks: Iterable<LogChunk>, options?: LogCheckOptions): LogQuality {
  const check = createLogCheck(options);
  for (const chunk of chunks) check.push(chunk);
  return check.finish();
}
