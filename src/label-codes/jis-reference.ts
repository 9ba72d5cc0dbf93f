import { type Refusal, refuse, requireFinite, requireKey, requirePositive } from "../numeric/index.js";
import type { Provenance } from "../sources/index.js";
import type { JisParts } from "./jis-parts.js";
import { jisList, rankClasses } from "./jis-type.data.js";
import type { LabelRefusalCode, ReferenceRating } from "./label-reading.js";

/** What is known beside the type. */
export interface ReferenceOptions {
  /** Reserve capacity printed on the battery, min, > 0. */
  readonly reserveCapacityMinutes?: number;
  /**
   * What the number shall stand for: this battery, which carries only the designation (default), or the entry of the
   * published list.
   */
  readonly of?: "battery" | "list-entry";
  /** Year of the label where known; before 2006 the rank has another basis and nothing is given. */
  readonly labelYear?: number;
}

/** Why no reference current is given. */
export type ReferenceRefusalCode = LabelRefusalCode | "rank-class-unknown" | "jis-before-2006";

const RANK_CONSTANT = 2.8;
/** Types in public shop lists stood −14 % to +30 % from the list: our choice. */
const BATTERY = [0.15, 0.3] as const;
/** Other tables differ from the list by up to 4 %: our choice. */
const LIST_ENTRY = 0.04;
/** Largest deviation of the rank classes from the list is 9.4 %: our choice. */
const RANK_CLASS = 0.1;

/**
 * A value with relative bounds below and above it. The quantity is taken as uniform between the bounds; the standard
 * uncertainty is the root mean square distance from `value`, √((a³ + b³) / (3 (a + b))), for the value is not moved to the
 * middle. For equal bounds this is a/√3; for −15 % / +30 % it is 15 %.
 */
function between(
  value: number,
  below: number,
  above: number,
  basis: ReferenceRating["basis"],
  provenance: Provenance,
): ReferenceRating {
  const relative = Math.sqrt((below ** 3 + above ** 3) / (3 * (below + above)));
  return {
    amperes: { value, standardUncertainty: value * relative },
    interval: { lower: value * (1 - below), upper: value * (1 + above) },
    standard: "jis-d-5301:2006",
    basis,
    ...provenance,
  };
}

/** Reference current from decoded parts. */
export function referenceFor(
  parts: Pick<JisParts, "performanceRank" | "caseClass" | "lengthDigits" | "valveRegulated">,
  options: ReferenceOptions = {},
): ReferenceRating | Refusal<"rank-class-unknown" | "jis-before-2006"> {
  const { performanceRank: rank, valveRegulated } = parts;
  const { reserveCapacityMinutes: minutes, of = "battery", labelYear = 2006 } = options;
  requireKey("of", of, { battery: 0, "list-entry": 0 });
  requireFinite("labelYear", labelYear);
  if (labelYear < 2006) {
    return refuse("jis-before-2006", "Ranks before 2006 rest on another test.", "A label of 2006 or later.");
  }
  if (minutes !== undefined) {
    requirePositive("reserveCapacityMinutes", minutes);
    // Ranks are printed in steps of 2 below 50 and of 5 from 50 on; half a step either way.
    const below = (rank <= 50 ? 1 : 2.5) / rank;
    const above = (rank < 50 ? 1 : 2.5) / rank;
    const value = (RANK_CONSTANT * rank) ** 2 / minutes;
    return between(value, 1 - (1 - below) ** 2, (1 + above) ** 2 - 1, "reserve-capacity", {
      source: "jis-designation",
      standing: "computed",
    });
  }
  const jisCase = parts.caseClass + parts.lengthDigits;
  const listed = valveRegulated ? undefined : jisList[rank + jisCase];
  const perRank = valveRegulated ? undefined : rankClasses.find(([cases]) => cases.test(jisCase))?.[1];
  const value = listed ?? (perRank && perRank * rank);
  if (!value) {
    return refuse(
      "rank-class-unknown",
      "No relation of rank to CCA for this case.",
      "CCA or reserve capacity on the label.",
    );
  }
  const entry = listed ? LIST_ENTRY : RANK_CLASS;
  // A battery strays from the list as far as ever; what the list entry itself is uncertain by comes on top.
  const spread = listed ? 0 : RANK_CLASS;
  const [below, above] =
    of === "list-entry" ? [entry, entry] : [Math.hypot(spread, BATTERY[0]), Math.hypot(spread, BATTERY[1])];
  return between(
    value,
    below,
    above,
    listed ? "list" : "rank-class",
    listed
      ? { source: "jis-cca-list", standing: "read" }
      : { source: "ratings-choice", standing: "our-choice" },
  );
}

/**
 * Performance rank of JIS D 5301:2006.
 *
 * @param ratings cold cranking current in A and reserve capacity in min, both > 0
 * @returns dimensionless, not rounded; labels print steps of 2 below 50 and of 5 from 50 on
 * @throws RangeError when an argument is not above 0
 * Equation: rank = √(CCA × RC) / 2.8.
 * Source: Battery Association of Japan, quoting JIS D 5301:2006 (read).
 * @example
 * ```ts
 * import { performanceRank } from "crankworthy/label-codes";
 * performanceRank({ coldCrankingAmperes: 370, reserveCapacityMinutes: 64 }); // => 55.0
 * ```
 */
export function performanceRank(ratings: {
  readonly coldCrankingAmperes: number;
  readonly reserveCapacityMinutes: number;
}): number {
  const { coldCrankingAmperes, reserveCapacityMinutes } = ratings;
  requirePositive("coldCrankingAmperes", coldCrankingAmperes);
  requirePositive("reserveCapacityMinutes", reserveCapacityMinutes);
  return Math.sqrt(coldCrankingAmperes * reserveCapacityMinutes) / RANK_CONSTANT;
}
