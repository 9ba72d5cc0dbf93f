import { digitLayout } from "../digit-layout.js";
import { dayPeriod, monthPeriod } from "../periods.js";

/**
 * Two digits of the year, month, day, as in GS1 application identifier 11; day 00 means that no day is given, hence the
 * whole month: `240300`. The century comes from the window around the inspection, not from the GS1 rule, which
 * would allow dates up to fifty years ahead.
 */
export const yymmdd = /* @__PURE__ */ digitLayout(
  "yymmdd",
  ["YYMMDD"],
  (year, month, day) => (day === 0 ? monthPeriod(year, month) : dayPeriod(year, month, day)),
  "gs1-production-date",
  "read",
);
