import {
  type Estimate,
  probabilityPositive,
  type Refusal,
  refuse,
  requireFinite,
  requireKey,
} from "../numeric/index.js";
import { derive, deriveProbability } from "../sources/derive.js";
import type { Derivation, SourceId, Standing } from "../sources/index.js";

/** A published limit for the gravity spread between cells. */
export interface SpreadLimit {
  readonly limit: number;
  readonly source: SourceId;
  readonly standing: Standing;
}

/**
 * Limits for the spread between the strongest and the weakest cell, by name; they differ by a factor of two, so the
 * choice is policy. `usual` is the most frequent and the default.
 */
export const spreadLimits = {
  usual: { limit: 0.05, source: "tm-5-3805-281-spread", standing: "read" },
  marine: { limit: 0.03, source: "marine-manual-spread", standing: "read" },
  strict: { limit: 0.025, source: "tm-9-6140-spread", standing: "read" },
} as const satisfies Record<string, SpreadLimit>;

// Two readings of ±0.005 added linearly, rectangular.
const SPREAD_UNCERTAINTY = 0.01 / Math.sqrt(3);

// A dead cell reads about 1.00; reading error and a correction for cold acid (−0.032 at most in print) may take it below.
const LOWEST_GRAVITY = 0.985;

/** Gravities below which a cell, or the mean after a full charge, is remarkable. */
export const gravityFlags = {
  "cell-below-1.100": { limit: 1.1, source: "tm-9-6140-spread", standing: "read" },
  "cell-below-1.150": { limit: 1.15, source: "tm-5-3740-cell", standing: "read" },
  "mean-below-1.225": { limit: 1.225, source: "tm-5-3805-281-spread", standing: "read" },
} as const satisfies Record<HydrometerFlag, SpreadLimit>;

export type HydrometerFlag = "cell-below-1.100" | "cell-below-1.150" | "mean-below-1.225";
export type HydrometerFault = "not-fully-charged" | "water-not-mixed";

export interface CellGravityInput {
  /** Specific gravity of each cell from the positive post on, at 80 °F [1] (0.985..1.400), at least two. */
  readonly gravities: readonly number[];
  /** Added to each reading when they are not yet at 80 °F [1], default 0. */
  readonly correction?: number;
  readonly limit?: keyof typeof spreadLimits;
  readonly afterFullCharge: boolean;
  /** Water was added and not yet mixed in by charging. */
  readonly waterAdded?: boolean;
}

export interface CellGravityOutcome {
  readonly spread: Estimate;
  readonly spreadLimit: number;
  /** Probability that the true spread exceeds the limit. */
  readonly exceedProbability: number;
  /** Cell with the lowest gravity, counted from 1; the first of equals. */
  readonly weakestCell: number;
  readonly lowestGravity: number;
  readonly meanGravity: number;
  readonly flags: readonly HydrometerFlag[];
  /** False before full charge and with unmixed water: then the spread shows no defect. */
  readonly valid: boolean;
  readonly invalidReasons: readonly HydrometerFault[];
}

/**
 * Judges the gravities of the cells of one battery: spread against a named limit, the weakest cell, low cells.
 *
 * Spread and lowest cell are separate rules. Only readings after a full charge, with added water mixed in, can show a
 * failed cell.
 *
 * @param input see {@link CellGravityInput}
 * @param derivation receives the steps when given
 * @returns spread [1] with probability of exceeding the limit; refusal for fewer than two cells or impossible gravities
 *
 * Equation: spread = highest − lowest, ±0.010 (linear sum of two ±0.005 readings, rectangular, our choice); P = Φ((spread − limit)/u).
 * Source: US Army TM 9-6140-200-14, 4-7 (0.025); a marine manual (0.030); TM 5-3805-281-24-2 (0.050, mean 1.225);
 * TM 5-3740-214-14 (1.150); PS Magazine 696 (1.100): read.
 * @example
 * ```ts
 * import { judgeCellGravities } from "crankworthy/bench";
 * const cells = judgeCellGravities({ gravities: [1.265, 1.26, 1.19, 1.265, 1.26, 1.265], afterFullCharge: true });
 * "spread" in cells && cells.weakestCell; // => 3
 * "spread" in cells && cells.spread.value; // => 0.075
 * ```
 */
export function judgeCellGravities(
  input: CellGravityInput,
  derivation?: Derivation,
): CellGravityOutcome | Refusal<"too-few-cells" | "gravity-out-of-range"> {
  const { gravities, correction = 0, limit = "usual", afterFullCharge, waterAdded = false } = input;
  requireFinite("correction", correction);
  requireKey("limit", limit, spreadLimits);
  if (gravities.length < 2)
    return refuse("too-few-cells", "A spread needs at least two cells.", "Readings of all cells.");
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  let sum = 0;
  let weakestCell = 0;
  for (let i = 0; i < gravities.length; i++) {
    const gravity = gravities[i]! + correction;
    if (!Number.isFinite(gravity)) requireFinite(`gravities[${i}]`, gravity);
    if (gravity < LOWEST_GRAVITY || gravity > 1.4)
      return refuse(
        "gravity-out-of-range",
        `Cell ${i + 1} reads ${gravity}, outside 0.985 to 1.400.`,
        "The reading as specific gravity, for example 1.265.",
      );
    sum += gravity;
    if (gravity > highest) highest = gravity;
    if (gravity < lowest) {
      lowest = gravity;
      weakestCell = i + 1;
    }
  }
  const meanGravity = sum / gravities.length;
  const spread = { value: highest - lowest, standardUncertainty: SPREAD_UNCERTAINTY };
  const chosen = spreadLimits[limit];
  const flags: HydrometerFlag[] = [];
  if (lowest < gravityFlags["cell-below-1.100"].limit) flags.push("cell-below-1.100");
  if (lowest < gravityFlags["cell-below-1.150"].limit) flags.push("cell-below-1.150");
  if (afterFullCharge && meanGravity < gravityFlags["mean-below-1.225"].limit) flags.push("mean-below-1.225");
  const invalidReasons: HydrometerFault[] = [];
  if (!afterFullCharge) invalidReasons.push("not-fully-charged");
  if (waterAdded) invalidReasons.push("water-not-mixed");
  const beyond = { value: spread.value - chosen.limit, standardUncertainty: spread.standardUncertainty };
  const exceedProbability = probabilityPositive(beyond);
  if (derivation) {
    const inputs = { highest, lowest, limit: chosen.limit };
    derive(derivation, "gravity spread between cells", "highest − lowest", inputs, spread, "1", chosen);
    deriveProbability(derivation, "probability that the spread exceeds its limit", beyond, exceedProbability);
  }
  return {
    spread,
    spreadLimit: chosen.limit,
    exceedProbability,
    weakestCell,
    lowestGravity: lowest,
    meanGravity,
    flags,
    valid: invalidReasons.length === 0,
    invalidReasons,
  };
}
