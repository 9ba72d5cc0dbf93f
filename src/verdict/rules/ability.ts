import { type FindingLimit, finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** Ability against the rating, with two limits and two guard bands. */
export const ability: Rule = {
  code: "ability",
  stage: "ability",
  source: "trade-reject-limits",
  standing: "our-choice",
  weigh: (facts) => {
    const { evidence, policy, ability: measured, reachesServiceable, reachesUnserviceable } = facts;
    if (!measured || reachesServiceable === undefined || reachesUnserviceable === undefined) return undefined;
    const limitOf = (value: number): FindingLimit => ({
      value,
      unit: "1",
      source: "trade-reject-limits",
      standing: "our-choice",
    });
    const shown = { ratio: measured.ratio.value, probability: reachesServiceable };
    if (reachesServiceable >= policy.acceptProbability)
      return {
        findings: [finding("ability-above", "note", shown, limitOf(policy.serviceableFraction))],
        decision: { condition: "serviceable", action: "keep" },
      };
    // Short of charge nothing is held against the battery; the charge rule has said so.
    if (!facts.chargeSufficient) return undefined;
    // Nor in the vehicle with a wiring fault or a consumer on; that rule has said so too.
    if (facts.doubtedInVehicle) return undefined;
    if (1 - reachesUnserviceable >= policy.rejectProbability)
      return {
        findings: [
          finding(
            "ability-below",
            "defect",
            { ratio: measured.ratio.value, probability: 1 - reachesUnserviceable },
            limitOf(policy.unserviceableFraction),
          ),
        ],
        decision: { condition: "unserviceable", action: "retire" },
      };
    if (1 - reachesServiceable >= policy.rejectProbability) {
      // Worn is not useless: what the engine needs decides, where that is known.
      const fails = evidence.startProbability !== undefined && evidence.startProbability < 0.5;
      // More likely below the lower limit than above it, and not surely so: a better reading decides, not a hand-back.
      const nearlyOut = reachesUnserviceable < 0.5;
      return {
        findings: [
          finding(
            "ability-worn",
            "defect",
            { ratio: measured.ratio.value, probability: 1 - reachesServiceable },
            limitOf(policy.serviceableFraction),
          ),
        ],
        decision: { condition: "worn", action: fails ? "retire" : nearlyOut ? "repeat" : "keep" },
      };
    }
    const between = finding("ability-between", "warning", shown, limitOf(policy.serviceableFraction));
    return facts.loadTest === "passed"
      ? { findings: [between], decision: { condition: "serviceable", action: "keep" } }
      : { findings: [between], decision: { condition: "not-established", action: "repeat" } };
  },
};
