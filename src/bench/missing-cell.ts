import {
  COVERAGE_FACTOR_95,
  type Estimate,
  rectangularUncertainty,
  requireEstimate,
  requireFinite,
  requireKey,
} from "../numeric/index.js";
import type { Derivation } from "../sources/index.js";

export type CellSignature = "six-cells" | "cells-missing" | "ambiguous" | "between";

const SITUATIONS = { rested: 0, "on-charge": 0 };
/** No reading of a workshop is larger. */
const MOST = 1e6;

export interface MissingCellInput {
  /** Terminal voltage of a 12 V battery, rested without load, or on charge [V] (≥ 0). */
  readonly volts: number;
  readonly voltsStandardUncertainty: number;
  readonly situation?: "rested" | "on-charge";
  /** A full charge was completed (or honestly attempted) before the rest. */
  readonly chargedBefore: boolean;
  /** What six cells would show [V]; default 12.75 (12.5..13.0) at rest after charge, 14.4 (13.9..14.9) on charge. */
  readonly sixCellVolts?: Estimate;
}

export interface MissingCellOutcome {
  readonly shortfallVolts: Estimate;
  readonly signature: CellSignature;
  /** Cells the shortfall amounts to; 0 unless the signature is `cells-missing` or `ambiguous`. */
  readonly cells: number;
  /** One reversed cell takes up to two cell voltages, so it may stand for one or two missing ones. */
  readonly reversedCellPossible: boolean;
}

/**
 * Reads missing cells out of a terminal voltage: a shorted cell leaves the battery one cell voltage short at every charge level.
 *
 * `cells-missing` needs a charge before: six empty cells look the same (10.5 V is six at 1.75 V), which is `ambiguous`.
 * `between` fits neither. Out of scope: an open or cracked link, which shows only under load.
 *
 * @param input see {@link MissingCellInput}
 * @param derivation receives the step when given
 * @returns shortfall [V] against six cells, what it looks like, how many cells
 *
 * Equation: shortfall = six-cell value − reading; n cells when within n·2.0..n·2.2 V (n·2.3..n·2.5 on charge) widened by 1.96 u.
 * Source: 1.95 to 2.13 V per cell at rest, 2.4 V on charge (computed); the band after a charge is our choice.
 * @example
 * ```ts
 * import { readMissingCells } from "crankworthy/bench";
 * readMissingCells({ volts: 10.55, voltsStandardUncertainty: 0.02, chargedBefore: true }).signature; // => "cells-missing"
 * readMissingCells({ volts: 10.55, voltsStandardUncertainty: 0.02, chargedBefore: false }).signature; // => "ambiguous"
 * ```
 */
export function readMissingCells(input: MissingCellInput, derivation?: Derivation): MissingCellOutcome {
  const { volts, voltsStandardUncertainty, situation = "rested", chargedBefore } = input;
  requireFinite("volts", volts, 0, MOST);
  requireFinite("voltsStandardUncertainty", voltsStandardUncertainty, 0, MOST);
  requireKey("situation", situation, SITUATIONS);
  if (input.sixCellVolts) requireEstimate("sixCellVolts", input.sixCellVolts);
  const onCharge = situation === "on-charge";
  const expected = input.sixCellVolts ?? {
    value: onCharge ? 14.4 : 12.75,
    standardUncertainty: rectangularUncertainty(onCharge ? 1 : 0.5),
  };
  const perCell = onCharge ? 2.4 : 2.1;
  const shortfallVolts = {
    value: expected.value - volts,
    standardUncertainty: Math.hypot(expected.standardUncertainty, voltsStandardUncertainty),
  };
  const nearest = Math.min(6, Math.max(0, Math.round(shortfallVolts.value / perCell)));
  const reach = 0.1 * nearest + COVERAGE_FACTOR_95 * shortfallVolts.standardUncertainty;
  const off = shortfallVolts.value - nearest * perCell;
  const fits = nearest === 0 ? off <= reach : Math.abs(off) <= reach;
  const signature: CellSignature = !fits
    ? chargedBefore
      ? "between"
      : "ambiguous"
    : nearest === 0
      ? "six-cells"
      : chargedBefore
        ? "cells-missing"
        : "ambiguous";
  const cells = fits ? nearest : 0;
  derivation?.push({
    quantity: "shortfall against six cells",
    formula: "six-cell value − reading",
    inputs: { sixCells: expected.value, reading: volts, perCell },
    result: shortfallVolts.value,
    unit: "V",
    standardUncertainty: shortfallVolts.standardUncertainty,
    source: "cell-voltages",
    standing: "computed",
  });
  return { shortfallVolts, signature, cells, reversedCellPossible: cells === 1 || cells === 2 };
}
