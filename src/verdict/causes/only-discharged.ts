import type { CauseRule, Known } from "./cause.js";

const shownAble = (known: Known): boolean => known("ability-above") || known("load-test-passed");

/** Only discharged: short of charge, and able all the same. It says nothing on what discharged it. */
export const onlyDischarged: CauseRule = {
  code: "only-discharged",
  source: "tm-9-6140",
  standing: "our-choice",
  supports: [
    { code: "charge-low", when: shownAble },
    { code: "charge-below-empty", when: shownAble },
  ],
  contradicts: [
    { code: "charge-sufficient" },
    { code: "ability-below" },
    { code: "ability-worn" },
    { code: "load-test-failed-again" },
    { code: "cell-missing" },
    { code: "cell-spread" },
    { code: "flat-too-fast-for-drain" },
  ],
  settleBy: "charge-and-measure-again",
};
