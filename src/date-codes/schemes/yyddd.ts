import { digitLayout } from "../digit-layout.js";
import { ordinalPeriod } from "../periods.js";

/** Two digits of the year, then the day of the year: `23060` = 1 March 2023. */
export const yyddd = /* @__PURE__ */ digitLayout(
  "yyddd",
  ["YYDDD"],
  ordinalPeriod,
  "hibc-date-formats",
  "secondary",
);
