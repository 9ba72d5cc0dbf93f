import type { Standing } from "../sources/source.js";

/**
 * Series L / LN by digit: length in mm, BCI groups of that case. Width 175, height 190 mm (LB: 175 mm). From memory of
 * EN 50342-2, except the lengths of 0, 1 and 2, read on sellers' pages. Trade codes H4-H9 and T4-T8 are left out on
 * purpose: some tables use H3 and H4 for other lengths.
 */
export const caseLengths: Readonly<
  Record<
    string,
    readonly [length: number, standing: Standing, tall?: readonly string[], low?: readonly string[]]
  >
> = {
  0: [175, "read"],
  1: [207, "read", ["140R"], ["99R"]],
  2: [242, "read", ["47"], ["90", "96R"]],
  3: [278, "from-memory", ["48"], ["91"]],
  5: [353, "from-memory", ["49"], ["93"]],
  // Unsourced tables print 393.
  6: [394, "from-memory", ["95R"]],
};

/** Digits that exist in the low series LB. */
export const lowCases = "1235";

/**
 * BCI groups: length, width, height in mm, then other sizes printed for the same group. From memory of the BCI table,
 * tolerance 3 mm. For 47, 48 and 49 the second size is the case; the longer book figure probably includes hold-down ends.
 */
export const bciGroups: Readonly<Record<string, readonly number[]>> = {
  24: [260, 173, 225, 237, 173, 173],
  "24F": [273, 173, 229, 260, 173, 225],
  25: [230, 175, 225],
  "26R": [208, 173, 197],
  27: [306, 173, 225],
  31: [330, 173, 240],
  34: [260, 173, 200],
  "34R": [260, 173, 200],
  35: [230, 175, 225],
  "36R": [263, 183, 206],
  47: [246, 175, 190, 242, 175, 190],
  48: [306, 175, 192, 278, 175, 190],
  49: [381, 175, 192, 353, 175, 190],
  "51R": [238, 129, 223],
  58: [255, 183, 177],
  59: [255, 193, 196],
  65: [306, 190, 192, 306, 192, 192],
  75: [230, 180, 196],
  78: [260, 180, 196],
  86: [230, 173, 203],
  "121R": [208, 177, 215],
  "124R": [263, 177, 220],
};
