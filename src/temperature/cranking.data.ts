import type { TemperatureTable } from "./table.js";

// Rows: °C, %, standard uncertainty in %. Printed °F are given as the printed or exact °C: 0 °F = -18 °C (the temperature
// of the cold-cranking ratings), 20 °F = -6.7, 30 °F = -1.1, 32 °F = 0, 50 °F = 10, 80 °F = 26.7, -20 °F = -28.9.
// Uncertainties of the published tables are the spread between them (width/√12), not a figure of theirs.

/**
 * Cranking ability of a battery against temperature, in % of its own ability at 80 °F, as published.
 *
 * `workshop-rule` 100/65/40; `rollers` places the 65 % at 30 °F; `magazine` loses a third at 32 °F and keeps 30 % at
 * −20 °F (it says "under half" at 0 °F, no number, so the straight line stands there); `trade-chart` from memory.
 * Not ratings: the rule gives 1.6 between −18 and 0 °C where rating pages give 1.25 to 1.33.
 */
export const crankingAbilityTables = {
  "workshop-rule": {
    id: "workshop-rule",
    rows: [
      [-18, 40, 3],
      [0, 65, 1.5],
      [26.7, 100, 0],
    ],
    source: "tm-5-4210-table-3",
    standing: "read",
  },
  rollers: {
    id: "rollers",
    rows: [
      [-18, 40, 3],
      [-1.1, 65, 1],
      [26.7, 100, 0],
    ],
    source: "tm-5-1185-cranking-power",
    standing: "read",
  },
  magazine: {
    id: "magazine",
    rows: [
      [-28.9, 30, 3],
      [0, 67, 1],
      [26.7, 100, 0],
    ],
    source: "ps-696-cold",
    standing: "read",
  },
  "trade-chart": {
    id: "trade-chart",
    rows: [
      [-18, 43, 3],
      [-12.2, 50, 3],
      [-6.7, 58, 2],
      [0, 64.5, 1],
      [10, 82, 2],
      [26.7, 100, 0],
    ],
    source: "trade-chart-ability",
    standing: "from-memory",
  },
} as const satisfies Record<string, TemperatureTable>;

/**
 * Cranking ability relative to a cold-cranking rating (100 % at −18 °C): what {@link coldStartMargin} starts from.
 * Middle and spread of two families that contradict each other: the ability rules of {@link crankingAbilityTables} and
 * the ratio of ratings. At 0 °C 1.25 (ratings) to 1.65 (rule); at 26.7 °C 1.3 (from memory) to 2.5; at −28.9 °C
 * 0.60 (30 of "under half") to 0.83 (the slope of the ratings continued).
 */
export const abilityAgainstRating: TemperatureTable = {
  id: "against-rating",
  rows: [
    [-28.9, 72, 7],
    [-18, 100, 0],
    [0, 145, 12],
    [26.7, 190, 35],
  ],
  source: "temperature-choice",
  standing: "our-choice",
  leansOn: ["rating-ratio-pages", "tm-5-4210-table-3", "ps-696-cold"],
};

/**
 * Cranking demand of an engine against temperature, in % of its demand at 80 °F.
 *
 * `workshop-article` and `textbook-chart` as published (their −20 to −25 °F is placed at −20 °F = −28.9 °C, the warmer
 * end); `between` runs through the middle and is the default. A vintage-car club's tip puts 200 % already at 40 °F and
 * is not followed. Oil grade decides, so replace it where you know better.
 */
export const crankingDemandTables = {
  "workshop-article": {
    id: "workshop-article",
    rows: [
      [-28.9, 350, 40],
      [-18, 210, 20],
      [0, 155, 15],
      [26.7, 100, 0],
    ],
    source: "workshop-article-demand",
    standing: "read",
  },
  "textbook-chart": {
    id: "textbook-chart",
    rows: [
      [-28.9, 350, 40],
      [-18, 250, 20],
      [0, 165, 15],
      [26.7, 100, 0],
    ],
    source: "textbook-demand",
    standing: "from-memory",
  },
  between: {
    id: "between",
    rows: [
      [-28.9, 350, 40],
      [-18, 230, 20],
      [0, 160, 15],
      [26.7, 100, 0],
    ],
    source: "temperature-choice",
    standing: "our-choice",
    leansOn: ["workshop-article-demand", "textbook-demand"],
  },
} as const satisfies Record<string, TemperatureTable>;
