import { type Convention, policyConventions } from "./conventions.data.js";
import { isAmount } from "./money.js";
import type { WarrantyTerms } from "./terms.js";

/** Something in warranty terms that keeps them from being applied. */
export interface TermsIssue {
  readonly code: "missing" | "not-a-choice" | "out-of-range" | "inconsistent";
  /** Field, parts joined by dots. */
  readonly path: string;
  readonly received: unknown;
  readonly expected: string;
  readonly message: string;
  /** The conventions that exist, where sources disagree. */
  readonly conventions?: readonly Convention[];
}

type Loose = Readonly<Record<string, unknown>>;

const EXCLUSIONS = [
  "physical-damage",
  "heat-damage",
  "freeze-damage",
  "low-electrolyte",
  "wrong-application",
  "altered-date-code",
];

// Where each convention stands: path, the field's name, and the name inside it for a field of a nested object.
const POLICY_FIELDS = /* @__PURE__ */ (() =>
  Object.entries<readonly Convention[]>(policyConventions).map(
    ([path, conventions]) => [path, conventions, ...(path.split(".") as [string, string?])] as const,
  ))();

/** Longest term accepted, months: a hundred years, only to catch a wrong unit. */
const MOST_MONTHS = 1200;

const record = (value: unknown): Loose =>
  typeof value === "object" && value !== null ? (value as Loose) : {};

/**
 * Says everything that is missing or wrong in warranty terms, all at once.
 *
 * Scope: fields on which published practice contradicts itself have no default; when one is missing, its issue lists
 * the conventions that exist with their sources. {@link settleClaim} refuses terms that have an issue.
 *
 * @param terms the terms, complete or not
 * @returns no element when the terms can be applied
 * @example
 * ```ts
 * import { checkTerms } from "crankworthy/warranty";
 * const issues = checkTerms({ currency: "EUR", minorUnitDigits: 2, freeMonths: 24, totalMonths: 60 });
 * issues.map((issue) => issue.path).slice(0, 2); // => ["prorationOrigin", "monthCount"]
 * issues[0].conventions.map(([name]) => name); // => ["purchase", "end-of-free-period"]
 * ```
 */
