import { type Estimate, type Refusal, refuse } from "../../numeric/index.js";
import { createBlockSums } from "./block-sums.js";

export type FitRefusal = Refusal<"out-of-order" | "too-few-pairs" | "no-change-of-current" | "not-ohmic">;

/** @internal V = E + R·I through rows that have both; NaN in a column means none. */
export interface OhmicLine {
  readonly pairs: number;
  readonly meanVolts: number;
  readonly meanAmperes: number;
  /** Σ (I − Ī)² [A²]. */
  readonly squaresAmperes: number;
  readonly ohms: number;
  readonly rSquared: number;
}

/** @internal */
export function lineThrough(volts: Float64Array, amperes: Float64Array): OhmicLine | FitRefusal {
  let [pairs, meanVolts, meanAmperes] = [0, 0, 0];
  for (let k = 0; k < volts.length; k++) {
    if (Number.isNaN(amperes[k]!)) continue;
    pairs++;
    meanVolts += volts[k]!;
    meanAmperes += amperes[k]!;
  }
  if (pairs < 10) return refuse("too-few-pairs", "Fewer than 10 pairs of rows remain.", "A longer log.");
  meanVolts /= pairs;
  meanAmperes /= pairs;
  let [sumII, sumIV, sumVV] = [0, 0, 0];
  for (let k = 0; k < volts.length; k++) {
    if (Number.isNaN(amperes[k]!)) continue;
    const current = amperes[k]! - meanAmperes;
    const voltage = volts[k]! - meanVolts;
    sumII += current * current;
    sumIV += current * voltage;
    sumVV += voltage * voltage;
  }
  if (!(sumII > 1e-18 * pairs * (1 + meanAmperes * meanAmperes)))
    return refuse("no-change-of-current", "The current never changes.", "A log with a changing load.");
  const ohms = sumIV / sumII;
  if (!(ohms > 0))
    return refuse("not-ohmic", "Voltage does not rise with current.", "The sign of the current, or the lag.");
  const rSquared = sumVV > 0 ? Math.min(1, (ohms * sumIV) / sumVV) : 1;
  return { pairs, meanVolts, meanAmperes, squaresAmperes: sumII, ohms, rSquared };
}

/** @internal Uncertainties of a line from its residuals, which may follow each other or grow with the current. */
export function scatterOfLine(
  volts: Float64Array,
  amperes: Float64Array,
  line: OhmicLine,
): { readonly electromotiveVolts: Estimate; readonly resistanceOhms: Estimate } {
  const { pairs, meanVolts, meanAmperes, squaresAmperes, ohms } = line;
  const ofOhms = createBlockSums();
  const ofVolts = createBlockSums();
  for (let k = 0; k < volts.length; k++) {
    if (Number.isNaN(amperes[k]!)) continue;
    const current = amperes[k]! - meanAmperes;
    const residual = volts[k]! - meanVolts - ohms * current;
    const pull = (current / squaresAmperes) * residual;
    ofOhms.push(pull);
    ofVolts.push(residual / pairs - meanAmperes * pull);
  }
  // Two numbers were fitted to the residuals.
  const fitted = Math.sqrt(pairs / (pairs - 2));
  return {
    electromotiveVolts: {
      value: meanVolts - ohms * meanAmperes,
      standardUncertainty: fitted * ofVolts.standardUncertainty(),
    },
    resistanceOhms: { value: ohms, standardUncertainty: fitted * ofOhms.standardUncertainty() },
  };
}
