import type { CheckSettings } from "./options.js";
import { createRanges } from "./ranges.js";
import type { CheckedBlock } from "./summary.js";
import type { Found } from "./whole-log.js";

const NONE: readonly number[] = [];

/**
 * @internal Rows whose time lies before that of a row above them.
 *
 * A little back (at most `setBackIntervals` of the intervals around): rows out of order, sorting mends them, a warning.
 * Further back: the clock was set back or the log starts anew; sorting would mix two stretches, an error. From there on
 * the new time counts.
 */
export function createTimeOrder(settings: CheckSettings) {
  const { rangesPerDefect, setBackIntervals } = settings;
  const disorder = createRanges("time-out-of-order", "warning", "secondsBack", rangesPerDefect);
  const setBack = createRanges("clock-set-back", "error", "secondsBack", rangesPerDefect);
  let latest = Number.NEGATIVE_INFINITY;
  // The longest of the last intervals, forgotten slowly: short ones around an event do not make a second long.
  let usual = Infinity;
  return {
    /** Returns the rows of the block at which the clock was set back. */
    scan({ seconds, rows, increasing, firstIndex, number }: CheckedBlock): readonly number[] {
      if (increasing && seconds[0]! > latest) {
        if (rows > 1) usual = (seconds[rows - 1]! - seconds[0]!) / (rows - 1);
        latest = seconds[rows - 1]!;
        return NONE;
      }
      const setBacks: number[] = [];
      for (let i = 0; i < rows; i++) {
        const time = seconds[i]!;
        if (time >= latest) {
          const step = time - latest;
          if (step > 0 && step < Infinity) usual = Math.max(step, usual === Infinity ? 0 : usual * 0.9);
          latest = time;
        } else if (latest - time > setBackIntervals * usual) {
          setBack.row(firstIndex + i, number(i), latest - time);
          setBacks.push(i);
          latest = time;
        } else if (time < latest) disorder.row(firstIndex + i, number(i), latest - time);
      }
      return setBacks;
    },
    finish: (): Found[] => [disorder.finish(), setBack.finish()],
  };
}
