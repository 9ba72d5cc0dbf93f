import { type Mutable, type PlainDate, requireDay, wrongArgument } from "../numeric/index.js";
import { addDaysTo, addMonthsFrom, lastCoveredDay } from "./months.js";
import type { DateInterval, Purchase, TermLengths, WarrantyTerms } from "./terms.js";

/** Where a claim date lies in the term. */
export type CoveragePhase = "free" | "prorated" | "expired";

/** Why an answer is what it is; stable codes, worded in the message catalogue. */
export type CoverageReason =
  | "start-assumed-from-manufacture"
  | "start-is-an-interval"
  | "assumed-start-after-claim"
  | "start-not-established"
  | "claim-before-start"
  | "sold-before-manufacture"
  | "shelf-age-beyond-limit"
  | "shelf-age-undecided"
  | "manufacture-not-known"
  | "use-class-excluded"
  | "use-class-not-known"
  | "not-original-buyer"
  | "original-buyer-not-known"
  | "claim-limit-reached"
  | "claims-so-far-not-known"
  | "statutory-floor"
  | "buyer-kind-not-known";

/** Shelf time from manufacture to sale, days, and how it stands to the limit. */
export interface ShelfAge {
  readonly answer: "within" | "beyond" | "cannot-tell";
  readonly lowerDays: number;
  readonly upperDays: number;
}

/** One reading of the facts: this start, these lengths, therefore this phase. */
export interface CoverageCase {
  readonly phase: CoveragePhase;
  readonly term: TermLengths;
  readonly startedOn: PlainDate;
  /** Absent when there is no free period. */
  readonly lastFreeDay?: PlainDate;
  readonly lastCoveredDay: PlainDate;
}

/** What the terms say about a claim date. */
export interface Coverage {
  /** The phase, or `cannot-tell` when the facts leave more than one open. */
  readonly answer: CoveragePhase | "cannot-tell";
  /** One reading when start and terms are known, else the extreme ones; none when no start can be named. */
  readonly cases: readonly CoverageCase[];
  /** A condition beside the dates (shelf age, buyer, number of claims, use class) that denies cover. */
  readonly denied: "yes" | "no" | "cannot-tell";
  /** Whether the statutory period overrides the terms; not asked, hence `no`, where these are free already. */
  readonly statutory: "yes" | "no" | "cannot-tell";
  readonly shelfAge?: ShelfAge;
  readonly reasons: readonly CoverageReason[];
}

/** The part of the terms that decides cover. */
export type CoverageTerms = TermLengths &
  Pick<
    WarrantyTerms,
    | "lastCoveredDay"
    | "termStart"
    | "startWithoutReceipt"
    | "shelfAgeLimitDays"
    | "useClasses"
    | "originalBuyerOnly"
    | "maxClaims"
    | "statutoryFloor"
  >;

/** The dated facts of a claim. */
export interface CoverageQuestion {
  readonly terms: CoverageTerms;
  readonly purchase: Purchase;
  readonly claimedOn: PlainDate;
  /** From the date code: an interval, because most codes name a month or a week. */
  readonly manufactured?: DateInterval;
}

/**
 * Time from manufacture to sale against a limit, with three answers.
 *
 * @param manufactured both ends included
 * @param soldOn day of sale, not before `manufactured.from`
 * @param limitDays longest shelf time allowed, days ≥ 0
 * @throws RangeError when a date is no date or the sale precedes the manufacture
 * @example
 * ```ts
 * import { shelfAge } from "crankworthy/warranty";
 * const march = { from: "2024-03-01", to: "2024-03-31" };
 * shelfAge(march, "2024-09-15", 180); // => { answer: "cannot-tell", lowerDays: 168, upperDays: 198 }
 * ```
 */
export function shelfAge(manufactured: DateInterval, soldOn: PlainDate, limitDays: number): ShelfAge {
  const sold = requireDay("soldOn", soldOn);
  const upperDays = sold - requireDay("manufactured.from", manufactured.from);
  if (upperDays < 0) wrongArgument("soldOn", soldOn, `${manufactured.from} or later`);
  // Made on the day of sale at the latest, whatever the code's month still leaves open.
  const lowerDays = Math.max(0, sold - requireDay("manufactured.to", manufactured.to));
  const answer = upperDays <= limitDays ? "within" : lowerDays > limitDays ? "beyond" : "cannot-tell";
  return { answer, lowerDays, upperDays };
}

