import type { PlainDate } from "../numeric/index.js";
import type { SourceId, Standing } from "../sources/index.js";
import type { CoverageReason, ShelfAge } from "./coverage.js";
import type { EligibilityEvidence } from "./eligibility.js";

/** Why a settlement is what it is; stable codes, worded in the message catalogue. */
export type SettlementReason =
  | CoverageReason
  | EligibilityEvidence
  | "within-free-period"
  | "within-prorated-period"
  | "term-ended"
  | "eligibility-not-stated"
  | "excluded"
  | "not-yet-claimable"
  | "basis-price-missing"
  | "retained-value-missing"
  | "cap-applied"
  | "rebate-exceeds-replacement-price"
  | "core-not-returned"
  | "core-not-known"
  | "statutory-floor-may-apply";

/** Where an amount comes from. */
export interface Explanation {
  /** Stable code, worded in the message catalogue. */
  readonly code: string;
  readonly parameters: Readonly<Record<string, string | number>>;
  /** The calculation in plain text. */
  readonly formula?: string;
  readonly source: SourceId;
  readonly standing: Standing;
}

/** One line of the ledger. `charge`, `core`, `tax` and `cash-rounding` add up to `total`. */
export interface SettlementLine {
  readonly kind: "basis" | "rebate" | "charge" | "core" | "tax" | "cash-rounding" | "total";
  /** Decimal string with the currency's digits; negative when in the customer's favour. */
  readonly amount: string;
  readonly explanation: Explanation;
}

/** Used part of the term, in the unit the terms count in. */
export interface ElapsedTerm {
  readonly used: number;
  readonly whole: number;
  readonly unit: "months" | "days";
}

/** What a claim comes to. */
export interface Settlement {
  readonly outcome: "free-replacement" | "prorated" | "not-covered" | "cannot-tell";
  readonly currency: string;
  readonly startedOn?: PlainDate;
  readonly lastCoveredDay?: PlainDate;
  /** Months under the convention of the terms; not whole under `days`. */
  readonly elapsedMonths?: number;
  readonly elapsed?: ElapsedTerm;
  readonly shelfAge?: ShelfAge;
  readonly lines: readonly SettlementLine[];
  /** Credit towards a replacement. */
  readonly rebate?: string;
  /** Price of the replacement less the rebate. */
  readonly charge?: string;
  /** What the customer pays, core and tax included; absent when nothing is settled. */
  readonly total?: string;
  /** Warranty on the replacement. */
  readonly replacementCover?: { readonly startsOn: PlainDate; readonly lastCoveredDay: PlainDate };
  readonly reasons: readonly SettlementReason[];
  /**
   * With `cannot-tell`: least and most favourable to the customer of what the facts leave open. With another outcome:
   * the readings of the start date that lead to it; dates and months then stand only there.
   */
  readonly alternatives?: { readonly lower: Settlement; readonly upper: Settlement };
}
