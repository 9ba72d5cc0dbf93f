import type { CauseRule, Known } from "./cause.js";

/** The way to the starter loses nothing and the starter draws what it should: a low voltage is then the battery's own. */
const nothingElse = (known: Known): boolean =>
  known("voltage-drops-within") && known("cranking-current-usual") && known("charge-sufficient");

/**
 * The battery itself: worn, failed inside or far below its rating, shown at its posts with enough charge. Having gone flat
 * too fast for the drain only raises the suspicion: it speaks against the drain, not for a worn battery.
 */
export const battery: CauseRule = {
  code: "battery",
  source: "workshop-starting-2004",
  standing: "our-choice",
  supports: [
    { code: "ability-below" },
    { code: "ability-worn" },
    { code: "load-test-failed-again" },
    { code: "cell-missing" },
    { code: "cell-spread" },
    { code: "cranking-voltage-low", when: nothingElse },
  ],
  contradicts: [{ code: "ability-above" }, { code: "load-test-passed" }],
  settleBy: "test-on-the-bench",
};
