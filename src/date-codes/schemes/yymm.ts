import { digitLayout } from "../digit-layout.js";
import { monthPeriod } from "../periods.js";

/** Two digits of the year, then the month: `2403`. */
export const yymm = /* @__PURE__ */ digitLayout(
  "yymm",
  ["YYMM"],
  monthPeriod,
  "date-code-trade-practice",
  "common-practice",
);
