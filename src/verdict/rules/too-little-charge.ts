import { type Finding, type FindingLimit, finding } from "../finding.js";
import type { Facts, Rule, RuleOutcome } from "../rule.js";

/** Not enough charge to hold a low ability against the battery. A good ability shown at low charge still counts. */
export const tooLittleCharge: Rule = {
  code: "too-little-charge",
  stage: "charge",
  source: "charge-before-load",
  standing: "read",
  weigh: (facts) => {
    // A cell that is missing after a full charge explains the voltage: nothing is left to charge.
    if (facts.evidence.missingCell && facts.evidence.chargeCompleted) return undefined;
    const findings = chargeFindings(facts);
    const { policy, evidence, chargeProbability, reachesServiceable } = facts;
    const shownAble = facts.loadTest === "passed" || (reachesServiceable ?? 0) >= policy.acceptProbability;
    const judgable =
      evidence.abilities.length > 0 || facts.loadTest !== "none" || evidence.charge !== undefined;
    let decision: RuleOutcome["decision"];
    if (judgable && !facts.chargeSufficient && !shownAble) {
      if (reachesServiceable !== undefined)
        findings.push(finding("ability-not-judged", "warning", { probability: reachesServiceable }));
      // An upper bound that is high enough is settled by resting or a short load, not by charging.
      const restSettlesIt = evidence.charge?.bound === "upper" && (chargeProbability ?? 0) >= 0.5;
      decision = { condition: "not-established", action: restSettlesIt ? "repeat" : "charge-then-repeat" };
    }
    if (decision) return { findings, decision };
    return findings.length > 0 ? { findings } : undefined;
  },
};

function chargeFindings({
  evidence,
  policy,
  chargeProbability,
  chargeSufficient,
  untestable,
}: Facts): Finding[] {
  const { charge } = evidence;
  if (!charge || chargeProbability === undefined)
    // A voltage that tells of ice or of another system was measured, it only does not tell the charge.
    return untestable ? [] : [finding("missing-charge-measurement", "warning")];
  const limit: FindingLimit = {
    value: policy.sufficientCharge,
    unit: "1",
    source: "charge-before-load",
    standing: "read",
  };
  const shown = { stateOfCharge: charge.stateOfCharge.value, probability: chargeProbability };
  const findings: Finding[] = [];
  if (chargeProbability < 0.5) findings.push(finding("charge-low", "note", shown, limit));
  // An upper bound that is high enough has its own finding: surface charge.
  else if (!chargeSufficient && charge.bound === "two-sided")
    findings.push(finding("charge-not-established", "note", shown, limit));
  if (evidence.chargeCompleted && chargeProbability < 1 - policy.rejectProbability)
    findings.push(finding("charge-history-contradicted", "warning", shown, limit));
  return findings;
}
