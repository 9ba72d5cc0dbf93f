import { digitLayout } from "../digit-layout.js";
import { dayPeriod } from "../periods.js";

/** Year, month, day with hyphens, as on a label: `2024-03-13`. */
export const isoDate = /* @__PURE__ */ digitLayout(
  "iso-date",
  ["YYYY-MM-DD"],
  dayPeriod,
  "cfr-21-801-18",
  "from-memory",
);
