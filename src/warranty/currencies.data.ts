import { type Refusal, refuse } from "../numeric/index.js";

// Minor units of ISO 4217 (from memory); 0 and 3 digits of BHD CLP DJF JPY KRW KWD OMR TND IQD JOD and 4
// of CLF agree with CLDR supplemental data (read). CLDR gives 0 for ALL and AFN: usage, not the standard.
const DIGITS: readonly (readonly [digits: number, codes: string])[] = [
  [0, "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF"],
  [
    2,
    "AED AFN ALL ARS AUD BAM BGN BRL CAD CHF CNY COP CRC CZK DKK EGP EUR GBP HKD HUF IDR ILS INR KES MAD MXN MYR NGN NOK NZD PEN PHP PKR PLN RON RSD SAR SEK SGD THB TRY TWD UAH USD ZAR",
  ],
  [3, "BHD IQD JOD KWD LYD OMR TND"],
  [4, "CLF UYW"],
];

// Smallest cash amounts of CLDR supplemental data (read).
const CASH: Readonly<Record<string, string>> = { CHF: "0.05", CAD: "0.05", DKK: "0.50", CZK: "1", CRC: "1" };

/**
 * Digits after the decimal point of a currency's smallest unit: a convenience, terms state their own.
 *
 * @param code ISO 4217, three capital letters
 * @returns 0..4, or the refusal `unknown-currency`: most currencies have two digits, but that is never assumed
 * @example
 * ```ts
 * import { minorUnitDigits } from "crankworthy/warranty";
 * minorUnitDigits("KWD"); // => 3
 * minorUnitDigits("JPY"); // => 0
 * ```
 */
export function minorUnitDigits(code: string): number | Refusal<"unknown-currency"> {
  if (/^[A-Z]{3}$/.test(code)) for (const [digits, codes] of DIGITS) if (codes.includes(code)) return digits;
  return refuse("unknown-currency", `${code} is not in the table.`, "The digits, from ISO 4217.");
}

/**
 * Smallest amount paid in cash where it differs from the minor unit, as listed by CLDR; undefined where none is listed.
 *
 * @param code ISO 4217, three capital letters
 * @example
 * ```ts
 * import { cashIncrement } from "crankworthy/warranty";
 * cashIncrement("CHF"); // => "0.05"
 * ```
 */
export function cashIncrement(code: string): string | undefined {
  return Object.hasOwn(CASH, code) ? CASH[code] : undefined;
}
