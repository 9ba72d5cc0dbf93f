import { type Estimate, isRefusal, type Refusal, refuse, requireFinite } from "../../numeric/index.js";
import type { TextInput } from "../../streams/index.js";
import { createLogCheck } from "../check/check-log.js";
import type { LogCheckOptions } from "../check/options.js";
import type { LogQuality } from "../check/quality.js";
import type { LogChunk } from "../chunk.js";
import { chargeFactor, chargeMovedInSegments, type SegmentCharge } from "../measure/charge-factor.js";
import type { ChargeMoved } from "../measure/charge-moved.js";
import type { ReadTally } from "../read/bad-cells.js";
import { completeRows } from "../read/complete-rows.js";
import type { LogFormat } from "../read/format.js";
import type { HeaderReading } from "../read/header.js";
import { type OpenLogOptions, openLog } from "../read/open-log.js";
import { type SegmentRule, segmentRule } from "../segment/rule.js";
import { createSegmenter } from "../segment/segmenter.js";
import type { LogSegment, SegmentKind } from "../segments.js";
import { createLastEvent } from "./last-event.js";
import { createStepResistance, type LogResistance } from "./log-resistance.js";
import {
  type EndedSegment,
  type MeasureOptions,
  measureParked,
  measureSegment,
  rowsNeededFrom,
  rowsNeededUntil,
} from "./measure-segment.js";
import type { LogMeasurement } from "./measurement.js";
import { createRowOrder } from "./row-order.js";
import { createRowWindow } from "./row-window.js";
import { createSegmentTemperature } from "./segment-temperature.js";
import { timedVoltages } from "./timed-voltages.js";

/** What to look for in a log, and how much of it to keep in memory. */
export interface AnalyseLogOptions extends OpenLogOptions {
  readonly rule?: SegmentRule;
  readonly check?: LogCheckOptions;
  readonly measure?: MeasureOptions;
  /**
   * Rows may come late by this much and are put in their place [s] (≥ 0). Default 0: rows that run back in time are reported,
   * and nothing behind the first of them is segmented or measured.
   */
  readonly reorderWithinSeconds?: number;
  /** By how much the current is reported later than the voltage, for the resistance [s]. Default: what the check finds, or 0. */
  readonly currentLagSeconds?: number;
  /** Rows kept for looking back at a segment (1000..10 000 000). Default 32 768: five minutes at 100 Hz, half a minute at 1 kHz. */
  readonly mostRowsKept?: number;
  /** Segments, and measurements of segments, returned (≥ 1). Default 10 000: a start every hour of a year. The rest is counted. */
  readonly mostSegments?: number;
  /** Called with every segment as it ends, also beyond `mostSegments`. */
  readonly onSegment?: (segment: LogSegment, number: number) => void;
  /** Called with every chunk as it was read, before anything is done with it. */
  readonly onChunk?: (chunk: LogChunk) => void;
}

/** Why nothing is said of a log as a whole. */
export type NoWholeLog = "no-current" | "out-of-order" | "values-not-plausible";

/** Everything one pass over a log tells. */
export interface LogAnalysis {
  readonly header: HeaderReading;
  readonly tally: ReadTally;
  readonly quality: LogQuality;
  readonly segments: readonly LogSegment[];
  /** Segments beyond `mostSegments`; their charge is in `charge` all the same. */
  readonly segmentsLeftOut: number;
  readonly measurements: readonly LogMeasurement[];
  /** Ampere-hours in and out over the whole log. */
  readonly charge: ChargeMoved | Refusal<"no-segment" | NoWholeLog>;
  /** Charge in over charge out. */
  readonly chargeFactor: Estimate | Refusal<"no-discharge" | "no-segment" | NoWholeLog>;
  readonly resistance: LogResistance | Refusal<NoWholeLog>;
  /** Rows that came late and were put in their place. */
  readonly rowsReordered: number;
  /** Set where rows ran back in time further than `reorderWithinSeconds`: nothing from this row on was segmented or measured. */
  readonly stoppedAtRow?: number;
}

const OUT_OF_ORDER = () =>
  refuse(
    "out-of-order",
    "Rows run back in time.",
    "reorderWithinSeconds, if rows are only a little late; otherwise a log whose clock was not set back.",
  );
const NOT_PLAUSIBLE = () =>
  refuse(
    "values-not-plausible",
    "Some values are beyond any battery.",
    "A log without them; the check names the rows.",
  );