export function checkTerms(terms: Partial<WarrantyTerms>): TermsIssue[] {
  const issues: TermsIssue[] = [];
  const t: Loose = record(terms);
  const add = (
    code: TermsIssue["code"],
    path: string,
    received: unknown,
    expected: string,
    conventions?: readonly Convention[],
  ) => {
    const missing = received === undefined && code !== "inconsistent";
    issues.push({
      code: missing ? "missing" : code,
      path,
      received,
      expected,
      message: `${path}: expected ${expected}${missing && conventions ? "; sources disagree, so there is no default" : ""}`,
      ...(conventions && { conventions }),
    });
  };
  const whole = (path: string, value: unknown, least: number, most = MOST_MONTHS) => {
    const ok = Number.isInteger(value) && (value as number) >= least && (value as number) <= most;
    if (!ok) add("out-of-range", path, value, `a whole number ${least}..${most}`);
    return ok;
  };
  const optionalWhole = (path: string, value: unknown, least: number, most?: number) =>
    value === undefined || whole(path, value, least, most);
  const amount = (path: string, value: unknown, decimals = digits) =>
    isAmount(value, decimals) ||
    add("out-of-range", path, value, `a decimal string ≥ 0, ≤ ${decimals} decimals`);
  const percent = (path: string, value: unknown) => {
    amount(path, value, 18);
    if (Number(value) > 100) add("out-of-range", path, value, "0..100");
  };
  const choice = (path: string, value: unknown, names: readonly unknown[]) =>
    names.includes(value) || add("not-a-choice", path, value, names.join(" | "));
  const flag = (path: string, value: unknown) => choice(path, value, [true, false]);

  const digits = whole("minorUnitDigits", t.minorUnitDigits, 0, 4) ? (t.minorUnitDigits as number) : 4;
  if (typeof t.currency !== "string" || t.currency === "") {
    add("out-of-range", "currency", t.currency, "an ISO 4217 code");
  }
  for (const [path, conventions, field, inner] of POLICY_FIELDS) {
    if (field === "tax" && t.tax === undefined) continue;
    const value = inner === undefined ? t[field] : record(t[field])[inner];
    if (!conventions.some(([name]) => name === value)) {
      add("not-a-choice", path, value, conventions.map(([name]) => name).join(" | "), conventions);
    }
  }
  lengths("", t);

  const exclusions = t.exclusions;
  if (!Array.isArray(exclusions))
    add("out-of-range", "exclusions", exclusions, "a list, empty when nothing is excluded");
  else for (const [i, one] of exclusions.entries()) choice(`exclusions.${i}`, one, EXCLUSIONS);

  const core = record(t.core);
  if (core.depositAmount !== undefined || core.depositInExchange === "due") {
    amount("core.depositAmount", core.depositAmount);
  }
  if (t.tax !== undefined) {
    const tax = record(t.tax);
    amount("tax.ratePercent", tax.ratePercent, 18);
    flag("tax.coreTaxed", tax.coreTaxed);
    flag("tax.freeReplacementTaxed", tax.freeReplacementTaxed);
    if (tax.freeReplacementTaxed === true && tax.base === "charge") {
      const expected = "false beside base charge: a charge of zero bears no tax";
      add("inconsistent", "tax.freeReplacementTaxed", true, expected);
    }
  }
  if (t.cashIncrement !== undefined) {
    amount("cashIncrement", t.cashIncrement);
    if (!(Number(t.cashIncrement) > 0)) add("out-of-range", "cashIncrement", t.cashIncrement, "above 0");
  }
  if (t.cap !== undefined) amount("cap", t.cap);
  if (t.termStart !== undefined) choice("termStart", t.termStart, ["purchase", "installation"]);
  optionalWhole("shelfAgeLimitDays", t.shelfAgeLimitDays, 0, 36500);
  optionalWhole("maxClaims", t.maxClaims, 0, 1000);
  if (t.startWithoutReceipt !== undefined) {
    choice("startWithoutReceipt.kind", record(t.startWithoutReceipt).kind, ["manufacture-plus-months"]);
    whole("startWithoutReceipt.months", record(t.startWithoutReceipt).months, 0);
  }
  if (t.statutoryFloor !== undefined) {
    whole("statutoryFloor.months", record(t.statutoryFloor).months, 1);
    choice("statutoryFloor.scope", record(t.statutoryFloor).scope, ["anyone", "consumer"]);
  }
  if (t.useClasses !== undefined)
    for (const [name, variant] of Object.entries(record(t.useClasses))) {
      if (record(variant).excluded !== true) lengths(`useClasses.${name}.`, record(variant));
    }
  return issues;

  function lengths(at: string, term: Loose): void {
    const free = whole(`${at}freeMonths`, term.freeMonths, 0);
    if (
      whole(`${at}totalMonths`, term.totalMonths, 1) &&
      free &&
      Number(term.totalMonths) < Number(term.freeMonths)
    ) {
      add("inconsistent", `${at}totalMonths`, term.totalMonths, `at least freeMonths (${term.freeMonths})`);
    }
    if (term.freeDays !== undefined && whole(`${at}freeDays`, term.freeDays, 1, 36500)) {
      if (term.freeMonths !== 0)
        add("inconsistent", `${at}freeDays`, term.freeDays, "freeMonths 0 beside it");
      if (t.prorationOrigin === "end-of-free-period" && t.monthCount !== "days") {
        add("inconsistent", `${at}freeDays`, term.freeDays, "prorationOrigin purchase or monthCount days");
      }
      if (Number(term.freeDays) > Number(term.totalMonths) * 28) {
        add("inconsistent", `${at}freeDays`, term.freeDays, "a free period within the term");
      }
    }
    if (term.stepSchedule === undefined) return;
    const path = `${at}stepSchedule`;
    const steps = Array.isArray(term.stepSchedule) ? term.stepSchedule.map(record) : [];
    if (steps.length === 0) add("out-of-range", path, term.stepSchedule, "a list of steps");
    if (t.monthCount === "days") add("inconsistent", path, t.monthCount, "a monthCount in months");
    let before: Loose | undefined;
    for (const [i, step] of steps.entries()) {
      whole(`${path}.${i}.fromMonth`, step.fromMonth, 0);
      percent(`${path}.${i}.rebatePercent`, step.rebatePercent);
      if (
        before === undefined
          ? Number(step.fromMonth) > Number(term.freeMonths)
          : Number(step.fromMonth) <= Number(before.fromMonth)
      ) {
        add(
          "inconsistent",
          `${path}.${i}.fromMonth`,
          step.fromMonth,
          "a first step by freeMonths, then rising months",
        );
      }
      if (before !== undefined && Number(step.rebatePercent) > Number(before.rebatePercent)) {
        add("inconsistent", `${path}.${i}.rebatePercent`, step.rebatePercent, "no more than the step before");
      }
      before = step;
    }
  }
}
