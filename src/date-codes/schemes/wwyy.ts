import { digitLayout } from "../digit-layout.js";
import { weekPeriod } from "../periods.js";

/** Week, then two digits of the week year: `0424` = week 4 of 2024. */
export const wwyy = /* @__PURE__ */ digitLayout("wwyy", ["WWYY"], weekPeriod, "cfr-49-574-5", "from-memory");
