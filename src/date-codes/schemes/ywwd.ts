import { digitLayout } from "../digit-layout.js";
import { weekdayPeriod } from "../periods.js";

/** Last digit of the week year, week, weekday (Monday = 1): `5012` = 2024-12-31 by ISO weeks. */
export const ywwd = /* @__PURE__ */ digitLayout("ywwd", ["YWWD"], weekdayPeriod, "iso-8601", "from-memory");
