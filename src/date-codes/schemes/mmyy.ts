import { digitLayout } from "../digit-layout.js";
import { monthPeriod } from "../periods.js";

/** Month, then two digits of the year, with or without a separator: `0324`, `03/24`. */
export const mmyy = /* @__PURE__ */ digitLayout(
  "mmyy",
  ["MMYY", "MM/YY", "MM-YY", "MM.YY"],
  monthPeriod,
  "date-code-trade-practice",
  "common-practice",
);
