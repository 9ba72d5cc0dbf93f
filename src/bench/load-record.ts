import { interpolateLinear, type Refusal, refuse, requireFinite } from "../numeric/index.js";
import type { Derivation } from "../sources/index.js";

/** The reading a load test is judged by, taken from a record of it. */
export interface LoadRecordReading {
  /** Voltage at the end of the wanted time, straight between its neighbours [V]. */
  readonly volts: number;
  /** Time after the load was applied [s]. */
  readonly seconds: number;
  /** Mean load over that time [A]; absent when the record holds no current. */
  readonly loadAmperes?: number;
  /** Largest deviation of the load from its mean, as a fraction; 0.05 is the usual tolerance. */
  readonly loadDeviation?: number;
}

/** A load test as a logger saw it. Time and voltage of the same rows; current positive while discharging. */
export interface LoadRecord {
  readonly seconds: readonly number[];
  readonly volts: readonly number[];
  readonly amperes?: readonly number[];
  /** When the load was applied [s], on the clock of the record. */
  readonly loadOnSeconds: number;
  /** Wanted time under load [s], default 15. */
  readonly underLoadSeconds?: number;
}

const LONGEST_GAP_SECONDS = 2;

/**
 * Reads the voltage after 15 s of load from a voltage-time record, for {@link judgeLoadTest}.
 *
 * Scope: the rows around the wanted moment must lie within 2 s of each other (our choice), or the voltage there is a guess.
 * Rows at the load's edge are not used: loggers write the mean of before and after there.
 *
 * @param record rows in order of time
 * @returns voltage, time and load; or a refusal `record-too-short`, `record-gap`
 * @throws RangeError when lengths differ, time does not rise, or a number is not finite
 * @example
 * ```ts
 * import { loadTestFromRecord } from "crankworthy/bench";
 * const seconds = [0, 1, 5, 10, 14, 16, 20];
 * const volts = [12.6, 10.4, 10.2, 10.1, 10.05, 10.03, 12.1];
 * const reading = loadTestFromRecord({ seconds, volts, loadOnSeconds: 0.5, underLoadSeconds: 15 });
 * "volts" in reading && reading.volts; // => 10.035
 * ```
 */
export function loadTestFromRecord(
  record: LoadRecord,
  derivation?: Derivation,
): LoadRecordReading | Refusal<"record-too-short" | "record-gap"> {
  const { seconds, volts, amperes, loadOnSeconds, underLoadSeconds = 15 } = record;
  requireFinite("loadOnSeconds", loadOnSeconds);
  requireFinite("underLoadSeconds", underLoadSeconds, 0.1, 600);
  if (volts.length !== seconds.length || (amperes && amperes.length !== seconds.length))
    throw new RangeError("seconds, volts, amperes: expected the same number of rows");
  for (let i = 0; i < seconds.length; i++) {
    requireFinite(`seconds[${i}]`, seconds[i]!, i === 0 ? undefined : seconds[i - 1]! + Number.MIN_VALUE);
    requireFinite(`volts[${i}]`, volts[i]!);
    if (amperes) requireFinite(`amperes[${i}]`, amperes[i]!);
  }
  const end = loadOnSeconds + underLoadSeconds;
  const after = seconds.findIndex((one) => one >= end);
  if (after < 1 || seconds[after - 1]! <= loadOnSeconds)
    return refuse(
      "record-too-short",
      `The record holds no ${underLoadSeconds} s of load.`,
      "A record of the whole test.",
    );
  if (seconds[after]! - seconds[after - 1]! > LONGEST_GAP_SECONDS)
    return refuse(
      "record-gap",
      "The rows around the wanted moment lie too far apart.",
      "A record with a row every second.",
    );
  const at = interpolateLinear(seconds.slice(after - 1, after + 1), volts.slice(after - 1, after + 1), end);
  derivation?.push({
    quantity: "voltage at the end of the load",
    formula: "straight line between the rows before and after",
    inputs: { end, before: volts[after - 1]!, behind: volts[after]! },
    result: at,
    unit: "V",
    source: "bench-choice",
    standing: "our-choice",
  });
  const reading = { volts: at, seconds: underLoadSeconds };
  // The first row after the edge may be its mean: leave it out.
  const loads = amperes?.filter((_, i) => seconds[i]! > loadOnSeconds && seconds[i]! < end).slice(1) ?? [];
  if (loads.length === 0) return reading;
  const mean = loads.reduce((a, b) => a + b, 0) / loads.length;
  const farthest = Math.max(...loads.map((one) => Math.abs(one - mean)));
  return { ...reading, loadAmperes: mean, loadDeviation: mean === 0 ? 0 : farthest / Math.abs(mean) };
}
