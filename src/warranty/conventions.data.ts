import type { SourceId, Standing } from "../sources/index.js";

/** One published way of doing something on which sources disagree: name, meaning, source, standing. */
export type Convention = readonly [name: string, meaning: string, source: SourceId, standing: Standing];

/** The policy fields without a default, each with the conventions that exist. */
export const policyConventions = {
  prorationOrigin: [
    ["purchase", "used share = used / whole term", "ca-18-ccr-3210", "read"],
    ["end-of-free-period", "used share starts at 0 when the free period ends", "ritchken-1984", "read"],
  ],
  monthCount: [
    ["completed-clamped", "a month ends on its date, or the month's last day", "clamped-months", "read"],
    ["completed-day-of-month", "a month ends only on its date", "day-of-month-months", "read"],
    [
      "started",
      "a begun month counts; lastCoveredDay says when one begins",
      "warranty-practice",
      "common-practice",
    ],
    ["calendar", "difference of calendar months", "warranty-practice", "common-practice"],
    ["days", "days used / days of term", "mean-month", "computed"],
  ],
  lastCoveredDay: [
    ["anniversary", "same date number", "eec-1182-71", "read"],
    ["day-before", "the day before it", "uk-si-2018-1082", "read"],
  ],
  priceBasis: [
    ["paid", "price paid", "us-88-stat-2183", "read"],
    ["list-at-purchase", "list price then", "warranty-practice", "common-practice"],
    ["list-today", "list price now", "warranty-practice", "common-practice"],
  ],
  rounding: [
    ["half-up", "ties away from zero", "icu-rounding", "read"],
    ["half-even", "ties to the even digit", "icu-rounding", "read"],
  ],
  replacementTerm: [
    ["remaining", "the old term goes on", "warranty-practice", "common-practice"],
    ["new", "a new term starts", "warranty-practice", "common-practice"],
  ],
  "core.depositInExchange": [
    ["waived", "the failed battery is the core", "ri-23-60-3", "read"],
    ["due", "deposit charged, refunded for a core", "ca-hs-25215-2", "read"],
  ],
  "tax.base": [
    ["charge", "what the customer pays", "va-ruling-97-475", "read"],
    ["charge-plus-retained-value", "plus the value of the old battery", "al-810-6-1-187", "read"],
  ],
} as const satisfies Record<string, readonly Convention[]>;
