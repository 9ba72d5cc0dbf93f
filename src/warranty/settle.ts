import type { Mutable, PlainDate } from "../numeric/index.js";
import type { Derivation } from "../sources/index.js";
import { checkTerms } from "./check-terms.js";
import {
  type Coverage,
  type CoverageCase,
  type CoverageQuestion,
  coverageOn,
  statutoryFloorMayApply,
} from "./coverage.js";
import type { Eligibility } from "./eligibility.js";
import { ledgerOf } from "./ledger.js";
import { addMonthsFrom, countDays, countMonths, lastCoveredDay } from "./months.js";
import type { Settlement, SettlementReason } from "./settlement.js";
import type { DateInterval, Purchase, WarrantyTerms } from "./terms.js";

/** Everything a settlement needs. */
export interface Claim {
  readonly terms: WarrantyTerms;
  readonly purchase: Purchase;
  readonly claimedOn: PlainDate;
  /** Reading of the date code, both ends included. */
  readonly manufactured?: DateInterval;
  /** Result of {@link claimEligibility}; left out, the battery is taken to qualify, and the reasons say so. */
  readonly eligibility?: Eligibility;
  /** The customer pays in cash: the total is rounded to `terms.cashIncrement`. */
  readonly paidInCash?: boolean;
}

/**
 * Works out what a warranty claim comes to: the ledger, what it rests on, and why.
 *
 * Scope: one battery, one claim, terms given by the caller. The core deposit and the tax are lines of their own,
 * never prorated. Where the facts leave more than one result open, the outcome is `cannot-tell` and both extreme
 * settlements are given; so it is where the terms exclude damage within a statutory period, which they cannot override.
 *
 * Equations: rebate = P (W − t) / W from purchase, P (W − t) / (W − w) from the end of the free period, worked out
 * exactly and rounded once; charge = price of the replacement − rebate. P basis price, W whole term, w end of the free
 * period, t used, in months or days.
 *
 * Sources: 18 CCR 3210 (from purchase); Ritchken 1984, equation 2 (from the end of the free period).
 *
 * @param claim terms, purchase, dates; money as decimal strings
 * @param derivation collects the steps of every settled reading when given
 * @returns the settlement; an unknown fact yields `cannot-tell` with its reason code
 * @throws RangeError when the terms have an issue ({@link checkTerms}), a text is no date or no amount
 * @example
 * ```ts
 * import { settleClaim } from "crankworthy/warranty";
 * const terms = {
 *   currency: "USD", minorUnitDigits: 2, freeMonths: 0, totalMonths: 60, prorationOrigin: "purchase",
 *   monthCount: "completed-clamped", lastCoveredDay: "anniversary", priceBasis: "paid", rounding: "half-up",
 *   replacementTerm: "remaining", exclusions: [], core: { depositInExchange: "waived" },
 * } as const;
 * const purchase = { receipt: true, soldOn: "2022-06-10", pricePaid: "189.99" };
 * const settlement = settleClaim({ terms, purchase, claimedOn: "2025-01-20" });
 * settlement.elapsedMonths; // => 31
 * [settlement.outcome, settlement.rebate, settlement.total]; // => ["prorated", "91.83", "98.16"]
 * ```
 */
export function settleClaim(claim: Claim, derivation?: Derivation): Settlement {
  const issues = checkTerms(claim.terms);
  if (issues.length > 0) throw new RangeError(`terms: ${issues.map((issue) => issue.message).join("; ")}`);
  return settleCheckedClaim(claim, derivation);
}

