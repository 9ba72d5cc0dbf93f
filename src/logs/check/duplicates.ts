import type { CheckSettings } from "./options.js";
import { createRanges } from "./ranges.js";
import type { CheckedBlock } from "./summary.js";
import type { Found } from "./whole-log.js";

/**
 * @internal Rows at the very time of the row above.
 *
 * The same values again: a row written twice, a note, since no sum over time changes. Other values: one of the two times is
 * wrong or the clock is coarser than the sampling, a warning. Rows that fill each other up (voltage in one, temperature in
 * the other) are how a change-driven logger writes, and no defect.
 */
export function createDuplicates(settings: CheckSettings) {
  const same = createRanges("duplicate-row", "note", "rowsAtThisTime", settings.rangesPerDefect);
  const other = createRanges("same-time-other-values", "warning", "rowsAtThisTime", settings.rangesPerDefect);
  let [time, volts, amperes, celsius] = [Number.NaN, Number.NaN, Number.NaN, Number.NaN];
  let atThisTime = 1;
  return {
    scan(block: CheckedBlock): void {
      const { seconds, rows, increasing, temperatureCelsius } = block;
      let i = 0;
      if (increasing && seconds[0]! > time) i = rows - 1;
      for (; i < rows; i++) {
        const [newTime, newVolts, newAmperes] = [seconds[i]!, block.volts[i]!, block.amperes[i]!];
        const newCelsius = temperatureCelsius ? temperatureCelsius[i]! : Number.NaN;
        if (newTime === time) {
          atThisTime++;
          const index = block.firstIndex + i;
          if (Object.is(newVolts, volts) && Object.is(newAmperes, amperes) && Object.is(newCelsius, celsius))
            same.row(index, block.number(i), atThisTime);
          else if (differ(newVolts, volts) || differ(newAmperes, amperes) || differ(newCelsius, celsius))
            other.row(index, block.number(i), atThisTime);
        } else atThisTime = 1;
        [time, volts, amperes, celsius] = [newTime, newVolts, newAmperes, newCelsius];
      }
    },
    finish: (): Found[] => [same.finish(), other.finish()],
  };
}

/** Both sampled, and not the same. */
const differ = (a: number, b: number) => a < b || a > b;
