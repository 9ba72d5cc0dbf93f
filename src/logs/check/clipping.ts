import type { CheckSettings } from "./options.js";
import type { LogChannel } from "./quality.js";
import { createRanges, type Ranges } from "./ranges.js";
import type { CheckedBlock } from "./summary.js";
import type { Found } from "./whole-log.js";

/** Equal readings at the extreme that make a plateau (our choice); two may be chance. */
const PLATEAU_ROWS = 3;
/** One long plateau or two short ones. */
const LONG_PLATEAU_ROWS = 10;
/** How far the other channel bulges inside a plateau. Less may be noise. */
const BULGE = { volts: 0.1, amperes: 10 } as const;
/** A charger holds the voltage here whatever the current does: a plateau says nothing. */
const REGULATED_VOLTS = [13, 15.6] as const;

/**
 * @internal Readings that pile up at the greatest or least value of a channel while the other channel goes on: the end of a
 * range. A bulge of the other channel inside the plateau (its extreme in the middle half, both ends less) is the sign; a
 * constant current by a load or charger shows none, since its voltage drifts one way.
 */
export function createClipping(settings: CheckSettings) {
  const kept = settings.rangesPerDefect;
  const all = [
    createExtreme("volts", -1, kept),
    createExtreme("volts", 1, kept),
    createExtreme("amperes", -1, kept),
    createExtreme("amperes", 1, kept),
  ];
  return {
    scan(block: CheckedBlock): void {
      all[0]!.scan(block, block.volts, block.amperes, block.leastVolts);
      all[1]!.scan(block, block.volts, block.amperes, block.mostVolts);
      all[2]!.scan(block, block.amperes, block.volts, block.leastAmperes);
      all[3]!.scan(block, block.amperes, block.volts, block.mostAmperes);
    },
    finish(): Found[] {
      const [lowest, highest] = [all[2]!.extreme(), all[3]!.extreme()];
      const greatest = Math.max(Math.abs(lowest), Math.abs(highest));
      return all.flatMap((one, i) => {
        const [ranges, rows, plateaus] = one.finish();
        if (rows < LONG_PLATEAU_ROWS && plateaus < 2) return [];
        const at = one.extreme();
        const held = i === 1 && at >= REGULATED_VOLTS[0] && at <= REGULATED_VOLTS[1];
        // No range ends near zero: there is only no current.
        const nothing = i >= 2 && Math.abs(at) < greatest / 2;
        return held || nothing ? [] : [ranges.finish()];
      });
    },
  };
}

function createExtreme(channel: "volts" | "amperes", sign: 1 | -1, kept: number) {
  const bulge = channel === "volts" ? BULGE.amperes : BULGE.volts;
  const named = (): Ranges => createRanges("clipping", "warning", "value", kept, channel as LogChannel);
  let ranges = named();
  let [extreme, plateaus, longest] = [-Infinity, 0, 0];
  // The plateau that is going on: rows, the other channel at its start, at its greatest (with the row) and now.
  let [rows, first, most, mostAt, last] = [0, 0, 0, 0, 0];
  let [firstRow, lastRow] = [0, 0];
  function close(): void {
    const middle = mostAt >= rows / 4 && mostAt <= (3 * rows) / 4;
    if (rows >= PLATEAU_ROWS && middle && most - Math.max(first, last) >= bulge) {
      plateaus++;
      longest = Math.max(longest, rows);
      const value = sign * extreme;
      const otherBulge = most - Math.max(first, last);
      ranges.stretch({
        severity: "warning",
        firstRow,
        lastRow,
        count: rows,
        greatest: Math.abs(value),
        values: { value, otherBulge },
      });
    }
    rows = 0;
  }
  return {
    extreme: () => sign * extreme,
    scan(block: CheckedBlock, own: Float64Array, other: Float64Array, blockExtreme: number): void {
      const top = sign * blockExtreme;
      if (top < extreme || top === -Infinity) {
        close();
        return;
      }
      if (top > extreme) {
        [extreme, plateaus, longest, rows] = [top, 0, 0, 0];
        ranges = named();
      }
      const at = sign * extreme;
      for (let i = 0; i < block.rows; i++) {
        if (own[i] !== at) {
          if (rows && !Number.isNaN(own[i]!)) close();
          continue;
        }
        const now = sign * other[i]!;
        lastRow = block.number(i);
        if (rows === 0) {
          firstRow = lastRow;
          [first, most, mostAt] = [now, now, 0];
        }
        if (now > most) [most, mostAt] = [now, rows];
        last = now;
        rows++;
      }
    },
    finish(): readonly [Ranges, number, number] {
      close();
      return [ranges, longest, plateaus];
    },
  };
}
