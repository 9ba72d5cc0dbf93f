import { type Estimate, type Refusal, refuse, requireFinite, requireKey } from "../numeric/index.js";
import type { Derivation } from "../sources/index.js";
import {
  type JudgementOptions,
  judgeLimit,
  type Limit,
  type LimitJudgement,
  limitOf,
  refuseNegative,
} from "./limit.js";
import { DRAW_LIMITS, type DrawProfileName, type DrawRow } from "./parasitic-draw.data.js";

/** Limits of one profile [A] and the time the vehicle needs to settle [min]. */
export interface DrawLimits {
  readonly expected: Limit;
  /** Above this, search for the consumer; missing where the source prints none. */
  readonly search?: Limit;
  /** 60 min where the source prints none (our choice). */
  readonly settlingMinutes: number;
}

/**
 * The draw limits of a profile.
 *
 * @example
 * ```ts
 * import { drawLimits } from "crankworthy/vehicle";
 * drawLimits("default").expected.value; // => 0.05
 * drawLimits("workshop-2001").settlingMinutes; // => 4
 * ```
 */
export function drawLimits(profile: DrawProfileName = "default"): DrawLimits {
  requireKey("profile", profile, DRAW_LIMITS);
  const [row, settling, search, lower = 0, upper = 0] = DRAW_LIMITS[profile] as DrawRow;
  return {
    expected: limitOf(row, 0.001),
    ...(search ? { search: limitOf([search, lower, upper, row[3], row[4]], 0.001) } : {}),
    settlingMinutes: settling || 60,
  };
}

/** A draw of the parked vehicle. */
export interface DrawReading {
  /** Current out of the battery, in amperes, not milliamperes [A] (0..10). */
  readonly drawAmperes: Estimate;
  /** Since the vehicle was last touched, locked or woken [min]. */
  readonly settledMinutes: number;
  /** Known equipment (alarm, tracker, immobiliser) accounts for more than the expected draw. */
  readonly equipmentExplains?: boolean;
}

/** Outcome for a parasitic draw. */
export type DrawOutcome =
  | "expected"
  | "explained-by-equipment"
  | "needs-explaining"
  | "search-for-consumer"
  | "not-established";

/** A draw against the limits of a profile. */
export interface DrawJudgement {
  readonly outcome: DrawOutcome;
  readonly expected: LimitJudgement;
  readonly search?: LimitJudgement;
}

/**
 * Judges the current a parked vehicle takes from its battery.
 *
 * Scope: 12 V vehicles. Wake-ups after 30 or 70 min can be normal: take the lowest steady value.
 *
 * @param reading draw [A] (0..10) and time since the last action [min]
 * @param profile default: expected ≤ 50 mA (25-50), search above 85 mA (80-120), 60 min (our choice)
 * @returns outcome and the judgement against each limit [A]
 *
 * Refuses `not-settled` for a draw above the expected one read too early (a low draw read early stays low),
 * `not-a-standing-draw` above 10 A (a meter fuse; or milliamperes were given), `negative-reading`.
 *
 * Source: workshop manuals 2001-2023, vocational modules, a public-domain FAQ, by profile.
 * @example
 * ```ts
 * import { judgeDraw } from "crankworthy/vehicle";
 * const draw = { value: 0.3, standardUncertainty: 0.005 };
 * judgeDraw({ drawAmperes: draw, settledMinutes: 65 }).outcome; // => "search-for-consumer"
 * judgeDraw({ drawAmperes: draw, settledMinutes: 10 }).code; // => "not-settled"
 * ```
 */
export function judgeDraw(
  reading: DrawReading,
  profile: DrawProfileName = "default",
  options?: JudgementOptions,
  derivation?: Derivation,
): DrawJudgement | Refusal<"not-settled" | "not-a-standing-draw" | "negative-reading"> {
  const { drawAmperes, settledMinutes, equipmentExplains } = reading;
  const limits = drawLimits(profile);
  const expected = judgeLimit(
    "parasitic draw",
    "A",
    drawAmperes,
    "at-most",
    limits.expected,
    options,
    derivation,
  );
  if (drawAmperes.value < -2 * drawAmperes.standardUncertainty) return refuseNegative("draw");
  if (drawAmperes.value > 10)
    return refuse(
      "not-a-standing-draw",
      "No parked vehicle draws over 10 A; were these milliamperes?",
      "The unit.",
    );
  requireFinite("settledMinutes", settledMinutes, 0);
  if (expected.outcome === "within-limit") return { outcome: "expected", expected };
  if (settledMinutes < limits.settlingMinutes)
    return refuse(
      "not-settled",
      "The modules may still be awake.",
      `A reading after ${limits.settlingMinutes} min.`,
    );
  const search =
    limits.search &&
    judgeLimit("parasitic draw", "A", drawAmperes, "at-most", limits.search, options, derivation);
  let outcome: DrawOutcome = "not-established";
  if (search?.outcome === "beyond-limit") outcome = "search-for-consumer";
  else if (expected.outcome === "beyond-limit" && search?.outcome !== "not-established")
    outcome = equipmentExplains ? "explained-by-equipment" : "needs-explaining";
  return search ? { outcome, expected, search } : { outcome, expected };
}
