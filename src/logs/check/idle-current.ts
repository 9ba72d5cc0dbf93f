import type { CheckSettings } from "./options.js";
import { createRanges } from "./ranges.js";
import { addReading, commonestReading, createReadings, mergeReadings } from "./readings.js";
import type { CheckedBlock } from "./summary.js";
import type { Found } from "./whole-log.js";

/** A rest shorter than this may be a pause between two loads (our choice). */
const LEAST_REST_SECONDS = 600;
/** From here on a parked vehicle would count as drawing too much (common practice: 50 mA). */
const WARNING_AMPERES = 0.05;

/** Rows at rest: of the rest that is going on, or of all that were long enough. */
function createTally() {
  return { count: 0, sum: 0, squares: 0, least: Infinity, most: -Infinity, firstRow: 0, lastRow: 0 };
}

/**
 * @internal A current that is not zero at rest: a zero error of the meter or a consumer that never sleeps; the log cannot tell
 * which. Readings that flip between a few values (steps of a coarse converter) are counted.
 */
export function createIdleCurrent(settings: CheckSettings) {
  const { loadedAmperes, idleAmperes } = settings;
  const total = createTally();
  const readings = createReadings();
  let rest = createTally();
  let restReadings = createReadings();
  let [fromSeconds, toSeconds] = [Infinity, -Infinity];

  function close(): void {
    if (rest.count === 0) return;
    if (toSeconds - fromSeconds >= LEAST_REST_SECONDS) {
      if (total.count === 0) total.firstRow = rest.firstRow;
      total.lastRow = rest.lastRow;
      total.count += rest.count;
      total.sum += rest.sum;
      total.squares += rest.squares;
      total.least = Math.min(total.least, rest.least);
      total.most = Math.max(total.most, rest.most);
      mergeReadings(readings, restReadings);
    }
    rest = createTally();
    restReadings = createReadings();
    [fromSeconds, toSeconds] = [Infinity, -Infinity];
  }
  return {
    scan(block: CheckedBlock): void {
      const { rows, amperes, seconds, leastAmperes, mostAmperes } = block;
      if (leastAmperes >= loadedAmperes || mostAmperes <= -loadedAmperes) {
        close();
        return;
      }
      let last = -1;
      for (let i = 0; i < rows; i++) {
        const current = amperes[i]!;
        if (current < loadedAmperes && current > -loadedAmperes) {
          if (rest.count === 0) rest.firstRow = block.number(i);
          last = i;
          rest.count++;
          rest.sum += current;
          rest.squares += current * current;
          if (current < rest.least) rest.least = current;
          if (current > rest.most) rest.most = current;
          const time = seconds[i]!;
          if (time < fromSeconds) fromSeconds = time;
          if (time > toSeconds) toSeconds = time;
          addReading(restReadings, current, 1);
        } else if (!Number.isNaN(current) && rest.count) {
          if (last >= 0) rest.lastRow = block.number(last);
          close();
        }
      }
      if (last >= 0) rest.lastRow = block.number(last);
    },
    finish(): Found[] {
      close();
      const { count, sum, squares, least, most, firstRow, lastRow } = total;
      if (count < 2) return [];
      const meanAmperes = sum / count;
      const variance = Math.max(0, squares / count - meanAmperes * meanAmperes);
      const size = Math.abs(meanAmperes);
      // A noisy meter around zero has a mean that is not zero by chance.
      if (size < idleAmperes || size <= 3 * Math.sqrt(variance / count)) return [];
      const ranges = createRanges("idle-current", "note", "amperes", settings.rangesPerDefect, "amperes");
      ranges.stretch({
        severity: size >= WARNING_AMPERES ? "warning" : "note",
        firstRow,
        lastRow,
        count,
        greatest: size,
        values: {
          meanAmperes,
          leastAmperes: least,
          mostAmperes: most,
          commonestAmperes: commonestReading(readings),
          differentReadings: readings.known + Number(readings.others > 0),
          ampereHoursPerDay: 24 * meanAmperes,
        },
      });
      return [ranges.finish()];
    },
  };
}
