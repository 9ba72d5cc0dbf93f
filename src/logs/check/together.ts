import type { Block } from "./blocks.js";
import type { CheckSettings } from "./options.js";
import { createRanges } from "./ranges.js";
import type { Found } from "./whole-log.js";

/** Share of the rows from which on it is more than an event here and there (our choice). */
const NOTE_SHARE = 0.01;

/**
 * @internal Rows with a voltage or a current but not both: resistance and power need both at one time. No defect where the
 * log has only one of the two columns.
 */
export function createTogether(settings: CheckSettings) {
  const kept = settings.rangesPerDefect;
  const make = (severity: "note" | "warning") => createRanges("not-sampled-together", severity, "rows", kept);
  // The severity follows from the share at the end.
  const [asNote, asWarning] = [make("note"), make("warning")];
  let [volts, amperes, both] = [0, 0, 0];
  return {
    /** The rows as read: a number taken out as impossible was sampled. */
    scan(block: Block, complete: boolean): void {
      if (complete) {
        both += block.rows;
        return;
      }
      for (let i = 0; i < block.rows; i++) {
        const noVolts = Number.isNaN(block.volts[i]!);
        const noAmperes = Number.isNaN(block.amperes[i]!);
        if (noVolts && noAmperes) continue;
        if (!noVolts && !noAmperes) {
          both++;
          continue;
        }
        if (noVolts) amperes++;
        else volts++;
        const index = block.firstIndex + i;
        asNote.row(index, block.number(i), 1);
        asWarning.row(index, block.number(i), 1);
      }
    },
    finish(): Found[] {
      const one = volts + amperes;
      if (one === 0 || volts + both === 0 || amperes + both === 0) return [];
      return [one > NOTE_SHARE * (one + both) ? asWarning.finish() : asNote.finish()];
    },
  };
}
