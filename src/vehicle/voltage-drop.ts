import {
  divide,
  type Estimate,
  type Refusal,
  refuse,
  requireEstimate,
  requireKey,
} from "../numeric/index.js";
import type { Derivation } from "../sources/index.js";
import { type JudgementOptions, judgeLimit, type Limit, type LimitJudgement, limitOf } from "./limit.js";
import { DROP_AMPERES, DROP_LIMITS, type DropLimitName } from "./voltage-drop.data.js";

/** A voltage drop read across a path that carries current. */
export interface VoltageDrop {
  /** Drop in the direction of the current [V], read from post or stud, not from the clamp. */
  readonly dropVolts: Estimate;
  /** Current through the path at that moment [A], > 0. */
  readonly amperes?: Estimate;
}

/** A drop against its limit; the judgement is in V, or in mΩ where the limit holds at a stated current. */
export interface DropJudgement extends LimitJudgement {
  readonly unit: "V" | "mΩ";
  /** Resistance of the path [mΩ], where the current is known. */
  readonly milliohms?: Estimate;
}

/**
 * The published limit of a path.
 *
 * @param name path, see {@link DropLimitName}
 * @returns the limit [V], and the current it holds at [A] where the source states one
 * @example
 * ```ts
 * import { dropLimit } from "crankworthy/vehicle";
 * dropLimit("any-branch-per-ampere").atAmperes; // => 100
 * dropLimit("positive-total").lower; // => 0.4
 * ```
 */
export function dropLimit(name: DropLimitName): Limit & { readonly atAmperes?: number } {
  requireKey("limit", name, DROP_LIMITS);
  const atAmperes = DROP_AMPERES[name];
  const limit = limitOf(DROP_LIMITS[name]);
  return atAmperes ? { ...limit, atAmperes } : limit;
}

/**
 * The limit of a path made of several parts: the sum of the limits of its parts, as TM 5-3820-256-24-4 adds them.
 *
 * @param parts names of limits without a stated current
 * @returns the sum [V], or a refusal for a limit that only holds at a stated current
 * @example
 * ```ts
 * import { sumOfDropLimits } from "crankworthy/vehicle";
 * sumOfDropLimits(["cable-3-to-6-ft", "solenoid", "mechanical-switch"]).value; // => 0.5
 * ```
 */
export function sumOfDropLimits(parts: readonly DropLimitName[]): Limit | Refusal<"limit-needs-current"> {
  let [value, lower, upper] = [0, 0, 0];
  for (const part of parts) {
    const limit = dropLimit(part);
    if (limit.atAmperes) return refuse("limit-needs-current", `${part} needs a current.`, "Limits in volts.");
    value += limit.value;
    lower += limit.lower;
    upper += limit.upper;
  }
  return { value, lower, upper, source: "tm-5-3820", standing: "computed" };
}

/**
 * Judges a voltage drop of the starting or charging circuit.
 *
 * Scope: 12 V systems, current flowing. A limit that holds at a stated current is compared as a resistance. `connection`
 * (0.0 V in print) is taken as "below twice the standard uncertainty of the reading" (our choice).
 *
 * @param drop drop [V] and, where known, current [A] (> 0)
 * @param limit name of a published limit, or a limit of your own [V]
 * @returns outcome, margin [V or mΩ], probability, resistance [mΩ]
 *
 * Refuses `current-required` where the limit holds at a stated current and none was given, `no-current` for a current
 * that is not above its own uncertainty, `leads-exchanged` for a clearly negative drop.
 *
 * Equation: R = 1000·ΔV / I. Source: TM 5-3820-256-24-4 pp. 449-450, TM 10-3930-671-24 p. 556, workshop manuals.
 * @example
 * ```ts
 * import { judgeVoltageDrop } from "crankworthy/vehicle";
 * const drop = { dropVolts: { value: 0.5, standardUncertainty: 0.01 }, amperes: { value: 150, standardUncertainty: 5 } };
 * const judged = judgeVoltageDrop(drop, "any-branch-per-ampere");
 * judged.outcome; // => "beyond-limit"
 * judged.milliohms.value; // => 3.33
 * judgeVoltageDrop({ dropVolts: drop.dropVolts }, "any-branch-per-ampere").code; // => "current-required"
 * ```
 */
export function judgeVoltageDrop(
  drop: VoltageDrop,
  limit: DropLimitName | Limit,
  options?: JudgementOptions,
  derivation?: Derivation,
): DropJudgement | Refusal<"current-required" | "no-current" | "leads-exchanged"> {
  const { dropVolts, amperes } = drop;
  requireEstimate("dropVolts", dropVolts);
  const { value: volts, standardUncertainty: u } = dropVolts;
  if (volts < -2 * u || (volts < 0 && u === 0))
    return refuse("leads-exchanged", "The drop is negative.", "A reading with the leads exchanged.");
  let milliohms: Estimate | undefined;
  if (amperes) {
    requireEstimate("amperes", amperes);
    if (amperes.value <= 2 * amperes.standardUncertainty)
      return refuse("no-current", "No current flows.", "The path under load.");
    const ohms = divide(dropVolts, amperes);
    milliohms = { value: 1000 * ohms.value, standardUncertainty: 1000 * ohms.standardUncertainty };
  }
  let used: Limit & { readonly atAmperes?: number } = typeof limit === "string" ? dropLimit(limit) : limit;
  let unit: DropJudgement["unit"] = "V";
  const { value, lower, upper, source, standing, atAmperes } = used;
  if (atAmperes) {
    if (!milliohms) return refuse("current-required", `The limit holds at ${atAmperes} A.`, "The current.");
    used = limitOf([value, lower, upper, source, standing], 1000 / atAmperes);
    unit = "mΩ";
  } else if (limit === "connection") used = limitOf([2 * u, 2 * u, 2 * u, source, "our-choice"]);
  const measured = atAmperes && milliohms ? milliohms : dropVolts;
  const judged = judgeLimit("voltage drop", unit, measured, "at-most", used, options, derivation);
  // Spelled out: spreading costs several times the judgement itself.
  const { outcome, limit: applied, margin, probabilityWithin, sourcesAgree } = judged;
  const result = { outcome, measured, limit: applied, margin, probabilityWithin, sourcesAgree, unit };
  return milliohms ? { ...result, milliohms } : result;
}