/** {@link settleClaim} for terms that {@link checkTerms} has found in order: it does not look again. */
export function settleCheckedClaim(claim: Claim, derivation?: Derivation): Settlement {
  const { terms, purchase, claimedOn, manufactured, eligibility } = claim;
  const question: Mutable<CoverageQuestion> = { terms, purchase, claimedOn };
  if (manufactured) question.manufactured = manufactured;
  const coverage = coverageOn(question);
  const result = (
    outcome: Settlement["outcome"],
    reasons: readonly SettlementReason[],
    lines: Settlement["lines"] = [],
  ): Mutable<Settlement> => {
    const settlement: Mutable<Settlement> = { outcome, currency: terms.currency, lines, reasons };
    if (coverage.shelfAge) settlement.shelfAge = coverage.shelfAge;
    return settlement;
  };
  const reasons: SettlementReason[] = [...coverage.reasons];
  if (eligibility?.answer === "excluded") {
    const excluded = ["excluded", ...eligibility.evidence] as const;
    const denial = result("not-covered", excluded);
    // Terms can exclude damage from what they promise, not from what the law promises. Without a defect there is no claim.
    const byTerms = !eligibility.evidence.includes("no-defect-found");
    if (!byTerms || !statutoryFloorMayApply(question, coverage)) return denial;
    const buyerOpen = terms.statutoryFloor?.scope === "consumer" && purchase.buyer === undefined;
    const others: SettlementReason[] = reasons.filter(
      (one) => one !== "statutory-floor" && one !== "buyer-kind-not-known",
    );
    if (buyerOpen) others.push("buyer-kind-not-known");
    if (!reasons.includes("statutory-floor")) reasons.push("statutory-floor");
    const open = result("cannot-tell", ["statutory-floor-may-apply", ...excluded, ...others]);
    const lawful = floorReadings(claim, coverage)[0];
    if (lawful) open.alternatives = { lower: denial, upper: settleReading(lawful) };
    return open;
  }
  if (!eligibility) reasons.push("eligibility-not-stated");
  if (eligibility?.answer === "not-yet") reasons.push("not-yet-claimable", ...eligibility.evidence);

  const settled = openReadings(claim, coverage).map(settleReading);
  const first = settled[0];
  // Without a start, a condition that denies cover still decides, as long as no statutory period could override it.
  if (!first)
    return result(
      coverage.denied === "yes" && !terms.statutoryFloor ? "not-covered" : "cannot-tell",
      reasons,
    );
  if (settled.length === 1) return first;
  const lower = settled.reduce((a, b) => (favour(b) < favour(a) ? b : a));
  const upper = settled.reduce((a, b) => (favour(b) > favour(a) ? b : a));
  if (!settled.every((one) => sameResult(one, first))) {
    const open = result("cannot-tell", reasons);
    open.alternatives = { lower, upper };
    return open;
  }
  const dated = settled.filter((one) => one.startedOn !== undefined);
  if (
    dated.every((one) => one.startedOn === first.startedOn && one.lastCoveredDay === first.lastCoveredDay)
  ) {
    return first;
  }
  // One result, several starts: the dates stay in the alternatives, so that no day looks better known than it is.
  const { rebate, charge, total } = first;
  const same = result(first.outcome, first.reasons, first.lines);
  if (rebate) same.rebate = rebate;
  if (charge) same.charge = charge;
  if (total) same.total = total;
  same.alternatives = { lower: first, upper: dated.at(-1)! };
  return same;

  function settleReading(reading: Reading): Settlement {
    if (!("startedOn" in reading)) return result("not-covered", reasons);
    const { startedOn, term, phase } = reading;
    const dated = (
      outcome: Settlement["outcome"],
      why: readonly SettlementReason[],
      lines?: Settlement["lines"],
    ): Mutable<Settlement> => {
      const settlement = result(outcome, why, lines);
      settlement.startedOn = startedOn;
      settlement.lastCoveredDay = reading.lastCoveredDay;
      settlement.elapsedMonths = elapsedMonths;
      settlement.elapsed = elapsed;
      return settlement;
    };
    const inDays = terms.monthCount === "days";
    const elapsedMonths = countMonths(startedOn, claimedOn, terms.monthCount, terms.lastCoveredDay);
    const whole = inDays
      ? countDays(startedOn, addMonthsFrom(startedOn, term.totalMonths))
      : term.totalMonths;
    const used = inDays ? countDays(startedOn, claimedOn) : elapsedMonths;
    const elapsed = { used, whole, unit: inDays ? "days" : "months" } as const;
    derivation?.push({
      quantity: "elapsed months",
      formula: `months from startedOn to claimedOn, ${terms.monthCount}`,
      inputs: { startedOn, claimedOn, monthCount: terms.monthCount },
      result: elapsedMonths,
      unit: "month",
      source: "warranty-choice",
      standing: "computed",
    });
    if (phase === "expired") return dated("not-covered", ["term-ended", ...reasons]);

    const free = reading.statutory ? "statutory-floor" : phase === "free" ? "free-period" : undefined;
    const freeUntil = !inDays
      ? term.freeMonths
      : (term.freeDays ?? countDays(startedOn, addMonthsFrom(startedOn, term.freeMonths)));
    const paidInCash = claim.paidInCash === true;
    const ledger = ledgerOf({ terms, purchase, term, elapsed, freeUntil, free, paidInCash });
    if (typeof ledger === "string") return dated("cannot-tell", [ledger, ...reasons]);
    if (derivation) for (const line of ledger.lines) derivation.push(stepOf(line, terms.currency));
    const renewed = terms.replacementTerm === "new";
    const why: SettlementReason[] = [];
    if (!reading.statutory) why.push(free ? "within-free-period" : "within-prorated-period");
    why.push(...ledger.reasons, ...reasons);
    const settlement = dated(free ? "free-replacement" : "prorated", why, ledger.lines);
    if (ledger.rebate !== undefined) settlement.rebate = ledger.rebate;
    settlement.charge = ledger.charge;
    settlement.total = ledger.total;
    settlement.replacementCover = {
      startsOn: claimedOn,
      lastCoveredDay: renewed
        ? lastCoveredDay(claimedOn, term.totalMonths, terms.lastCoveredDay)
        : reading.lastCoveredDay,
    };
    return settlement;
  }
}

