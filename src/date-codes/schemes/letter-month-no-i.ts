import { twoCharacters, YEAR_DIGITS } from "../two-characters.js";

/** Month letter with I skipped (J = September, M = December), then the last digit of the year: `B9`. */
export const letterMonthNoI = /* @__PURE__ */ twoCharacters(
  "letter-month-no-i",
  1,
  YEAR_DIGITS,
  "ABCDEFGHJKLM",
  "technician-training-date-codes",
  "read",
);
