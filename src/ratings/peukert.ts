import {
  type Estimate,
  type Refusal,
  rectangularUncertainty,
  refuse,
  requireFinite,
  requireKey,
  requirePositive,
} from "../numeric/index.js";
import type { Provenance } from "../sources/index.js";
import { exponentRows } from "./capacity.data.js";

/** A kind of battery for which exponents are published. */
export type PeukertKind = keyof typeof exponentRows;

/** A published exponent: middle of its range, rectangular uncertainty, and the range. */
export interface PeukertExponent extends Estimate, Provenance {
  readonly lower: number;
  readonly upper: number;
}

/** Highest current, A per Ah of capacity: cranking lies at 4 and more, where the law must not be carried. Our choice. */
const HIGHEST_RATE = 2;
/** Beyond this nothing is known of an exponent of 1 to 1.6. */
const MOST_EXPONENT_UNCERTAINTY = 10;

/**
 * Published exponents of Peukert's law by kind of battery.
 *
 * Scope: discharges of the order of an hour and more at 25 °C. The rows contradict each other on purpose; 1.2-1.6 belongs
 * to deep-cycle batteries.
 *
 * @param kind row of the table
 * @returns exponent (dimensionless) with standard uncertainty (0 where one figure is printed), and its range
 * @example
 * ```ts
 * import { peukertExponent } from "crankworthy/ratings";
 * peukertExponent("agm").upper; // => 1.15
 * ```
 */
export function peukertExponent(kind: PeukertKind): PeukertExponent {
  requireKey("kind", kind, exponentRows);
  const [lower, upper, source, standing] = exponentRows[kind];
  return {
    value: (lower + upper) / 2,
    standardUncertainty: rectangularUncertainty(upper - lower),
    lower,
    upper,
    source,
    standing,
  };
}

/**
 * Discharge time at a constant current by Peukert's law in its rated-hours form.
 *
 * Scope: constant current and temperature. An exponent found from the reserve capacity does not hold for cranking:
 * currents above 2 A per Ah are refused.
 *
 * @param discharge capacity in Ah at its rate in h; exponent (dimensionless, 1-1.6), number or estimate; current in A
 * @returns h; the uncertainty comes from the exponent alone (one source names a model error of about 10 %); or a refusal
 *   `exponent-out-of-range`, `current-too-high`
 * @throws RangeError when capacity, rate or current is not above 0, or the uncertainty is negative or not a number
 * Equation: t = H (C / (H I))^k; u(t) = t |ln(C / (H I))| u(k).
 * Source: Peukert's law, `peukert-note` (read); limit of the current our choice.
 * @example
 * ```ts
 * import { isRefusal } from "crankworthy/numeric";
 * import { peukertHours } from "crankworthy/ratings";
 * const time = peukertHours({ capacityAmpereHours: 100, rateHours: 20, exponent: 1.2, amperes: 10 });
 * !isRefusal(time) && time.value; // => 8.7055
 * ```
 */
export function peukertHours(discharge: {
  readonly capacityAmpereHours: number;
  readonly rateHours: number;
  readonly exponent: number | Estimate;
  readonly amperes: number;
}): Estimate | Refusal<"exponent-out-of-range" | "current-too-high"> {
  const { capacityAmpereHours, rateHours, exponent, amperes } = discharge;
  requirePositive("capacityAmpereHours", capacityAmpereHours);
  requirePositive("rateHours", rateHours);
  requirePositive("amperes", amperes);
  const used = typeof exponent === "number" ? { value: exponent, standardUncertainty: 0 } : exponent;
  const { value: k, standardUncertainty: u } = used;
  requireFinite("exponent.standardUncertainty", u, 0, MOST_EXPONENT_UNCERTAINTY);
  if (!(k >= 1 && k <= 1.6)) {
    return refuse(
      "exponent-out-of-range",
      "Published exponents lie between 1 and 1.6.",
      "Two discharge tests.",
    );
  }
  if (amperes > HIGHEST_RATE * capacityAmpereHours) {
    return refuse("current-too-high", "Peukert's law does not reach cranking currents.", "A cranking test.");
  }
  const ratio = capacityAmpereHours / (rateHours * amperes);
  const value = rateHours * ratio ** k;
  return { value, standardUncertainty: value * Math.abs(Math.log(ratio)) * u };
}

/** A discharge at constant current down to the same end voltage. */
export interface DischargeTest {
  readonly amperes: number;
  readonly hours: number;
}

/**
 * Peukert's exponent from two discharge tests of one battery.
 *
 * @param first current in A and time in h, both > 0
 * @param second the same at another current
 * @returns exponent, dimensionless; or a refusal `same-current`
 * @throws RangeError when a current or time is not above 0
 * Equation: k = ln(t1 / t2) / ln(I2 / I1).
 * @example
 * ```ts
 * import { peukertExponentFromTests } from "crankworthy/ratings";
 * peukertExponentFromTests({ amperes: 5, hours: 20 }, { amperes: 50, hours: 1.2 }); // => 1.2218
 * ```
 */
export function peukertExponentFromTests(
  first: DischargeTest,
  second: DischargeTest,
): number | Refusal<"same-current"> {
  for (const { amperes, hours } of [first, second]) {
    requirePositive("amperes", amperes);
    requirePositive("hours", hours);
  }
  if (first.amperes === second.amperes) {
    return refuse("same-current", "Both tests ran at one current.", "A test at another current.");
  }
  return Math.log(first.hours / second.hours) / Math.log(second.amperes / first.amperes);
}
