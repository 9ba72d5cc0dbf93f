import type { Mutable, PlainDate } from "../numeric/index.js";
import type { DamageSign, DecisionPolicy } from "../verdict/index.js";
import {
  type Claim,
  type ClaimFacts,
  claimEligibility,
  type DateInterval,
  settleCheckedClaim,
} from "../warranty/index.js";
import type { AgeSection, WarrantySection } from "./evaluation.js";
import type { BatteryRecord } from "./record.js";
import type { Workbook } from "./workbook.js";

/** The parts of the verdict that a claim rests on. */
export interface ClaimGrounds {
  readonly condition: string;
  readonly action: string;
  /** Probability that the battery reaches its limit, by the reading that decided. */
  readonly reachesLimit: number | undefined;
  readonly chargeSufficient: boolean;
  /** A cell was found to have failed after a completed charge: the charge is the repeat as well. */
  readonly failedAfterCharge: boolean;
  readonly frozen: boolean;
}

const INFLICTED: ReadonlySet<DamageSign> = /* @__PURE__ */ new Set<DamageSign>([
  "cracked",
  "leaking",
  "burnt-post",
]);

/** What the warranty pays and why. */
export function settle(
  record: BatteryRecord,
  claimedOn: PlainDate,
  grounds: ClaimGrounds,
  age: AgeSection | undefined,
  policy: DecisionPolicy,
  book: Workbook,
): WarrantySection {
  const { terms, purchase, paidInCash } = record.warranty!;
  const { conditions = {}, measurements } = record;
  const damage: string[] = [];
  const seen = conditions.damage ?? [];
  // A loose post and a smell of sulfur come from inside: signs of failure, not of ill treatment.
  if (seen.some((sign) => INFLICTED.has(sign))) damage.push("physical-damage");
  if (seen.includes("swollen")) damage.push("heat-damage");
  if (grounds.frozen) damage.push("freeze-damage");
  if (conditions.electrolyteLow) damage.push("low-electrolyte");
  if (conditions.wrongApplication) damage.push("wrong-application");
  if (conditions.dateCodeAltered) damage.push("altered-date-code");
  const readings = measurements.cranking?.amperes;
  const facts: Mutable<ClaimFacts> = {
    condition: grounds.condition,
    action: grounds.action,
    damage,
    requiredProbability: policy.rejectProbability,
    charged: grounds.chargeSufficient || grounds.failedAfterCharge,
    repeated:
      grounds.failedAfterCharge ||
      (typeof readings === "object" && readings.length > 1) ||
      measurements.loadTest?.repeated === true,
    exclusions: terms.exclusions,
  };
  // A failed cell is shown by the cell, not by how far the ability has fallen.
  if (grounds.reachesLimit !== undefined && !grounds.failedAfterCharge)
    facts.rejectionProbability = 1 - grounds.reachesLimit;
  const eligibility = claimEligibility(facts);
  if (eligibility.answer === "not-yet") return { eligibility };
  const claim: Mutable<Claim> = { terms, purchase, claimedOn, eligibility };
  const manufactured = manufacturedBetween(age);
  if (manufactured) claim.manufactured = manufactured;
  if (paidInCash !== undefined) claim.paidInCash = paidInCash;
  return { eligibility, settlement: settleCheckedClaim(claim, book.derivation) };
}

// Every reading of the code counts: an ambiguous code gives a long interval, and the terms may then not be decidable.
function manufacturedBetween(age: AgeSection | undefined): DateInterval | undefined {
  const readings = age?.dateCode.readings;
  if (!readings || readings.length === 0) return undefined;
  // Plain dates compare as text.
  let { from, to } = readings[0]!;
  for (const one of readings) {
    if (one.from < from) from = one.from;
    if (one.to > to) to = one.to;
  }
  return { from, to };
}
