import { twoCharacters, YEAR_DIGITS } from "../two-characters.js";

/**
 * Last digit of the year, then the month letter with I skipped: `9B`. The two alphabets are two schemes here too, since
 * they differ from September on.
 */
export const digitLetterNoI = /* @__PURE__ */ twoCharacters(
  "digit-letter-no-i",
  0,
  YEAR_DIGITS,
  "ABCDEFGHJKLM",
  "date-code-trade-practice",
  "common-practice",
);
