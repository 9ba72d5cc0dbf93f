import type { Mutable } from "../numeric/index.js";
import type { SourceId, Standing } from "../sources/index.js";
import { exact, type Money, readAmount, toIncrement, toMinorUnit } from "./money.js";
import type { ElapsedTerm, Explanation, SettlementLine, SettlementReason } from "./settlement.js";
import type { Purchase, TermLengths, WarrantyTerms } from "./terms.js";

/** The money of one settled reading of a claim. */
export interface Ledger {
  readonly lines: SettlementLine[];
  readonly rebate?: string;
  readonly charge: string;
  readonly total: string;
  readonly reasons: SettlementReason[];
}

export interface LedgerInput {
  readonly terms: WarrantyTerms;
  readonly purchase: Purchase;
  readonly term: TermLengths;
  readonly elapsed: ElapsedTerm;
  /** End of the free period in the unit of `elapsed`. */
  readonly freeUntil: number;
  /** Why nothing is charged, or undefined when the claim is prorated. */
  readonly free?: "free-period" | "statutory-floor" | undefined;
  readonly paidInCash: boolean;
}

// Explanation code: where the rule comes from.
const RULES = {
  "price-paid": ["us-88-stat-2183", "read"],
  "price-list-at-purchase": ["warranty-practice", "common-practice"],
  "price-list-today": ["warranty-practice", "common-practice"],
  "free-period": ["ritchken-1984", "read"],
  "statutory-floor": ["eu-2019-771", "from-memory"],
  "prorated-from-purchase": ["ca-18-ccr-3210", "read"],
  "prorated-from-end-of-free-period": ["ritchken-1984", "read"],
  "step-schedule": ["warranty-practice", "common-practice"],
  "price-less-rebate": ["ca-18-ccr-3210", "read"],
  "no-charge": ["ritchken-1984", "read"],
  "core-deposit-due": ["ca-hs-25215-2", "read"],
  "core-deposit-refunded": ["ca-hs-25215-2", "read"],
  "core-deposit-waived": ["core-exchange-practice", "common-practice"],
  "tax-on-charge": ["va-ruling-97-475", "read"],
  "tax-on-charge-plus-retained-value": ["al-810-6-1-187", "read"],
  "cash-rounding": ["warranty-practice", "common-practice"],
  total: ["warranty-choice", "our-choice"],
} as const satisfies Record<string, readonly [SourceId, Standing]>;

const zero = /* @__PURE__ */ exact(0);

const BASIS_FIELD = {
  paid: "pricePaid",
  "list-at-purchase": "listPriceAtPurchase",
  "list-today": "listPriceToday",
} as const;

