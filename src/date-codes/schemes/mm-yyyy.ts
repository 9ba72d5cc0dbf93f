import { digitLayout } from "../digit-layout.js";
import { monthPeriod } from "../periods.js";

/** Month, then the full year: `03/2024`. */
export const mmDashYyyy = /* @__PURE__ */ digitLayout(
  "mm-yyyy",
  ["MM/YYYY", "MM-YYYY", "MM.YYYY"],
  monthPeriod,
  "date-code-trade-practice",
  "common-practice",
);
