import { type FindingLimit, finding } from "../finding.js";
import type { Rule } from "../rule.js";

/** The adjustable-load test: a first failure leads to charging and one repeat, only the second condemns. */
export const loadTest: Rule = {
  code: "load-test",
  stage: "ability",
  source: "workshop-manual-load-test",
  standing: "read",
  weigh: ({
    evidence,
    policy,
    loadTest: outcome,
    reachesServiceable,
    reachesUnserviceable,
    chargeSufficient,
    doubtedInVehicle,
  }) => {
    const test = evidence.loadTest;
    if (!test) return undefined;
    if (outcome === "none")
      return {
        findings: [finding("load-test-not-valid", "warning", { reasons: test.invalidReasons.join(", ") })],
      };
    const limit: FindingLimit = {
      value: test.limitVolts,
      unit: "V",
      source: "tm-5-4210-table-5",
      standing: "read",
    };
    const shown = { marginVolts: test.marginVolts.value, probability: test.passProbability };
    if (outcome === "passed")
      // The estimate, where it can be judged, measures ability in the label's own terms and decides after this rule.
      return reachesServiceable === undefined || !chargeSufficient
        ? {
            findings: [finding("load-test-passed", "note", shown, limit)],
            decision: { condition: "serviceable", action: "keep" },
          }
        : { findings: [finding("load-test-passed", "note", shown, limit)] };
    if (outcome === "undecided")
      return reachesServiceable === undefined
        ? {
            findings: [finding("load-test-undecided", "warning", shown, limit)],
            decision: { condition: "not-established", action: "repeat" },
          }
        : { findings: [finding("load-test-undecided", "warning", shown, limit)] };
    // A failure that a second, independent reading confirms needs no repeat: the ability rule decides.
    const confirmed =
      chargeSufficient &&
      !doubtedInVehicle &&
      reachesUnserviceable !== undefined &&
      1 - reachesUnserviceable >= policy.rejectProbability;
    if (confirmed && !test.repeated)
      return { findings: [finding("load-test-failed", "warning", shown, limit)] };
    return test.repeated
      ? {
          findings: [finding("load-test-failed-again", "defect", shown, limit)],
          decision: { condition: "unserviceable", action: "retire" },
        }
      : {
          findings: [finding("load-test-failed", "warning", shown, limit)],
          decision: { condition: "not-established", action: "charge-then-repeat" },
        };
  },
};
