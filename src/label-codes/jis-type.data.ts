import type { SourceId } from "../sources/index.js";

/** Width and container height without posts, mm, by class letter; all read. F is not in the sources. */
export const jisClasses: Readonly<
  Record<string, readonly [width: number, height: number, source: SourceId]>
> = {
  A: [127, 162, "jis-designation"],
  // One source prints width 127 for B.
  B: [129, 203, "jis-designation"],
  // The letter is missing in the copy; taken from the row order.
  C: [135, 207, "jis-definitions"],
  D: [173, 204, "jis-designation"],
  E: [176, 213, "jis-designation"],
  G: [222, 213, "jis-designation"],
  H: [278, 220, "jis-designation"],
};

/** Cold cranking amperes by type, list after the revision of November 2006; source `jis-cca-list`, read. */
export const jisList: Readonly<Record<string, number>> = {
  "30A19": 210,
  "32A19": 245,
  "34B17": 240,
  "38B19": 265,
  "40B19": 270,
  "42B19": 290,
  "46B24": 295,
  "55B24": 370,
  "60B24": 390,
  "65B24": 425,
  "55D23": 320,
  "75D23": 465,
  "80D23": 500,
  "85D23": 530,
  "85D26": 525,
  "90D26": 560,
  "95D31": 585,
  "115D31": 740,
};

/** A per rank by case, fitted to the list (largest deviation 9.4 %): our choice. */
export const rankClasses: readonly (readonly [cases: RegExp, amperesPerRank: number])[] = [
  [/^(A|B17|B19)/, 7],
  [/^B24/, 6.5],
  [/^D/, 6.2],
];

/** Cases of D 5301 behind the outline letters of D 5306: trade equivalences, low authority, read. */
export const startStopOutlines: Readonly<Record<string, string>> = {
  M: "B20",
  N: "B24",
  Q: "D23",
  S: "D26",
  T: "D31",
};
