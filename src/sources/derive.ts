import type { Derivation, Standing } from "./source.js";

/** Adds a step when the caller asked for a derivation. `result`: a plain number was read, an estimate was computed. */
export function derive(
  derivation: Derivation | undefined,
  quantity: string,
  formula: string,
  inputs: Readonly<Record<string, number | string>>,
  result: { readonly value: number; readonly standardUncertainty: number } | number,
  unit: string,
  { source, standing }: { readonly source: string; readonly standing: Standing },
): void {
  derivation?.push({
    quantity,
    formula,
    inputs,
    unit,
    source,
    standing,
    ...(typeof result === "number"
      ? { result }
      : { result: result.value, standardUncertainty: result.standardUncertainty }),
  });
}

/** Adds the step of a probability that a margin is above zero, under a normal model. */
export function deriveProbability(
  derivation: Derivation | undefined,
  quantity: string,
  margin: { readonly value: number; readonly standardUncertainty: number },
  probability: number,
): void {
  if (!derivation) return;
  const inputs = { margin: margin.value, u: margin.standardUncertainty };
  derive(derivation, quantity, "Φ(margin / u)", inputs, probability, "1", {
    source: "jcgm-106",
    standing: "from-memory",
  });
}
