import type { CheckSettings } from "./options.js";
import { createRanges } from "./ranges.js";
import { median, quantile } from "./sampler.js";
import type { CheckedBlock } from "./summary.js";
import { type Found, type WholeLog, wholeLog } from "./whole-log.js";

/** Median voltages of systems above 12 V (our choice: 1.67 to 2.67 V a cell). */
const HIGHER = [
  [20, 32, 24],
  [32, 45, 36],
  [45, 65, 48],
] as const;
/** A 6 V battery stays below this even while charging, and above this unless it is flat [V]. */
const SIX_VOLTS = [4.5, 8.5] as const;

/** @internal A system other than 12 V: an error above, a warning at 6 V, since a flat 12 V battery looks the same. */
export function otherSystem(sortedVolts: Float64Array, log: WholeLog): Found[] {
  const medianVolts = median(sortedVolts);
  const higher = HIGHER.find(([least, most]) => medianVolts >= least && medianVolts < most);
  if (higher)
    return [wholeLog("system-voltage", "error", log, { medianVolts, nominalVolts: higher[2] }, "volts")];
  const most = quantile(sortedVolts, 0.98);
  if (medianVolts >= SIX_VOLTS[0] && most <= SIX_VOLTS[1])
    return [wholeLog("system-voltage", "warning", log, { medianVolts, nominalVolts: 6 }, "volts")];
  return [];
}

/** A lead moved across the terminals, and a logger's zero error, stay nearer to zero [V]. */
const NEGATIVE_VOLTS = -1;

/** @internal Rows with a negative voltage: leads the wrong way round, or a battery charged the wrong way round. */
export function createPolarity(settings: CheckSettings) {
  const ranges = createRanges(
    "reversed-polarity",
    "error",
    "negativeVolts",
    settings.rangesPerDefect,
    "volts",
  );
  return {
    scan(block: CheckedBlock): void {
      if (!(block.leastVolts < NEGATIVE_VOLTS)) return;
      for (let i = 0; i < block.rows; i++) {
        const voltage = block.volts[i]!;
        if (voltage < NEGATIVE_VOLTS) ranges.row(block.firstIndex + i, block.number(i), -voltage);
      }
    },
    finish: (): Found => ranges.finish(),
  };
}
