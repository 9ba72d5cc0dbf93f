import type { CauseRule } from "./cause.js";

/** Its connection: clamps, cables, ground and switches of the starting circuit lose voltage, or starve the starter. */
export const connection: CauseRule = {
  code: "connection",
  source: "tm-10-3930-671",
  standing: "our-choice",
  supports: [
    { code: "voltage-drop-high" },
    // Unless the drops were measured and are small: then the brushes are left.
    { code: "slow-with-low-current", when: (known) => !known("voltage-drops-within") },
    { code: "slow-at-full-voltage", when: (known) => !known("voltage-drops-within") },
    { code: "no-turning-at-full-voltage" },
  ],
  contradicts: [{ code: "voltage-drops-within", when: (known) => !known("no-turning-at-full-voltage") }],
  settleBy: "measure-drops-again",
};
