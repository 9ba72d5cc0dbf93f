import { Decimal } from "decimal.js";
import { wrongArgument } from "../numeric/index.js";
import type { MoneyRounding } from "./terms.js";

// A private constructor: the caller's global Decimal settings neither reach us nor are changed by us. 40 digits hold
// 18 integer digits times any month count, and no quotient by a month count comes near a tie within 40 digits.
const Exact = /* @__PURE__ */ Decimal.clone({ defaults: true, precision: 40 });

export type Money = Decimal;

const mode = (rounding: MoneyRounding) => (rounding === "half-up" ? 4 : 6);

/** Exact number from an integer or a text already checked. */
export const exact = (value: string | number): Money => new Exact(value);

export const toMinorUnit = (amount: Money, digits: number, rounding: MoneyRounding): Money =>
  amount.toDecimalPlaces(digits, mode(rounding));

const PATTERN = /^-?\d{1,18}(?:\.(\d{1,18}))?$/;

/** True for a plain decimal text ≥ 0 with at most `digits` decimals. */
export function isAmount(text: unknown, digits: number): boolean {
  const match = typeof text === "string" && text[0] !== "-" && PATTERN.exec(text);
  return match ? (match[1]?.length ?? 0) <= digits : false;
}

/** Reads an amount ≥ 0; throws when it is no amount of the currency. */
export function readAmount(text: string, digits: number, name: string): Money {
  if (!isAmount(text, digits)) {
    wrongArgument(name, text, `a decimal string ≥ 0, ≤ ${digits} decimals`);
  }
  return exact(text);
}

function readDecimal(text: string, name: string): Money {
  if (!PATTERN.test(text)) wrongArgument(name, text, "a decimal string");
  return exact(text);
}

/**
 * Rounds an exact decimal amount to the smallest unit of its currency.
 *
 * @param amount decimal string, any sign
 * @param minorUnitDigits 0..4
 * @param rounding rule for ties
 * @returns decimal string with exactly that many digits
 * @throws RangeError when `amount` is no plain decimal string
 * @example
 * ```ts
 * import { roundMoney } from "crankworthy/warranty";
 * roundMoney("62.325", 2, "half-up"); // => "62.33"
 * roundMoney("62.325", 2, "half-even"); // => "62.32"
 * ```
 */
export function roundMoney(amount: string, minorUnitDigits: number, rounding: MoneyRounding): string {
  return toMinorUnit(readDecimal(amount, "amount"), minorUnitDigits, rounding).toFixed(minorUnitDigits);
}

export const toIncrement = (amount: Money, increment: Money, rounding: MoneyRounding): Money =>
  toMinorUnit(amount.div(increment), 0, rounding).times(increment);

/**
 * Rounds the final total of a cash payment to the smallest cash amount; lines are never rounded to it.
 *
 * @param total decimal string, any sign
 * @param increment decimal string above 0, such as `"0.05"`
 * @param rounding rule for ties
 * @param minorUnitDigits digits of the result, 0..4
 * @throws RangeError when a text is no plain decimal string or the increment is not above 0
 * @example
 * ```ts
 * import { roundCash } from "crankworthy/warranty";
 * roundCash("12.325", "0.05", "half-up", 2); // => "12.35"
 * ```
 */
export function roundCash(
  total: string,
  increment: string,
  rounding: MoneyRounding,
  minorUnitDigits: number,
): string {
  const step = readDecimal(increment, "increment");
  if (!step.gt(0)) wrongArgument("increment", increment, "above 0");
  return toIncrement(readDecimal(total, "total"), step, rounding).toFixed(minorUnitDigits);
}

/** The two parts of a price. They add up to it exactly. */
export interface PriceSplit {
  /** What the customer gets back. */
  readonly rebate: string;
  /** What the customer pays for a replacement of the same price. */
  readonly charge: string;
}

/**
 * Splits a price by remaining term: the rebate is worked out exactly and rounded once, the charge is the difference.
 *
 * Equation: rebate = round(price · remaining / whole), charge = price − rebate. The monthly rate is never rounded:
 * 189.99 over 60 months would otherwise yield 190.20 in sum.
 *
 * @param price decimal string ≥ 0 in the currency's digits, without core deposit and tax
 * @param remaining months (or days) left, integer 0..`whole`
 * @param whole months (or days) of the prorated term, integer ≥ 1
 * @param minorUnitDigits 0..4
 * @param rounding rule for ties
 * @throws RangeError when an argument is outside its range
 * @example
 * ```ts
 * import { splitPrice } from "crankworthy/warranty";
 * splitPrice("189.99", 29, 60, 2, "half-up"); // => { rebate: "91.83", charge: "98.16" }
 * ```
 */
export function splitPrice(
  price: string,
  remaining: number,
  whole: number,
  minorUnitDigits: number,
  rounding: MoneyRounding,
): PriceSplit {
  const amount = readAmount(price, minorUnitDigits, "price");
  if (
    !(
      Number.isInteger(remaining) &&
      Number.isInteger(whole) &&
      remaining >= 0 &&
      remaining <= whole &&
      whole > 0
    )
  ) {
    wrongArgument("remaining, whole", `${remaining}, ${whole}`, "integers 0 ≤ remaining ≤ whole");
  }
  const rebate = toMinorUnit(amount.times(remaining).div(whole), minorUnitDigits, rounding);
  return { rebate: rebate.toFixed(minorUnitDigits), charge: amount.minus(rebate).toFixed(minorUnitDigits) };
}
