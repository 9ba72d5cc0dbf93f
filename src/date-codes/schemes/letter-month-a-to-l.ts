import { twoCharacters, YEAR_DIGITS } from "../two-characters.js";

/** Month letter with I kept (I = September, L = December), then the last digit of the year: `L4`. */
export const letterMonthAToL = /* @__PURE__ */ twoCharacters(
  "letter-month-a-to-l",
  1,
  YEAR_DIGITS,
  "ABCDEFGHIJKL",
  "date-code-trade-practice",
  "common-practice",
);
