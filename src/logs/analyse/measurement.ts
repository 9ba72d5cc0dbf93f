import type { Refusal } from "../../numeric/index.js";
import type { CapacityAtRate, capacityAtRate } from "../measure/capacity-at-rate.js";
import type { ChargingVoltage } from "../measure/charging-voltage.js";
import type { CrankEvent, measureCrank } from "../measure/crank-event.js";
import type { SettledDraw } from "../measure/parasitic-draw.js";
import type { Ripple } from "../measure/ripple.js";
import type { SettledVoltage, SettledVoltageBound } from "../measure/settled-voltage.js";
import type { SegmentKind } from "../segments.js";

/** Why a segment was not measured although its kind would allow it. */
export type NotMeasured = Refusal<"rows-thinned" | "out-of-order">;

/** Voltage at the end of a rest, as it was read. */
export interface LastRestVoltage {
  readonly volts: number;
  /** From the begin of the rest [s]. */
  readonly restSeconds: number;
  /** What moved charge before the rest; `drive` for a running engine, `unknown` where the log begins with it or nobody can tell. */
  readonly before: "charge" | "drive" | "discharge" | "unknown";
}

/** Which segment of the log, and which rows of the file, a measurement was taken from. */
export interface MeasuredRows {
  /** Number of the segment, from 1, in the order of the log. */
  readonly segment: number;
  readonly kind: SegmentKind;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** Mean over the segment; missing without a temperature column [°C]. */
  readonly temperatureCelsius?: number;
  /** Rows between were let go to stay in memory; the measurement comes from the others. */
  readonly thinned: boolean;
}

type Answer<Measure extends (...given: never[]) => unknown> = ReturnType<Measure>;

/** One measurement: an estimate, a bound, or the reason why there is none. */
export type LogMeasurement = MeasuredRows &
  (
    | { readonly quantity: "last-rest-voltage"; readonly result: LastRestVoltage }
    | {
        readonly quantity: "settled-voltage";
        readonly result: SettledVoltage | SettledVoltageBound | Refusal;
      }
    | { readonly quantity: "draw"; readonly result: SettledDraw | Refusal }
    | { readonly quantity: "crank"; readonly result: CrankEvent | Answer<typeof measureCrank> | NotMeasured }
    | { readonly quantity: "charging-voltage"; readonly result: ChargingVoltage | Refusal }
    | { readonly quantity: "ripple"; readonly result: Ripple | Refusal }
    | {
        readonly quantity: "capacity";
        readonly result: CapacityAtRate | Answer<typeof capacityAtRate> | NotMeasured;
      }
  );

/** The name of what was measured. */
export type LogQuantityMeasured = LogMeasurement["quantity"];

/** Where a field of the record comes from. */
export interface FieldOrigin extends Pick<MeasuredRows, "segment" | "firstRow" | "lastRow"> {
  readonly quantity: LogQuantityMeasured;
}