const NO_CURRENT = () => refuse("no-current", "The log has no current.", "A log with a column of current.");

/**
 * Reads, checks, segments and measures a log in one pass.
 *
 * Scope: any length; memory holds a window of rows, the segments and their measurements. Each segment is measured when it
 * ends, by its kind: settled voltage of a rest, minimum of a crank, regulated voltage of a charge, and what `measure` asks for
 * besides. Resistance comes from every step of the load, and from a line over the whole log where it fits the window.
 *
 * @param input text, bytes, `{ path }`, a `file:` URL, a Node or Web stream, an iterable of chunks
 * @param format how the table is written; `bdf` for the Battery Data Format
 * @param options signal, progress, thresholds, limits of memory
 * @returns header, quality, segments, measurements; refusals where something cannot be told
 * @throws as `openLog`; RangeError for options that cannot be
 * @example
 * ```ts
 * import { analyseLog } from "crankworthy/logs";
 * const rows = Array.from({ length: 240 }, (_, i) => `${60 * i},${i < 120 ? 12.1 : 12.3},${i < 120 ? -3 : 0}`);
 * const log = await analyseLog(["Test Time / s,Voltage / V,Current / A", ...rows].join("\n"), "bdf");
 * log.segments.map((segment) => segment.kind); // => ["discharge", "rest"]
 * log.charge.outAmpereHours.value.toFixed(1); // => "6.0"
 * ```
 */
export async function analyseLog(
  input: TextInput,
  format: LogFormat,
  options: AnalyseLogOptions = {},
): Promise<LogAnalysis> {
  const {
    rule,
    check,
    measure = {},
    reorderWithinSeconds = 0,
    currentLagSeconds,
    mostRowsKept = 32_768,
    mostSegments = 10_000,
    onSegment,
    onChunk,
    ...reading
  } = options;
  requireFinite("options.reorderWithinSeconds", reorderWithinSeconds, 0);
  requireFinite("options.mostRowsKept", mostRowsKept, 1000, 10_000_000);
  requireFinite("options.mostSegments", mostSegments, 1);
  if (currentLagSeconds !== undefined) requireFinite("options.currentLagSeconds", currentLagSeconds);
  const thresholds = segmentRule(rule);
  const log = await openLog(input, format, reading);
  const hasCurrent = log.header.columns.some((column) => column.quantity === "current");
  const quality = createLogCheck(check);
  const order = createRowOrder(reorderWithinSeconds);
  const segmenter = createSegmenter(thresholds);
  const rows = createRowWindow(mostRowsKept);
  const resistance = createStepResistance(thresholds.stepAmperes, rows, currentLagSeconds);
  const temperature = createSegmentTemperature(mostRowsKept);
  const settledVoltage = { restAmperes: thresholds.restLeaveAmperes, ...measure.settledVoltage };
  const segments: LogSegment[] = [];
  const measurements: LogMeasurement[] = [];
  const charges: SegmentCharge[] = [];
  const event = createLastEvent(thresholds.ratedAmpereHours);
  const settings = { ...measure, settledVoltage };
  const waiting: EndedSegment[] = [];
  let count = 0;
  let sane = true;
  let discharges = 0;
  let before: LogSegment | undefined;
  let latest = Number.NEGATIVE_INFINITY;
  // First and last segment since the vehicle was left, and the number of the last.
  let parked: { first: LogSegment; last: LogSegment; number: number } | undefined;

  const leave = (): void => {
    if (parked && measure.draw && parked.number <= mostSegments)
      measurements.push(...measureParked(parked.first, parked.last, parked.number, rows, measure.draw));
    parked = undefined;
  };
  const end = (segment: LogSegment): void => {
    count++;
    onSegment?.(segment, count);
    addCharge(charges, segment, mostSegments);
    sane &&= isSane(segment);
    if (hasCurrent && before && sane) resistance.border(before, segment);
    if (!sane || STANDS[segment.kind] !== true) leave();
    else parked = { first: parked?.first ?? segment, last: segment, number: count };
    if (count <= mostSegments) segments.push(segment);
    if (count <= mostSegments && isSane(segment))
      waiting.push({
        segment,
        number: count,
        event: event.now(),
        meanCelsius: temperature.of(segment),
        firstDischarge: segment.kind === "discharge" && discharges++ === 0,
      });
    event.add(segment);
    before = segment;
    measureUpTo(latest);
  };
  // A crank is measured a second after its end, when it is sure to be over.
  const measureUpTo = (time: number): void => {
    while (waiting.length > 0 && rowsNeededUntil(waiting[0]!) <= time)
      measurements.push(...measureSegment(waiting.shift()!, rows, hasCurrent, thresholds, settings));
    const needed = [before, waiting[0]?.segment].map((one) => (one ? rowsNeededFrom(one) : latest));
    if (measure.draw && parked) needed.push(parked.first.fromSeconds);
    rows.forgetBefore(Math.min(...needed));
  };
  const take = (chunk: LogChunk): void => {
    if (chunk.rows === 0) return;
    rows.push(chunk);
    resistance.push(chunk);
    latest = chunk.seconds[chunk.rows - 1]!;
    for (const segment of segmenter.push(chunk)) end(segment);
    measureUpTo(latest);
  };

  for await (const chunk of log.chunks) {
    onChunk?.(chunk);
    quality.push(chunk);
    const usable = hasCurrent ? completeRows(chunk) : timedVoltages(chunk);
    temperature.push(chunk, usable);
    for (const ordered of order.push(usable)) take(ordered);
  }
  for (const ordered of order.finish()) take(ordered);
  for (const segment of segmenter.finish()) end(segment);
  leave();
  measureUpTo(Number.POSITIVE_INFINITY);
  measurements.sort((a, b) => a.segment - b.segment);

  const checked = quality.finish();
  const stoppedAtRow = order.stoppedAtRow();
  const disorder = stoppedAtRow === undefined ? undefined : OUT_OF_ORDER();
  const lag = checked.lag && !isRefusal(checked.lag) ? checked.lag.lagSeconds : undefined;
  const noCharge =
    disorder ?? (hasCurrent ? undefined : NO_CURRENT()) ?? (sane ? undefined : NOT_PLAUSIBLE());
  const charge = noCharge ?? chargeMovedInSegments(charges);
  const analysis = {
    header: log.header,
    tally: log.tally(),
    quality: checked,
    segments,
    segmentsLeftOut: Math.max(0, count - mostSegments),
    measurements,
    charge,
    chargeFactor: isRefusal(charge) ? charge : chargeFactor(charge),
    resistance: noCharge ?? resistance.finish(lag),
    rowsReordered: order.moved(),
  };
  return stoppedAtRow === undefined ? analysis : { ...analysis, stoppedAtRow };
}

