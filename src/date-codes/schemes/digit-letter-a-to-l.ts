import { twoCharacters, YEAR_DIGITS } from "../two-characters.js";

/** Last digit of the year, then the month letter with I kept: `9B`. */
export const digitLetterAToL = /* @__PURE__ */ twoCharacters(
  "digit-letter-a-to-l",
  0,
  YEAR_DIGITS,
  "ABCDEFGHIJKL",
  "date-code-trade-practice",
  "common-practice",
);
