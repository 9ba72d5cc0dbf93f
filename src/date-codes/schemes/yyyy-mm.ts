import { digitLayout } from "../digit-layout.js";
import { monthPeriod } from "../periods.js";

/** Full year, then the month: `2024-03`. */
export const yyyyDashMm = /* @__PURE__ */ digitLayout(
  "yyyy-mm",
  ["YYYY-MM", "YYYY/MM", "YYYY.MM"],
  monthPeriod,
  "date-code-trade-practice",
  "common-practice",
);
