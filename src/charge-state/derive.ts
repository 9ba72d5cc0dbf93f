import type { SourceId } from "../sources/index.js";
import type { Derivation, DerivationStep, Standing } from "../sources/source.js";

/** Pushes one step; the last two default to this library's own choices. @internal */
export function step(
  derivation: Derivation,
  quantity: string,
  formula: string,
  inputs: DerivationStep["inputs"],
  result: number,
  unit: string,
  standardUncertainty?: number,
  source: SourceId = "charge-state-defaults",
  standing: Standing = "our-choice",
): void {
  const plain = { quantity, formula, inputs, result, unit, source, standing };
  derivation.push(standardUncertainty === undefined ? plain : { ...plain, standardUncertainty });
}
