import type { PlainDate } from "../numeric/index.js";

/** Where proration begins. `purchase` drops at the end of the free period, `end-of-free-period` does not. */
export type ProrationOrigin = "purchase" | "end-of-free-period";

/** How used months are counted; {@link policyConventions} says what each one means. */
export type MonthCount = "completed-clamped" | "completed-day-of-month" | "started" | "calendar" | "days";

/** Whether a period of months still covers the anniversary of its first day. */
export type LastCoveredDay = "anniversary" | "day-before";

/** Which price is prorated. */
export type PriceBasis = "paid" | "list-at-purchase" | "list-today";

/** Rule for ties; `half-up` goes away from zero for negative amounts too. */
export type MoneyRounding = "half-up" | "half-even";

/** Damage and circumstances that terms can exclude. */
export type Exclusion =
  | "physical-damage"
  | "heat-damage"
  | "freeze-damage"
  | "low-electrolyte"
  | "wrong-application"
  | "altered-date-code";

/** Days from `from` to `to`, both included. */
export interface DateInterval {
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/** One row of a step schedule: from this counted month on, this share of the basis price is given back. */
export interface RebateStep {
  readonly fromMonth: number;
  /** Percent of the basis price, decimal string 0..100. */
  readonly rebatePercent: string;
}

/** How long the warranty runs. */
export interface TermLengths {
  /** Whole months of replacement at no charge, ≥ 0. */
  readonly freeMonths: number;
  /** Free period stated in days instead; `freeMonths` must then be 0. */
  readonly freeDays?: number;
  /** Whole months of the complete term, free period included; equal to `freeMonths` when nothing is prorated. */
  readonly totalMonths: number;
  /** Replaces linear proration by a table. */
  readonly stepSchedule?: readonly RebateStep[];
}

/** Terms for one use class: other lengths, or no cover at all. */
export type UseClassTerms = TermLengths | { readonly excluded: true };

/** Deposit for the old battery: a ledger line of its own, never part of the prorated price. */
export interface CorePolicy {
  readonly depositAmount?: string;
  /** `waived`: the failed battery is the core. `due`: deposit charged, refunded when a core is handed in. */
  readonly depositInExchange: "waived" | "due";
}

/** Sales tax on what the customer pays. The rate comes from the caller; no rates are kept here. */
export interface TaxPolicy {
  /** Percent, decimal string ≥ 0. */
  readonly ratePercent: string;
  readonly base: "charge" | "charge-plus-retained-value";
  /** Whether a deposit charged for the core is taxed with the rest. */
  readonly coreTaxed: boolean;
  /** Whether the base is taxed when the charge is zero; only with `charge-plus-retained-value` is anything left to tax. */
  readonly freeReplacementTaxed: boolean;
}

/**
 * A period in which the law forbids a charge, whatever the commercial terms say. Damage that the terms exclude does not end
 * it: whether the goods conformed is for the law to decide, so such a claim within the period is answered `cannot-tell`.
 */
export interface StatutoryFloor {
  readonly months: number;
  readonly scope: "anyone" | "consumer";
  /** The law it comes from, shown in the explanation. */
  readonly citation?: string;
}

/**
 * Warranty terms of one seller or maker. The required fields are those on which published practice contradicts
 * itself; {@link checkTerms} names the existing conventions when one is missing.
 */
export interface WarrantyTerms extends TermLengths {
  /** ISO 4217 code, for display and explanation. */
  readonly currency: string;
  /** Digits after the decimal point of the smallest unit, 0..4. */
  readonly minorUnitDigits: number;
  readonly prorationOrigin: ProrationOrigin;
  readonly monthCount: MonthCount;
  readonly lastCoveredDay: LastCoveredDay;
  readonly priceBasis: PriceBasis;
  readonly rounding: MoneyRounding;
  /** Smallest cash amount (`"0.05"`); applied once, to the total, when the claim is paid in cash. */
  readonly cashIncrement?: string;
  readonly replacementTerm: "remaining" | "new";
  /** What is not covered; empty when nothing is excluded. */
  readonly exclusions: readonly Exclusion[];
  readonly core: CorePolicy;
  readonly tax?: TaxPolicy;
  /** When a receipt exists; `purchase` unless stated, as in 16 CFR 701.3(a)(4). */
  readonly termStart?: "purchase" | "installation";
  readonly startWithoutReceipt?: { readonly kind: "manufacture-plus-months"; readonly months: number };
  /** Longest time from manufacture to sale, days. */
  readonly shelfAgeLimitDays?: number;
  /** Other terms by use class (`private`, `commercial`, …); classes not listed keep the terms above. */
  readonly useClasses?: Readonly<Record<string, UseClassTerms>>;
  readonly originalBuyerOnly?: boolean;
  readonly maxClaims?: number;
  /** Largest rebate in the prorated period. */
  readonly cap?: string;
  readonly statutoryFloor?: StatutoryFloor;
}

/**
 * What is known of the sale. Money is a decimal string without core deposit and without tax. What is left out is
 * unknown, not zero and not false.
 */
export interface Purchase {
  /** A receipt or other accepted proof of `soldOn`. */
  readonly receipt: boolean;
  readonly soldOn?: PlainDate;
  readonly installedOn?: PlainDate;
  readonly pricePaid?: string;
  readonly listPriceAtPurchase?: string;
  readonly listPriceToday?: string;
  /** Price of the replacement the customer takes; the basis price when left out. A free replacement is of like kind: not asked there. */
  readonly replacementPrice?: string;
  /** `false`: neither the failed battery nor another core is handed in. */
  readonly coreReturned?: boolean;
  /** Market value of the old battery the seller keeps; only one tax rule asks for it. */
  readonly retainedValue?: string;
  readonly useClass?: string;
  readonly claimsSoFar?: number;
  readonly originalBuyer?: boolean;
  readonly buyer?: "consumer" | "business";
}
