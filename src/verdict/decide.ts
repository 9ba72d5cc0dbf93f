import type { Mutable } from "../numeric/index.js";
import type { Evidence } from "./evidence.js";
import type { Action, Condition, Finding } from "./finding.js";
import { type DecisionPolicy, defaultPolicy } from "./policy.js";
import { facts } from "./rule.js";
import { rules } from "./rules/index.js";

/** What the battery is and what to do next, with every reason that was weighed. */
export interface Verdict {
  readonly condition: Condition;
  readonly action: Action;
  /** Code of the rule that decided. */
  readonly decidedBy: string;
  readonly findings: readonly Finding[];
  /** Probability that the ability reaches the serviceable limit, where ability was measured. */
  readonly serviceableProbability?: number;
  /** Probability that the ability lies below the unserviceable limit, where ability was measured. */
  readonly unserviceableProbability?: number;
}

/**
 * Weighs evidence by the rules in their order. The first decisive rule sets condition and action; every rule that
 * fires leaves its findings.
 *
 * @param evidence what was seen and measured
 * @param policy limits and probabilities, by default {@link defaultPolicy}
 * @example
 * ```ts
 * import { decide } from "crankworthy/verdict";
 * const verdict = decide({
 *   damage: [], frozen: "no", electrolyteLow: false, system: "twelve-volt", chargeCompleted: true,
 *   charge: { stateOfCharge: { value: 0.97, standardUncertainty: 0.1 }, bound: "two-sided" },
 *   abilities: [{ from: "cranking-estimate", ratio: { value: 0.5, standardUncertainty: 0.04 } }],
 * });
 * verdict.condition; // => "unserviceable"
 * verdict.action; // => "retire"
 * verdict.decidedBy; // => "ability"
 * ```
 */
export function decide(evidence: Evidence, policy: DecisionPolicy = defaultPolicy): Verdict {
  const shared = facts(evidence, policy);
  const findings: Finding[] = [];
  let condition: Condition = "not-established";
  let action: Action = "repeat";
  let decidedBy = "";
  for (const rule of rules) {
    const outcome = rule.weigh(shared);
    if (!outcome) continue;
    for (const one of outcome.findings) findings.push(one);
    if (outcome.decision && decidedBy === "") {
      ({ condition, action } = outcome.decision);
      decidedBy = rule.code;
    }
  }
  // A fit battery that is short of charge is charged before it is handed back.
  if (action === "keep" && (shared.chargeProbability ?? 1) < 0.5) action = "charge-then-keep";
  // Voltage and gravity that contradict each other, or a completed charge that does not show: charge, and look again.
  const doubtful =
    evidence.charge?.consistent === false ||
    (evidence.chargeCompleted && (shared.chargeProbability ?? 1) < 1 - policy.rejectProbability);
  if (doubtful && (action === "keep" || action === "charge-then-keep")) action = "charge-then-repeat";
  const verdict: Mutable<Verdict> = { condition, action, decidedBy, findings };
  if (shared.reachesServiceable !== undefined) verdict.serviceableProbability = shared.reachesServiceable;
  if (shared.reachesUnserviceable !== undefined)
    verdict.unserviceableProbability = 1 - shared.reachesUnserviceable;
  return verdict;
}
