import { type ClaimFacts, claimEligibility } from "crankworthy/warranty";
import { describe, expect, it } from "vitest";
import { terms } from "./terms-for-tests.js";

const sound: ClaimFacts = {
  condition: "worn",
  action: "retire",
  damage: [],
  rejectionProbability: 0.97,
  requiredProbability: 0.95,
  charged: true,
  repeated: true,
  exclusions: terms.exclusions,
};
const { rejectionProbability: _, ...withoutProbability } = sound;

describe("claimEligibility", () => {
  it.each<[string, Partial<ClaimFacts>, string, string[]]>([
    ["worn", {}, "claimable", ["rejection-certain-enough"]],
    ["unserviceable", { condition: "unserviceable" }, "claimable", ["rejection-certain-enough"]],
    [
      "failed inside",
      { condition: "internally-failed" },
      "claimable",
      ["failed-inside", "rejection-certain-enough"],
    ],
    ["guard band", { rejectionProbability: 0.94 }, "not-yet", ["rejection-not-certain-enough"]],
    [
      "exactly the probability asked for",
      { rejectionProbability: 0.95 },
      "claimable",
      ["rejection-certain-enough"],
    ],
    ["uncharged", { charged: false }, "not-yet", ["recharge-and-test-again"]],
    [
      "one uncharged reading of a failed cell",
      { condition: "internally-failed", charged: false, repeated: false },
      "not-yet",
      ["recharge-and-test-again", "repeat-the-test"],
    ],
    [
      "hazard with inner failure needs no charge",
      { condition: "internally-failed", action: "isolate", charged: false, repeated: false },
      "claimable",
      ["failed-inside", "rejection-certain-enough"],
    ],
    ["hazard alone", { action: "isolate" }, "not-yet", ["hazard-decides"]],
    [
      "merely discharged",
      { condition: "serviceable", action: "charge-then-keep" },
      "not-yet",
      ["recharge-and-test-again"],
    ],
    [
      "not established",
      { condition: "not-established", action: "repeat" },
      "not-yet",
      ["no-trustworthy-measurement"],
    ],
    [
      "discharged, not established",
      { condition: "not-established", action: "charge-then-repeat" },
      "not-yet",
      ["recharge-and-test-again"],
    ],
    ["fit", { condition: "serviceable", action: "keep" }, "excluded", ["no-defect-found"]],
    ["24 V", { action: "stop" }, "not-yet", ["not-this-system"]],
    ["physical damage", { damage: ["physical-damage"] }, "excluded", ["physical-damage"]],
    [
      "all exclusions are named",
      { damage: ["altered-date-code", "freeze-damage"] },
      "excluded",
      ["freeze-damage", "altered-date-code"],
    ],
    [
      "damage the terms do not exclude",
      { damage: ["heat-damage"] },
      "claimable",
      ["rejection-certain-enough"],
    ],
  ])("%s", (_, changes, answer, evidence) => {
    expect(claimEligibility({ ...sound, ...changes })).toEqual({ answer, evidence });
  });

  it("without a probability only an inner failure can be claimed", () => {
    expect(claimEligibility(withoutProbability).evidence).toEqual(["no-trustworthy-measurement"]);
    expect(claimEligibility({ ...withoutProbability, condition: "internally-failed" }).answer).toBe(
      "claimable",
    );
  });

  it("throws for a probability that is none", () => {
    expect(() => claimEligibility({ ...sound, rejectionProbability: Number.NaN })).toThrow(RangeError);
    expect(() => claimEligibility({ ...sound, requiredProbability: 95 })).toThrow(/expected 0..1/);
  });
});
