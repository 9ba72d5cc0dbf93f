import type { LogChunk } from "../chunk.js";
import { pickRows } from "../read/pick-rows.js";
import type { LogSegment } from "../segments.js";
import { createRowWindow } from "./row-window.js";

/** Temperature of a segment, also where a logger writes it in rows of its own. */
export interface SegmentTemperature {
  /** @param complete the same rows without those that are measured anyway: the very same chunk where none is incomplete */
  push(chunk: LogChunk, complete: LogChunk): void;
  /** Mean over the rows between first and last row of the segment [°C]; NaN without one. */
  of(segment: LogSegment): number;
}

/** Keeps temperatures beside the rows that are measured: a change-driven log has them in rows without voltage. */
export function createSegmentTemperature(mostRowsKept: number): SegmentTemperature {
  const kept = createRowWindow(mostRowsKept);
  let latest = Number.NEGATIVE_INFINITY;
  return {
    push(chunk, complete) {
      const { rows, seconds, volts, amperes, temperatureCelsius } = chunk;
      if (!temperatureCelsius || complete === chunk) return;
      const alone = new Uint32Array(rows);
      let count = 0;
      for (let i = 0; i < rows; i++) {
        const measured = !Number.isNaN(volts[i]! + amperes[i]!);
        // A row that comes late tells nothing new about a temperature.
        if (measured || Number.isNaN(temperatureCelsius[i]!) || !(seconds[i]! >= latest)) continue;
        latest = seconds[i]!;
        alone[count++] = i;
      }
      if (count > 0) kept.push(pickRows(chunk, alone.subarray(0, count)));
    },
    of(segment) {
      const { fromSeconds, toSeconds, totals } = segment;
      if (!Number.isNaN(totals.meanTemperatureCelsius)) return totals.meanTemperatureCelsius;
      const celsius = kept.between(fromSeconds, toSeconds).series.temperatureCelsius;
      kept.forgetBefore(fromSeconds);
      return celsius ? celsius.reduce((sum, one) => sum + one, 0) / celsius.length : Number.NaN;
    },
  };
}
