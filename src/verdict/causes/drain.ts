import type { CauseRule } from "./cause.js";

/** A drain: something in the parked vehicle draws more than expected, or the time it stood is enough for what it draws. */
export const drain: CauseRule = {
  code: "drain",
  source: "draw-bulletin",
  standing: "our-choice",
  supports: [{ code: "draw-high" }, { code: "flat-by-drain" }],
  contradicts: [
    // A usual draw empties a battery all the same when the vehicle stands long enough.
    { code: "draw-expected", when: (known) => !known("flat-by-drain") },
    { code: "flat-too-fast-for-drain" },
  ],
  settleBy: "measure-draw-again",
};