/**
 * Tells where a claim date lies in the warranty term: free, prorated, expired or cannot tell.
 *
 * Scope: dates, shelf age, buyer, number of claims, use class and the statutory period; damage and test results are
 * the business of {@link claimEligibility}, money that of {@link settleClaim}.
 *
 * @param question terms, purchase, claim date, manufacture interval
 * @returns the phase with the readings it rests on; `cannot-tell` where an interval straddles a limit
 * @throws RangeError when a text is no date
 * @example
 * ```ts
 * import { coverageOn } from "crankworthy/warranty";
 * const terms = { freeMonths: 24, totalMonths: 60, lastCoveredDay: "anniversary" } as const;
 * const purchase = { receipt: true, soldOn: "2023-03-15" };
 * coverageOn({ terms, purchase, claimedOn: "2025-03-15" }).answer; // => "free"
 * coverageOn({ terms, purchase, claimedOn: "2025-03-16" }).answer; // => "prorated"
 * ```
 */
export function coverageOn(question: CoverageQuestion): Coverage {
  const { terms, purchase, claimedOn } = question;
  requireDay("claimedOn", claimedOn);
  const made = question.manufactured;
  if (made && requireDay("manufactured.from", made.from) > requireDay("manufactured.to", made.to)) {
    wrongArgument("manufactured", `${made.from} to ${made.to}`, "from ≤ to");
  }
  const reasons: CoverageReason[] = [];
  const start = startInterval(question, reasons);
  const { denied, shelf } = conditions(question, reasons);
  const cases: CoverageCase[] = [];
  const coverage: Mutable<Coverage> = { answer: "cannot-tell", cases, denied, statutory: "no", reasons };
  if (shelf) coverage.shelfAge = shelf;
  if (!start) return coverage;

  for (const term of lengthsThatMayApply(terms, purchase)) {
    cases.push(caseFor(terms, term, start.from, claimedOn));
    if (start.to !== start.from) cases.push(caseFor(terms, term, start.to, claimedOn));
  }
  const phase = cases[0]!.phase;
  const commercial =
    denied === "yes"
      ? "expired"
      : denied === "no" && cases.every((c) => c.phase === phase)
        ? phase
        : "cannot-tell";
  if (commercial !== "free") coverage.statutory = statutoryAnswer(terms, purchase, claimedOn, start, reasons);
  const { statutory } = coverage;
  coverage.answer = statutory === "yes" ? "free" : statutory === "no" ? commercial : "cannot-tell";
  return coverage;
}

function startInterval(question: CoverageQuestion, reasons: CoverageReason[]): DateInterval | undefined {
  const { terms, purchase, claimedOn, manufactured } = question;
  const { soldOn } = purchase;
  if (purchase.receipt && soldOn !== undefined) {
    requireDay("soldOn", soldOn);
    if (manufactured && soldOn < manufactured.from) return none("sold-before-manufacture");
    let start = { from: soldOn, to: soldOn };
    if (terms.termStart === "installation") {
      const installed = purchase.installedOn;
      // Installed on an unknown day between the sale and the claim.
      start = { from: installed ?? soldOn, to: installed ?? claimedOn };
      requireDay("installedOn", start.from);
      if (start.from < soldOn) return none("start-not-established");
    }
    if (start.from > claimedOn) return none("claim-before-start");
    if (start.from !== start.to) reasons.push("start-is-an-interval");
    return start;
  }
  const rule = terms.startWithoutReceipt;
  if (!rule) return none("start-not-established");
  if (!manufactured) return none("manufacture-not-known");
  if (manufactured.from > claimedOn) return none("claim-before-start");
  reasons.push("start-assumed-from-manufacture");
  // The battery existed on the day of the claim and was sold by then: an assumed later start begins that day.
  const assumed = (made: PlainDate) => {
    const start = addMonthsFrom(made, rule.months);
    if (start <= claimedOn) return start;
    if (!reasons.includes("assumed-start-after-claim")) reasons.push("assumed-start-after-claim");
    return claimedOn;
  };
  const start = { from: assumed(manufactured.from), to: assumed(manufactured.to) };
  if (start.from !== start.to) reasons.push("start-is-an-interval");
  return start;

  function none(reason: CoverageReason): undefined {
    reasons.push(reason);
  }
}

