import { twoCharacters } from "../two-characters.js";

/**
 * IEC 60062, two characters: year letter on a 20-year cycle, then 1..9, O, N or D for the month (O is the letter):
 * `M3`. The order used before about 1977, month then year, is not read.
 *
 * A = 1970, 1990, 2010 .. X = 1989, 2009, 2029; the row begins with M = 2000. The summary prints G as well, which would
 * make 21 letters for 20 years and shift everything after F; a second page (R = 2003) agrees only with the row without G.
 */
export const iec60062 = /* @__PURE__ */ twoCharacters(
  "iec-60062",
  0,
  "MNPRSTUVWXABCDEFHJKL",
  "123456789OND",
  "iec-60062-characters",
  "secondary",
);

/** The shape of a code with the doubtful year letter G. */
export const YEAR_G = /^G[1-9OND]$/;