type Reading = (CoverageCase & { readonly statutory?: true }) | { readonly phase: "denied" };

const DENIED: Reading = { phase: "denied" };

/** Every reading the facts leave open; none when no start can be named. */
function openReadings(claim: Claim, coverage: Coverage): Reading[] {
  const { eligibility } = claim;
  const { cases, denied, statutory } = coverage;
  if (cases.length === 0) return [];
  const readings: Reading[] = [];
  if (statutory !== "yes") {
    if (denied !== "yes") readings.push(...cases);
    if (denied !== "no") readings.push(DENIED);
  }
  if (statutory !== "no") readings.push(...floorReadings(claim, coverage));
  if (eligibility?.answer === "not-yet") readings.push(DENIED);
  return readings;
}

/** The readings under which the statutory period decides. */
function floorReadings({ terms: { statutoryFloor }, purchase }: Claim, { cases }: Coverage): Reading[] {
  if (!statutoryFloor) return [];
  return cases.map(({ term, startedOn, lastCoveredDay: last }) => {
    const until = addMonthsFrom((purchase.receipt && purchase.soldOn) || startedOn, statutoryFloor.months);
    // biome-ignore lint/complexity/useMathMinMax: dates as text
    const lastCoveredDay = until > last ? until : last;
    return { phase: "free", term, startedOn, lastCoveredDay, statutory: true };
  });
}

const favour = ({ outcome, rebate }: Settlement): number =>
  outcome === "not-covered"
    ? -2
    : outcome === "cannot-tell"
      ? -1
      : outcome === "free-replacement"
        ? Number.POSITIVE_INFINITY
        : Number(rebate);

const sameResult = (a: Settlement, b: Settlement): boolean =>
  a === b || (a.outcome === b.outcome && a.total === b.total && a.rebate === b.rebate);

function stepOf({ kind, amount, explanation: e }: Settlement["lines"][number], currency: string) {
  return {
    quantity: kind,
    formula: e.formula ?? e.code,
    inputs: e.parameters,
    result: amount,
    unit: currency,
    source: e.source,
    standing: e.standing,
  };
}