/** A vehicle that stands: what goes on in it is its draw. */
const STANDS: Readonly<Partial<Record<SegmentKind, true>>> = {
  rest: true,
  discharge: true,
  "load-step": true,
};

/** No battery, logger or calendar comes near these; the check names the rows, and nothing is measured from them. */
const MOST_SANE = 1e6;
const MOST_SANE_SECONDS = 1e12;

function isSane({ fromSeconds, toSeconds, totals }: LogSegment): boolean {
  const { leastVolts, mostVolts, leastAmperes, mostAmperes } = totals;
  const most = Math.max(-leastVolts, mostVolts, -leastAmperes || 0, mostAmperes || 0);
  return most <= MOST_SANE && Math.max(-fromSeconds, toSeconds) <= MOST_SANE_SECONDS;
}

// Beyond the limit everything goes into one: its time counts on both sides, which makes the zero error larger, not smaller.
function addCharge(charges: SegmentCharge[], segment: LogSegment, most: number): void {
  if (charges.length < most) {
    charges.push(segment);
    return;
  }
  const last = charges[most - 1]!;
  const [a, b] = [last.totals, segment.totals];
  charges[most - 1] = {
    fromSeconds: last.fromSeconds,
    toSeconds: last.toSeconds + segment.toSeconds - segment.fromSeconds,
    totals: {
      chargeInAmpereHours: a.chargeInAmpereHours + b.chargeInAmpereHours,
      chargeOutAmpereHours: a.chargeOutAmpereHours + b.chargeOutAmpereHours,
      chargeVarianceAmpereSecondsSquared:
        a.chargeVarianceAmpereSecondsSquared + b.chargeVarianceAmpereSecondsSquared,
      ...(a.chargeNoiseAmpereSecondsSquared === undefined || b.chargeNoiseAmpereSecondsSquared === undefined
        ? {}
        : {
            chargeNoiseAmpereSecondsSquared:
              a.chargeNoiseAmpereSecondsSquared + b.chargeNoiseAmpereSecondsSquared,
          }),
      longestGapSeconds: Math.max(a.longestGapSeconds, b.longestGapSeconds),
    },
  };
}
