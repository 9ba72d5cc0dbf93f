import type { Provenance } from "../sources/index.js";
import type { RatingStandard } from "./rating-standard.js";
import { type StandardRow, standardRows } from "./standards.data.js";

export type { RatingStandard } from "./rating-standard.js";

/** A cranking current in a standard, as a label or an instrument states it. */
export interface StandardAmperes {
  readonly amperes: number;
  readonly standard: RatingStandard;
}

/** The rated current flows this long; the battery passes when the voltage has not fallen below `endVolts`. */
export interface RatingStage {
  readonly seconds: number;
  /** Terminal volts of a 12 V battery (6 cells). */
  readonly endVolts: number;
}

/** The stage that follows, down to 6.0 V. */
export interface SecondRatingStage extends RatingStage {
  /** Current of this stage as a share of the rated current. */
  readonly currentShare: number;
  readonly pauseSeconds: number;
  /** Time to 6.0 V as the standard counts it, first stage included. */
  readonly totalSeconds: number;
}

/** The test behind a rating; what is not established is absent. */
export interface RatingDefinition extends Provenance {
  /** As printed in the trade; several standards share a name. */
  readonly name: string;
  readonly edition?: string;
  readonly temperatureCelsius?: number;
  readonly firstStage?: RatingStage;
  readonly secondStage?: SecondRatingStage;
}

function define(row: StandardRow): RatingDefinition {
  const [name, source, standing, edition, celsius, seconds, endVolts, currentShare, pauseSeconds] = row;
  return {
    name,
    source,
    standing,
    ...(edition !== undefined && { edition }),
    ...(celsius !== undefined && { temperatureCelsius: celsius }),
    ...(endVolts !== undefined && { firstStage: { seconds: seconds!, endVolts } }),
    ...(currentShare !== undefined && {
      secondStage: {
        currentShare,
        pauseSeconds: pauseSeconds!,
        seconds: row[9]!,
        endVolts: 6,
        totalSeconds: row[10]!,
      },
    }),
  };
}

function defineAll(): Readonly<Record<RatingStandard, RatingDefinition>> {
  const entries = Object.entries(standardRows).map(([id, row]) => [id, define(row)] as const);
  return Object.fromEntries(entries) as Record<RatingStandard, RatingDefinition>;
}

/**
 * The test behind every rating standard this library knows.
 *
 * Scope: 12 V starter batteries; the clause texts were not read, so each figure is secondary or from memory.
 *
 * @example
 * ```ts
 * import { ratingStandards } from "crankworthy/ratings";
 * ratingStandards["din-43539-2"].firstStage; // => { seconds: 30, endVolts: 9 }
 * ratingStandards["iec-60095-1:2018"].firstStage; // => undefined
 * ```
 */
export const ratingStandards: Readonly<Record<RatingStandard, RatingDefinition>> =
  /* @__PURE__ */ defineAll();
