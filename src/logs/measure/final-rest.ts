import { type Refusal, refuse, requireFinite, requirePositive } from "../../numeric/index.js";
import { type LogSeries, refuseDisorder } from "../series.js";

/** The last rest of a log. */
export interface FinalRest {
  /** Voltage of the last row that lies wholly in the rest [V]. */
  readonly lastVolts: number;
  /** From the first row below the threshold to the row of `lastVolts` [s]. */
  readonly restSeconds: number;
  /** Row of `lastVolts`, and the first row of the rest that is no edge row. */
  readonly lastRow: number;
  readonly firstRow: number;
  /** What went on before; `nothing` where the log begins at rest. */
  readonly before: "charging" | "discharging" | "nothing";
  /** True when the log ends in this rest. */
  readonly endsLog: boolean;
  /** Edge rows left out: their voltage was taken on both sides of the step. */
  readonly edgeRows: number;
}

/** What counts as rest. */
export interface RestRule {
  /** Rest is a current below this, either sign [A] (> 0). */
  readonly restAmperes: number;
  /** Shortest rest to accept [s] (≥ 0). */
  readonly leastSeconds: number;
  /** Rows this near to the change of current are edge rows [s]. Default 1 (our choice). */
  readonly edgeSeconds?: number;
}

/**
 * Finds the last rest: a run of rows with little current that lasts long enough.
 *
 * Scope: loggers that average write a row at the step whose voltage is a mean of before and after. Rows within
 * `edgeSeconds` of the change, and rows that repeat the voltage of the loaded row beside them, are left out.
 *
 * @param series rows in order of time
 * @param rule threshold [A] and shortest rest [s], both required
 * @returns last voltage [V], length [s], and what came before
 *
 * Refuses `out-of-order`, `no-rest` when no run is long enough.
 * @example
 * ```ts
 * import { findFinalRest } from "crankworthy/logs";
 * const series = {
 *   seconds: Float64Array.of(0, 60, 60.1, 660, 1260),
 *   volts: Float64Array.of(10.6, 10.8, 10.8, 11.3, 11.4),
 *   amperes: Float64Array.of(-3, -3, 0, 0, 0),
 * };
 * const rest = findFinalRest(series, { restAmperes: 0.25, leastSeconds: 600 });
 * rest.lastVolts; // => 11.4
 * rest.before; // => "discharging"
 * rest.edgeRows; // => 1
 * ```
 */
export function findFinalRest(
  series: LogSeries,
  rule: RestRule,
): FinalRest | Refusal<"out-of-order" | "no-rest"> {
  const disorder = refuseDisorder(series);
  if (disorder) return disorder;
  const { restAmperes, leastSeconds, edgeSeconds = 1 } = rule;
  requirePositive("restAmperes", restAmperes);
  requireFinite("leastSeconds", leastSeconds, 0);
  requireFinite("edgeSeconds", edgeSeconds, 0);
  const { seconds, volts, amperes } = series;
  const rests = (i: number) => Math.abs(amperes[i]!) < restAmperes;
  let end = seconds.length - 1;
  while (end >= 0) {
    while (end >= 0 && !rests(end)) end--;
    let start = end;
    while (start > 0 && rests(start - 1)) start--;
    if (end < 0) break;
    const edge = (row: number, loaded: number) =>
      loaded >= 0 &&
      loaded < seconds.length &&
      (Math.abs(seconds[row]! - seconds[loaded]!) <= edgeSeconds || volts[row] === volts[loaded]);
    let firstRow = start;
    let lastRow = end;
    while (firstRow <= lastRow && edge(firstRow, start - 1)) firstRow++;
    while (lastRow >= firstRow && edge(lastRow, end + 1)) lastRow--;
    const restSeconds = seconds[lastRow]! - seconds[start]!;
    if (lastRow >= firstRow && restSeconds >= leastSeconds) {
      let before: FinalRest["before"] = "nothing";
      if (start > 0) before = amperes[start - 1]! > 0 ? "charging" : "discharging";
      return {
        lastVolts: volts[lastRow]!,
        restSeconds,
        lastRow,
        firstRow,
        before,
        endsLog: end === seconds.length - 1,
        edgeRows: firstRow - start + end - lastRow,
      };
    }
    end = start - 1;
  }
  return refuse("no-rest", "No rest lasts long enough.", "A longer rest, or a higher threshold.");
}
