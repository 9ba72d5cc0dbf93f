import { requireFinite, requireKey } from "../numeric/index.js";
import type { SourceId, Standing } from "../sources/index.js";

/** What was seen while cranking. */
export interface CrankingObservation {
  readonly speed: "normal" | "slow" | "none";
  readonly current: "low" | "usual" | "high" | "not-measured";
  /** Battery voltage with the key in start [V]. */
  readonly volts?: number;
}

/** Where to look. */
export type CrankingCause =
  | "mechanical-drag"
  | "starter-short"
  | "thick-oil"
  | "tight-engine"
  | "cables"
  | "clamps"
  | "ground"
  | "brushes"
  | "control-circuit"
  | "feed-circuit";

/** One line of reasoning on the starting circuit. */
export interface CrankingReason {
  readonly code:
    | "high-current-slow"
    | "low-current-slow-or-none"
    | "battery-holds-no-turning"
    | "battery-holds-slow-turning";
  readonly lookAt: readonly CrankingCause[];
  readonly source: SourceId;
  readonly standing: Standing;
}

/**
 * What speed, current and battery voltage together say about the starting circuit.
 *
 * @param seen speed, current level and, where read, the battery voltage [V]
 * @returns every line that applies; empty where cranking is normal or the signs name no part
 *
 * Source: a textbook page on starter draw; study-guide text; a workshop manual of 2004 (12.5 V rule).
 * @example
 * ```ts
 * import { reasonOnCranking } from "crankworthy/vehicle";
 * reasonOnCranking({ speed: "slow", current: "high" })[0].code; // => "high-current-slow"
 * reasonOnCranking({ speed: "none", current: "low", volts: 12.6 }).map((one) => one.code); // => ["low-current-slow-or-none", "battery-holds-no-turning"]
 * ```
 */
export function reasonOnCranking(seen: CrankingObservation): readonly CrankingReason[] {
  requireKey("speed", seen.speed, { normal: 0, slow: 0, none: 0 });
  requireKey("current", seen.current, { low: 0, usual: 0, high: 0, "not-measured": 0 });
  if (seen.volts !== undefined) requireFinite("volts", seen.volts);
  const reasons: CrankingReason[] = [];
  if (seen.speed === "normal") return reasons;
  const standing = "read";
  if (seen.current === "high" && seen.speed === "slow")
    reasons.push({
      code: "high-current-slow",
      lookAt: ["mechanical-drag", "starter-short", "thick-oil", "tight-engine"],
      source: "starter-textbook",
      standing,
    });
  if (seen.current === "low")
    reasons.push({
      code: "low-current-slow-or-none",
      lookAt: ["cables", "clamps", "ground", "brushes"],
      source: "starter-textbook",
      standing,
    });
  if (seen.volts !== undefined && seen.volts >= 12.5) {
    const none = seen.speed === "none";
    reasons.push({
      code: none ? "battery-holds-no-turning" : "battery-holds-slow-turning",
      lookAt: [none ? "control-circuit" : "feed-circuit"],
      source: "workshop-starting-2004",
      standing,
    });
  }
  return reasons;
}
