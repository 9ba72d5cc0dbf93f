import { dayNumber, type PlainDate, plainDate } from "../numeric/index.js";
import type { DecisionPolicy } from "../verdict/index.js";
import { claimEligibility, type DateInterval, settleCheckedClaim } from "../warranty/index.js";
import type { AgeSection, LoadTestSection, WarrantySection } from "./evaluation.js";
import type { BatteryRecord } from "./record.js";
import type { Workbook } from "./workbook.js";

/** The parts of the verdict that a claim rests on. */
export interface ClaimGrounds {
  readonly condition: string;
  readonly action: string;
  readonly serviceableProbability: number | undefined;
  readonly loadTest: LoadTestSection | undefined;
  /** A full charge came before the decisive test. */
  readonly charged: boolean;
  readonly frozen: boolean;
}

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
  if (conditions.damage && conditions.damage.length > 0) damage.push("physical-damage");
  if (conditions.damage?.includes("swollen")) damage.push("heat-damage");
  if (grounds.frozen) damage.push("freeze-damage");
  if (conditions.electrolyteLow) damage.push("low-electrolyte");
  if (conditions.wrongApplication) damage.push("wrong-application");
  if (conditions.dateCodeAltered) damage.push("altered-date-code");
  const reaches = grounds.serviceableProbability ?? grounds.loadTest?.passProbability;
  const readings = measurements.cranking?.amperes;
  const eligibility = claimEligibility({
    condition: grounds.condition,
    action: grounds.action,
    damage,
    ...(reaches !== undefined && { rejectionProbability: 1 - reaches }),
    requiredProbability: policy.rejectProbability,
    charged: grounds.charged,
    repeated:
      (typeof readings === "object" && readings.length > 1) || measurements.loadTest?.repeated === true,
    exclusions: terms.exclusions,
  });
  if (eligibility.answer === "not-yet") return { eligibility };
  const manufactured = manufacturedBetween(age);
  const settlement = settleCheckedClaim(
    {
      terms,
      purchase,
      claimedOn,
      ...(manufactured && { manufactured }),
      eligibility,
      ...(paidInCash !== undefined && { paidInCash }),
    },
    book.derivation,
  );
  return { eligibility, settlement };
}

// Every reading of the code counts: an ambiguous code gives a long interval, and the terms may then not be decidable.
function manufacturedBetween(age: AgeSection | undefined): DateInterval | undefined {
  const readings = age?.dateCode.readings;
  if (!readings || readings.length === 0) return undefined;
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const { from, to } of readings) {
    first = Math.min(first, dayNumber(from));
    last = Math.max(last, dayNumber(to));
  }
  return { from: plainDate(first), to: plainDate(last) };
}
