import { digitLayout } from "../digit-layout.js";
import { weekPeriod } from "../periods.js";

/** Two digits of the week year, then the week: `2510` = 2025-03-03..09 by ISO weeks. */
export const yyww = /* @__PURE__ */ digitLayout(
  "yyww",
  ["YYWW"],
  weekPeriod,
  "iec-60062-year-week",
  "from-memory",
);
