import { type Estimate, probabilityPositive, type Refusal, refuse, requireFinite } from "../numeric/index.js";
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

export type HydrometerFlag = "cell-below-1.100" | "cell-below-1.150" | "mean-below-1.225";
export type HydrometerFault = "not-fully-charged" | "water-not-mixed";

export interface CellGravityInput {
  /** Specific gravity of each cell from the positive post on, at 80 °F [1] (1.000..1.400), at least two. */
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
 * @param derivation receives the step when given
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
  if (gravities.length < 2)
    return refuse("too-few-cells", "A spread needs at least two cells.", "Readings of all cells.");
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  let sum = 0;
  let weakestCell = 0;
  for (let i = 0; i < gravities.length; i++) {
    const gravity = gravities[i]! + correction;
    requireFinite(`gravities[${i}]`, gravity);
    if (gravity < 1 || gravity > 1.4)
      return refuse(
        "gravity-out-of-range",
        `Cell ${i + 1} reads ${gravity}, outside 1.000 to 1.400.`,
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
  if (lowest < 1.1) flags.push("cell-below-1.100");
  if (lowest < 1.15) flags.push("cell-below-1.150");
  if (afterFullCharge && meanGravity < 1.225) flags.push("mean-below-1.225");
  const invalidReasons: HydrometerFault[] = [];
  if (!afterFullCharge) invalidReasons.push("not-fully-charged");
  if (waterAdded) invalidReasons.push("water-not-mixed");
  derivation?.push({
    quantity: "gravity spread between cells",
    formula: "highest − lowest",
    inputs: { highest, lowest, limit: chosen.limit },
    result: spread.value,
    unit: "1",
    standardUncertainty: spread.standardUncertainty,
    source: chosen.source,
    standing: chosen.standing,
  });
  return {
    spread,
    spreadLimit: chosen.limit,
    exceedProbability: probabilityPositive({ ...spread, value: spread.value - chosen.limit }),
    weakestCell,
    lowestGravity: lowest,
    meanGravity,
    flags,
    valid: invalidReasons.length === 0,
    invalidReasons,
  };
}
