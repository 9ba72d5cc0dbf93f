import { isRefusal, refuse } from "../../numeric/index.js";
import { type CapacityOptions, capacityAtRate } from "../measure/capacity-at-rate.js";
import { type ChargingVoltageOptions, measureChargingVoltage } from "../measure/charging-voltage.js";
import { type CrankOptions, measureCrank } from "../measure/crank-event.js";
import { measureSettledDraw, type SettledDrawOptions } from "../measure/parasitic-draw.js";
import { measureRipple, type RippleOptions } from "../measure/ripple.js";
import { type SettledVoltageOptions, settledRestVoltage } from "../measure/settled-voltage.js";
import type { FullSegmentRule } from "../segment/rule.js";
import type { LogSegment } from "../segments.js";
import type { LastRestVoltage, LogMeasurement, MeasuredRows } from "./measurement.js";
import type { KeptRows, RowWindow } from "./row-window.js";

/** What is measured in each kind of segment, and with which settings. A part that is left out is not measured. */
export interface MeasureOptions {
  /** For every rest after charge or discharge. Always measured. */
  readonly settledVoltage?: Omit<SettledVoltageOptions, "before" | "restFromSeconds">;
  /** For every rest of a vehicle that was parked; the log must begin, or the engine stop, when it was left. */
  readonly draw?: SettledDrawOptions;
  /** For every crank. Always measured. */
  readonly crank?: CrankOptions;
  /** For a running engine and a charge at constant voltage. Always measured. */
  readonly chargingVoltage?: ChargingVoltageOptions;
  /** For a running engine. */
  readonly ripple?: RippleOptions;
  /** For every discharge. */
  readonly capacity?: CapacityOptions;
}

/** Before a crank, for its rest voltage [s]. Our choice. */
const MARGIN_SECONDS = 2;

/** A level or a relaxation is told from this many rows as well as from more. Our choice. */
const ENOUGH_ROWS = 4096;

const THINNED = () =>
  refuse(
    "rows-thinned",
    "Rows of this segment had to be let go to stay in memory.",
    "More rows kept (mostRowsKept), or a log of this segment alone.",
  );

/** Measures one segment that has ended, from the rows that are kept of it. */
export function measureSegment(
  segment: LogSegment,
  before: LogSegment | undefined,
  number: number,
  rows: RowWindow,
  hasCurrent: boolean,
  meanCelsius: number,
  rule: FullSegmentRule,
  options: MeasureOptions,
): LogMeasurement[] {
  const { kind, fromSeconds, toSeconds } = segment;
  const enough = (): KeptRows => rows.between(fromSeconds, toSeconds, ENOUGH_ROWS);
  const from = (kept: KeptRows): MeasuredRows => {
    const { firstRow, lastRow } = segment;
    const plain = { segment: number, kind, firstRow, lastRow, fromSeconds, toSeconds, thinned: kept.thinned };
    return Number.isNaN(meanCelsius) ? plain : { ...plain, temperatureCelsius: meanCelsius };
  };
  if (kind === "rest") {
    if (toSeconds - fromSeconds < rule.leastSeconds) return [];
    const kept = enough();
    return measureRest(segment, eventOf(before), kept, from(kept), hasCurrent, rule.edgeSeconds, options);
  }
  if (kind === "crank") {
    const kept = rows.between(fromSeconds - MARGIN_SECONDS, toSeconds + rule.settleSeconds);
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
    const result = kept.thinned ? THINNED() : capacityAtRate(kept.series, options.capacity);
    found.push({ ...from(kept), quantity: "capacity", result });
  }
  return found;
}

/** What a segment did to the battery, as far as its charge tells. */
function eventOf(segment: LogSegment | undefined): LastRestVoltage["before"] {
  if (!segment) return "unknown";
  if (segment.kind === "engine-running") return "drive";
  const { chargeInAmpereHours: into, chargeOutAmpereHours: out } = segment.totals;
  if (into > out) return "charge";
  return out > into ? "discharge" : "unknown";
}

function measureRest(
  { fromSeconds, toSeconds, edges }: LogSegment,
  before: LastRestVoltage["before"],
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
  const last = { volts: volts[row]!, restSeconds: seconds[row]! - fromSeconds, before };
  const found: LogMeasurement[] = [{ ...from, quantity: "last-rest-voltage", result: last }];
  if (!hasCurrent) return found;
  if (before !== "unknown") {
    const result = settledRestVoltage(kept.series, {
      ...options.settledVoltage,
      before: before === "discharge" ? "discharging" : "charging",
    });
    found.push({ ...from, quantity: "settled-voltage", result });
  }
  if (options.draw) {
    const result = measureSettledDraw(kept.series, options.draw);
    if (!isRefusal(result) || result.code !== "too-short") found.push({ ...from, quantity: "draw", result });
  }
  return found;
}