function conditions(
  { terms, purchase, manufactured }: CoverageQuestion,
  reasons: CoverageReason[],
): { denied: Coverage["denied"]; shelf: ShelfAge | undefined } {
  let denied: Coverage["denied"] = "no";
  const note = (answer: "yes" | "cannot-tell", reason: CoverageReason) => {
    if (denied !== "yes") denied = answer;
    reasons.push(reason);
  };
  const { useClass, soldOn, originalBuyer, claimsSoFar } = purchase;
  let shelf: ShelfAge | undefined;
  // Without a receipt the start rule stands in for the sale, so there is no shelf time to limit.
  if (terms.shelfAgeLimitDays !== undefined && purchase.receipt && soldOn !== undefined) {
    if (!manufactured) note("cannot-tell", "manufacture-not-known");
    else if (soldOn >= manufactured.from) {
      shelf = shelfAge(manufactured, soldOn, terms.shelfAgeLimitDays);
      if (shelf.answer === "beyond") note("yes", "shelf-age-beyond-limit");
      else if (shelf.answer === "cannot-tell") note("cannot-tell", "shelf-age-undecided");
    }
  }
  if (terms.useClasses) {
    if (useClass === undefined) reasons.push("use-class-not-known");
    else if (isExcluded(terms, useClass)) note("yes", "use-class-excluded");
    if (useClass === undefined && Object.keys(terms.useClasses).some((name) => isExcluded(terms, name))) {
      note("cannot-tell", "use-class-excluded");
    }
  }
  if (terms.originalBuyerOnly) {
    if (originalBuyer === undefined) note("cannot-tell", "original-buyer-not-known");
    else if (!originalBuyer) note("yes", "not-original-buyer");
  }
  if (terms.maxClaims !== undefined) {
    if (claimsSoFar === undefined) note("cannot-tell", "claims-so-far-not-known");
    else if (claimsSoFar >= terms.maxClaims) note("yes", "claim-limit-reached");
  }
  return { denied, shelf };
}

function variantOf(terms: CoverageTerms, useClass: string) {
  return terms.useClasses && Object.hasOwn(terms.useClasses, useClass)
    ? terms.useClasses[useClass]
    : undefined;
}

function isExcluded(terms: CoverageTerms, useClass: string): boolean {
  const variant = variantOf(terms, useClass);
  return variant !== undefined && "excluded" in variant;
}

function lengthsThatMayApply(terms: CoverageTerms, { useClass }: Purchase): TermLengths[] {
  if (!terms.useClasses) return [terms];
  const variants =
    useClass === undefined ? Object.values(terms.useClasses) : [variantOf(terms, useClass) ?? terms];
  const covered = variants.filter((variant): variant is TermLengths => !("excluded" in variant));
  // Even an excluded class has its dates: the statutory period may override the exclusion.
  return useClass === undefined || covered.length === 0 ? [terms, ...covered] : covered;
}

function caseFor(
  terms: CoverageTerms,
  term: TermLengths,
  startedOn: PlainDate,
  claimedOn: PlainDate,
): CoverageCase {
  const last = lastCoveredDay(startedOn, term.totalMonths, terms.lastCoveredDay);
  const lastFreeDay =
    term.freeDays !== undefined
      ? addDaysTo(startedOn, term.freeDays - (terms.lastCoveredDay === "day-before" ? 1 : 0))
      : term.freeMonths > 0
        ? lastCoveredDay(startedOn, term.freeMonths, terms.lastCoveredDay)
        : undefined;
  const phase = lastFreeDay && claimedOn <= lastFreeDay ? "free" : claimedOn <= last ? "prorated" : "expired";
  const found: Mutable<CoverageCase> = { phase, term, startedOn, lastCoveredDay: last };
  if (lastFreeDay) found.lastFreeDay = lastFreeDay;
  return found;
}

/** Whether the statutory period is not ruled out on the day of the claim, whatever the terms cover or exclude. */
export function statutoryFloorMayApply(
  { terms: { statutoryFloor }, purchase, claimedOn }: CoverageQuestion,
  { cases }: Coverage,
): boolean {
  if (!statutoryFloor || (statutoryFloor.scope === "consumer" && purchase.buyer === "business")) return false;
  const delivered = (purchase.receipt && purchase.soldOn) || cases.at(-1)?.startedOn;
  return delivered === undefined || claimedOn <= addMonthsFrom(delivered, statutoryFloor.months);
}

// The floor's last day is the anniversary, the later of the two conventions: commercial terms cannot shorten it.
function statutoryAnswer(
  { statutoryFloor }: CoverageTerms,
  purchase: Purchase,
  claimedOn: PlainDate,
  start: DateInterval,
  reasons: CoverageReason[],
): Coverage["statutory"] {
  if (!statutoryFloor) return "no";
  const delivered = purchase.receipt && purchase.soldOn ? purchase.soldOn : undefined;
  const within = (from: PlainDate) => claimedOn <= addMonthsFrom(from, statutoryFloor.months);
  if (!within(delivered ?? start.to)) return "no";
  if (statutoryFloor.scope === "consumer" && purchase.buyer !== "consumer") {
    if (purchase.buyer === "business") return "no";
    reasons.push("buyer-kind-not-known");
    return "cannot-tell";
  }
  reasons.push("statutory-floor");
  return within(delivered ?? start.from) ? "yes" : "cannot-tell";
}
