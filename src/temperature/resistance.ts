import { type Estimate, type Refusal, refuse, requireEstimate } from "../numeric/index.js";
import type { Derivation, SourceId } from "../sources/index.js";

/** Mean relative slope of resistance, referred to 25 °C [1/K], and where it may be used. */
export const resistanceSlope = {
  perKelvin: 0.0099,
  standardUncertainty: 0.0037,
  lowestCelsius: -18,
  highestCelsius: 45,
  source: "resistance-textbook",
  standing: "from-memory",
  /** The wide side of the uncertainty: acid alone doubles its resistivity. */
  leansOn: ["acid-resistivity"],
} as const satisfies { source: SourceId; leansOn: readonly SourceId[]; [field: string]: unknown };

/**
 * Small-signal or ohmic resistance referred to 25 °C.
 *
 * Kept apart from {@link crankingAbilityPercent} on purpose: cranking ability also loses voltage and acid diffusion in
 * the cold and falls to 40 % at −18 °C, while resistance grows by about half; using one for the other is off by 70 %.
 * Rests on one mean figure, so the correction is wide: 11 % (standard) at −18 °C.
 *
 * @param resistanceOhms reading with its uncertainty [Ω] (> 0)
 * @param temperatureCelsius of the electrolyte, with its uncertainty [°C] (−18..45)
 * @param derivation receives the step when given
 * @returns resistance at 25 °C [Ω], or a refusal outside −18..45 °C
 *
 * Equation: R25 = R / (1 + α·(25 − T)), α = 0.0099 ± 0.0037 1/K so that R(−18)/R(30) = 1.5; the uncertainty spans ratios
 * 1.3 to 2.0 (acid alone doubles); above 30 °C, where the figure ends, u(α) is doubled (our choice).
 * Source: textbook figure, +50 % from +30 to −18 °C (from memory).
 * @example
 * ```ts
 * import { resistanceAt25Celsius } from "crankworthy/temperature";
 * const cold = resistanceAt25Celsius(
 *   { value: 0.0057, standardUncertainty: 0 },
 *   { value: -18, standardUncertainty: 0 },
 * );
 * "value" in cold && 1000 * cold.value; // => 4.00
 * ```
 */
export function resistanceAt25Celsius(
  resistanceOhms: Estimate,
  temperatureCelsius: Estimate,
  derivation?: Derivation,
): Estimate | Refusal<"temperature-outside-range"> {
  const { perKelvin, lowestCelsius, highestCelsius } = resistanceSlope;
  const temperature = temperatureCelsius.value;
  requireEstimate("temperatureCelsius", temperatureCelsius);
  requireEstimate("resistanceOhms", resistanceOhms, 0);
  if (temperature < lowestCelsius || temperature > highestCelsius)
    return refuse(
      "temperature-outside-range",
      `Resistance is corrected between ${lowestCelsius} and ${highestCelsius} °C only, not at ${temperature} °C.`,
      "A reading nearer to room temperature.",
    );
  const slopeUncertainty = resistanceSlope.standardUncertainty * (temperature > 30 ? 2 : 1);
  const factor = 1 + perKelvin * (25 - temperature);
  const value = resistanceOhms.value / factor;
  const standardUncertainty = Math.hypot(
    resistanceOhms.standardUncertainty / factor,
    (value * (25 - temperature) * slopeUncertainty) / factor,
    (value * perKelvin * temperatureCelsius.standardUncertainty) / factor,
  );
  derivation?.push({
    quantity: "resistance at 25 °C",
    formula: "resistance / (1 + slope × (25 − temperature))",
    inputs: { resistance: resistanceOhms.value, temperature, slope: perKelvin, slopeUncertainty },
    result: value,
    unit: "Ω",
    standardUncertainty,
    source: resistanceSlope.source,
    standing: resistanceSlope.standing,
  });
  return { value, standardUncertainty };
}
