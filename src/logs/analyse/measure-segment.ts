import { isRefusal, refuse } from "../../numeric/index.js";
import { type CapacityOptions, capacityAtRate } from "../measure/capacity-at-rate.js";
import { type ChargingVoltageOptions, measureChargingVoltage } from "../measure/charging-voltage.js";
import { type CrankOptions, measureCrank } from "../measure/crank-event.js";
import { measureSettledDraw, type SettledDrawOptions } from "../measure/parasitic-draw.js";
import { measureRipple, type RippleOptions } from "../measure/ripple.js";
import { type SettledVoltageOptions, settledRestVoltage } from "../measure/settled-voltage.js";
import type { FullSegmentRule } from "../segment/rule.js";
import type { LogSegment } from "../segments.js";
import type { LastEvent } from "./last-event.js";
import type { LogMeasurement, MeasuredRows } from "./measurement.js";
import type { KeptRows, RowWindow } from "./row-window.js";

/** What is measured in each kind of segment, and with which settings. A part that is left out is not measured. */
export interface MeasureOptions {
  /** For every rest after charge or discharge. Always measured. */
  readonly settledVoltage?: Omit<SettledVoltageOptions, "before" | "restFromSeconds">;
  /** For a parked vehicle: over everything between two drives or charges. The log must begin, or the engine stop, when it was left. */
  readonly draw?: SettledDrawOptions;
  /** For every crank. Always measured. */
  readonly crank?: CrankOptions;
  /** For a running engine and a charge at constant voltage. Always measured. */
  readonly chargingVoltage?: ChargingVoltageOptions;
  /** For a running engine. */
  readonly ripple?: RippleOptions;
  /** For every discharge; `startedFull` speaks of the first one. */
  readonly capacity?: CapacityOptions;
}

/** Before a crank, for its rest voltage, and after it, to see that it is over [s]. Our choice. */
const CRANK_MARGIN_SECONDS = { before: 2, after: 1 } as const;
/** A level or a relaxation is told from this many rows as well as from more. Our choice. */
const ENOUGH_ROWS = 4096;

const THINNED = () =>
  refuse(
    "rows-thinned",
    "Rows of this segment had to be let go to stay in memory.",
    "More rows kept (mostRowsKept), or a log of this segment alone.",
  );

/** A segment with what the log told before and beside it. */
export interface EndedSegment {
  readonly segment: LogSegment;
  readonly number: number;
  /** What moved charge last, and until when. */
  readonly event: LastEvent;
  /** NaN without a temperature. */
  readonly meanCelsius: number;
  /** No other discharge came before it in this log. */
  readonly firstDischarge: boolean;
}

/** Rows needed for looking back at a segment, after it has ended. */
export function rowsNeededUntil({ segment }: EndedSegment): number {
  return segment.kind === "crank" ? segment.toSeconds + CRANK_MARGIN_SECONDS.after : segment.toSeconds;
}

/** First time that will be looked at once this segment has ended. */
export const rowsNeededFrom = ({ fromSeconds }: LogSegment): number =>
  fromSeconds - CRANK_MARGIN_SECONDS.before;

/** Measures one segment that has ended, from the rows that are kept of it. */
export function measureSegment(
  ended: EndedSegment,
  rows: RowWindow,
  hasCurrent: boolean,
  rule: FullSegmentRule,
  options: MeasureOptions,
): LogMeasurement[] {
  const { segment, number, meanCelsius } = ended;
  const { kind, fromSeconds, toSeconds } = segment;
  const enough = (): KeptRows => rows.between(fromSeconds, toSeconds, ENOUGH_ROWS);
  const from = (kept: KeptRows): MeasuredRows => measuredRows(segment, number, meanCelsius, kept.thinned);
  if (kind === "rest") {
    if (toSeconds - fromSeconds < rule.leastSeconds) return [];
    const kept = enough();
    return measureRest(ended, kept, from(kept), hasCurrent, rule.edgeSeconds, options);
  }
  if (kind === "crank") {
    const { before, after } = CRANK_MARGIN_SECONDS;
    const kept = rows.between(fromSeconds - before, toSeconds + after);
    const { seconds, volts, amperes } = kept.series;
    const series = hasCurrent ? { seconds, volts, amperes } : { seconds, volts };
    const result = kept.thinned ? THINNED() : measureCrank(series, options.crank);
    return [{ ...from(kept), quantity: "crank", result }];
  }
  if (!hasCurrent) return [];
  const found: LogMeasurement[] = [];
  if (kind === "engine-running" || kind === "charge-constant-voltage") {
    const kept = enough();
    const result = measureChargingVoltage(kept.series, options.chargingVoltage);
    found.push({ ...from(kept), quantity: "charging-voltage", result });
  }
  if (kind === "engine-running" && options.ripple) {
    const kept = rows.between(fromSeconds, toSeconds);
    const result = kept.thinned ? THINNED() : measureRipple(kept.series, options.ripple);
    found.push({ ...from(kept), quantity: "ripple", result });
  }
  if (kind === "discharge" && options.capacity) {
    const kept = rows.between(fromSeconds, toSeconds);
    // The caller knows how the log began; whether a later charge was complete, nobody said.
    const { startedFull, ...others } = options.capacity;
    const settings = ended.firstDischarge ? options.capacity : others;
    const result = kept.thinned ? THINNED() : capacityAtRate(kept.series, settings);
    found.push({ ...from(kept), quantity: "capacity", result });
  }
  return found;
}

/** The draw of a vehicle over everything between two drives or charges. */
export function measureParked(
  first: LogSegment,
  last: LogSegment,
  number: number,
  rows: RowWindow,
  options: SettledDrawOptions,
): LogMeasurement[] {
  const kept = rows.between(first.fromSeconds, last.toSeconds);
  const result = measureSettledDraw(kept.series, options);
  if (isRefusal(result) && result.code === "too-short") return [];
  const { firstRow, fromSeconds } = first;
  const whole = { ...measuredRows(last, number, Number.NaN, kept.thinned), firstRow, fromSeconds };
  return [{ ...whole, quantity: "draw", result }];
}

function measuredRows(
  { kind, firstRow, lastRow, fromSeconds, toSeconds }: LogSegment,
  segment: number,
  meanCelsius: number,
  thinned: boolean,
): MeasuredRows {
  const plain = { segment, kind, firstRow, lastRow, fromSeconds, toSeconds, thinned };
  return Number.isNaN(meanCelsius) ? plain : { ...plain, temperatureCelsius: meanCelsius };
}

function measureRest(
  { segment: { toSeconds, fromSeconds, edges }, event }: EndedSegment,
  kept: KeptRows,
  from: MeasuredRows,
  hasCurrent: boolean,
  edgeSeconds: number,
  options: MeasureOptions,
): LogMeasurement[] {
  // A row just before the next load or charge may hold some of it.
  const { seconds, volts } = kept.series;
  const latest = edges.edgeRowsAtEnd > 0 ? toSeconds - edgeSeconds : toSeconds;
  const row = Math.max(
    0,
    seconds.findLastIndex((time) => time <= latest),
  );
  const since = event.kind === "unknown" ? fromSeconds : event.untilSeconds;
  const last = { volts: volts[row]!, restSeconds: seconds[row]! - since, before: event.kind };
  const found: LogMeasurement[] = [{ ...from, quantity: "last-rest-voltage", result: last }];
  if (!hasCurrent || event.kind === "unknown") return found;
  const result = settledRestVoltage(kept.series, {
    ...options.settledVoltage,
    before: event.kind === "discharge" ? "discharging" : "charging",
  });
  found.push({ ...from, quantity: "settled-voltage", result });
  return found;
}