/** Works out all lines; a reason code instead when an amount needed is unknown. */
export function ledgerOf(input: LedgerInput): Ledger | SettlementReason {
  const { terms, purchase, free } = input;
  const { minorUnitDigits: digits, rounding, statutoryFloor: floor } = terms;
  const lines: SettlementLine[] = [];
  const reasons: SettlementReason[] = [];
  const read = (value: string, name: keyof Purchase) => readAmount(value, digits, `purchase.${name}`);
  const push = (
    kind: SettlementLine["kind"],
    amount: Money,
    code: keyof typeof RULES,
    parameters: Explanation["parameters"] = {},
    formula?: string,
  ): string => {
    const text = amount.toFixed(digits);
    const [source, standing] = RULES[code];
    const explanation: Mutable<Explanation> = { code, parameters, source, standing };
    if (formula) explanation.formula = formula;
    lines.push({ kind, amount: text, explanation });
    return text;
  };

  const field = BASIS_FIELD[terms.priceBasis];
  const price = purchase[field] === undefined ? undefined : read(purchase[field], field);
  let charge = zero;
  let rebateText: string | undefined;
  let chargeText: string;
  const priceText = price && push("basis", price, `price-${terms.priceBasis}`);
  if (free) {
    const why: Mutable<Explanation["parameters"]> = {};
    if (free === "statutory-floor" && floor) {
      why.months = floor.months;
      why.scope = floor.scope;
      if (floor.citation) why.citation = floor.citation;
    }
    rebateText = price && push("rebate", price, free, why);
    // The law is named also where there is no rebate line to name it.
    const named = rebateText === undefined && free === "statutory-floor";
    chargeText = named ? push("charge", zero, free, why) : push("charge", zero, "no-charge");
  } else {
    if (price === undefined || priceText === undefined) return "basis-price-missing";
    const rule = remainingShare(input, priceText);
    let rebate = toMinorUnit(price.times(rule.part).div(rule.whole), digits, rounding);
    let rebateFormula: string = rule.formula;
    if (terms.cap !== undefined && rebate.gt(terms.cap)) {
      rebate = exact(terms.cap);
      rebateFormula = `min(${rebate.toFixed(digits)}, ${rebateFormula})`;
      reasons.push("cap-applied");
    }
    rebateText = push("rebate", rebate, rule.code, rule.parameters, rebateFormula);
    const other = purchase.replacementPrice;
    const replacementPrice = other ?? priceText;
    charge = (other === undefined ? price : read(other, "replacementPrice")).minus(rebate);
    if (charge.isNegative()) reasons.push("rebate-exceeds-replacement-price");
    const formula = `${replacementPrice} − ${rebateText}`;
    chargeText = push(
      "charge",
      charge,
      "price-less-rebate",
      { replacementPrice, rebate: rebateText },
      formula,
    );
  }

  let total = charge;
  let deposit = zero;
  const { depositAmount, depositInExchange } = terms.core;
  if (depositAmount !== undefined) {
    const missing = purchase.coreReturned === false;
    if (missing) reasons.push("core-not-returned");
    const due = missing || depositInExchange === "due";
    // Nothing is assumed returned: the deposit is charged, and the reasons say that it may come back.
    if (due && purchase.coreReturned === undefined) reasons.push("core-not-known");
    if (due) deposit = exact(depositAmount);
    push("core", deposit, due ? "core-deposit-due" : "core-deposit-waived", { depositAmount });
    if (due) total = total.plus(deposit);
  }
  if (terms.tax) {
    const { ratePercent, base, coreTaxed, freeReplacementTaxed } = terms.tax;
    // Nothing charged: only the switch for free replacements decides. A charge in the customer's favour bears no tax.
    let taxed = charge.isNegative() ? zero : charge;
    if (base !== "charge" && (freeReplacementTaxed || !taxed.isZero())) {
      if (purchase.retainedValue === undefined) return "retained-value-missing";
      taxed = taxed.plus(read(purchase.retainedValue, "retainedValue"));
    }
    if (coreTaxed && deposit !== zero) taxed = taxed.plus(deposit);
    const tax = toMinorUnit(taxed.times(ratePercent).div(100), digits, rounding);
    const amount = taxed.toFixed(digits);
    const parameters = { taxed: amount, ratePercent, coreTaxed: String(coreTaxed) };
    push("tax", tax, `tax-on-${base}`, parameters, `${amount} × ${ratePercent} / 100`);
    total = total.plus(tax);
  }
  // The refund comes after the tax: a taxed deposit stays taxed although it is given back.
  if (purchase.coreReturned && depositAmount !== undefined && !deposit.isZero()) {
    push("core", deposit.neg(), "core-deposit-refunded", { depositAmount });
    total = total.minus(deposit);
  }
  const { cashIncrement } = terms;
  if (input.paidInCash && cashIncrement !== undefined) {
    const cash = toIncrement(total, exact(cashIncrement), rounding);
    push("cash-rounding", cash.minus(total), "cash-rounding", { cashIncrement, rounding });
    total = cash;
  }
  const ledger: Mutable<Ledger> = {
    lines,
    charge: chargeText,
    total: push("total", total, "total"),
    reasons,
  };
  if (rebateText !== undefined) ledger.rebate = rebateText;
  return ledger;
}

function remainingShare(
  { terms, term, elapsed: { used, whole, unit }, freeUntil }: LedgerInput,
  price: string,
) {
  const { monthCount, rounding } = terms;
  const step = term.stepSchedule?.findLast(({ fromMonth }) => fromMonth <= used);
  if (step) {
    const { fromMonth, rebatePercent } = step;
    return {
      code: "step-schedule",
      part: rebatePercent,
      whole: 100,
      parameters: { used, whole, unit, monthCount, rounding, fromMonth, rebatePercent },
      formula: `${price} × ${rebatePercent} / 100`,
    } as const;
  }
  const fromPurchase = terms.prorationOrigin === "purchase";
  return {
    code: `prorated-from-${terms.prorationOrigin}`,
    part: whole - used,
    whole: fromPurchase ? whole : whole - freeUntil,
    parameters: { used, whole, unit, monthCount, rounding, freeUntil },
    formula: `${price} × (${whole} − ${used}) / ${fromPurchase ? whole : `(${whole} − ${freeUntil})`}`,
  } as const;
}
