import type { RatingStandard } from "./standards.js";

/** Amperes in `to` = `centre` × amperes in `from`; `expanded` = relative expanded uncertainty, k = 2. */
export type ConversionRow = readonly [
  from: RatingStandard,
  to: RatingStandard,
  centre: number,
  expanded: number,
];

/**
 * The conversions between cranking ratings that can be given, each also used backwards (divide by the centre, same
 * relative uncertainty). Centres and uncertainties: source `ratings-choice`, our choice, for 12 V starter batteries.
 *
 * Dimensionless. The uncertainty covers the disagreement of the published figures and the spread between designs;
 * no measured pairs exist. The figures stand for currents of about 150-450 A (DIN), 280-680 A (EN), 250-770 A (SAE).
 */
export const ratingConversions: readonly ConversionRow[] = [
  // Same test; only the ±1 °C tolerance.
  ["jis-d-5301:2006", "sae-j537", 1, 0.02],
  // A UK sheet: 1.5 × DIN + 40. A German dealer: 1.7, and 200 → 330 on the same page. A reprinted table: 1.75-1.79.
  ["din-43539-2", "sae-j537", 1.7, 0.08],
  // A catalogue glossary: 1.7. The reprinted table: 1.61-1.71.
  ["din-43539-2", "en-50342-1:2006-level-1", 1.65, 0.06],
  // The glossary: nearly 1. The reprinted table: 1.04-1.11. Even the direction is disputed.
  ["en-50342-1:2006-level-1", "sae-j537", 1.08, 0.1],
  // One dealer's page prints 1.18 and the example 200 → 230, i.e. 1.15.
  ["din-43539-2", "iec-60095-1:pre-2006", 1.16, 0.06],
  // 1.435-1.53 by division of the rows above.
  ["iec-60095-1:pre-2006", "sae-j537", 1.48, 0.08],
  // 1.25, 1.3 and "one third higher". The rule "65 % at 32 °F, 40 % at 0 °F" would give 1.6 and is rejected.
  ["sae-j537", "bci-ca", 1.27, 0.08],
  ["sae-j537", "bci-mca", 1.27, 0.08],
];

/** Steps of the rated current on older European labels: from this many amperes on, this step, in A. */
export const enGrid: readonly (readonly [fromAmperes: number, stepAmperes: number])[] = [
  [800, 50],
  [600, 40],
  [300, 30],
  [200, 20],
  [0, 10],
];

const SAME_IN_TARGET = "The maker's figure in the other standard.";
const TEXT = "The text of the standard.";

/** Code: reason, what would help. */
export const conversionRefusals = {
  "en-level-2": [
    "EN level 2 is set by charge given over 150 s, other ratings by voltage under load.",
    SAME_IN_TARGET,
  ],
  "en-level-unstated": [
    "EN levels 1 and 2 share the name, and the level is not stated.",
    "The printed level, or a label after the 2015 edition.",
  ],
  "iec-edition-unstated": [
    "IEC names tests about a factor of 1.5 apart.",
    "The edition or year of the label.",
  ],
  "iec-test-not-read": ["The test of this IEC edition is not established here.", TEXT],
  "hca-not-a-rating": ["HCA has no agreed test.", "The maker's CCA."],
  "standard-unstated": [
    "A current without its standard is uncertain by a factor of 1.7.",
    "The standard on the label.",
  ],
  "jis-before-2006": ["JIS figures before 2006 rest on another test.", "A label of 2006 or later."],
  "test-not-established": ["The test of this rating is not established here.", TEXT],
  "no-direct-conversion": ["No direct relation is published, and chained ones do not close.", SAME_IN_TARGET],
} as const;
