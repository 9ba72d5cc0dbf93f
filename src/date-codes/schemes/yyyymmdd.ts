import { digitLayout } from "../digit-layout.js";
import { dayPeriod } from "../periods.js";

/** Year, month, day in eight digits: `20240313`. */
export const yyyymmdd = /* @__PURE__ */ digitLayout(
  "yyyymmdd",
  ["YYYYMMDD"],
  dayPeriod,
  "hibc-date-formats",
  "secondary",
);
