import { digitLayout } from "../digit-layout.js";
import { ordinalPeriod } from "../periods.js";

/** Last digit of the year, then the day of the year: `4060` = day 60 of ..4. */
export const yddd = /* @__PURE__ */ digitLayout("yddd", ["YDDD"], ordinalPeriod, "iso-8601", "from-memory");
