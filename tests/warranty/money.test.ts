import { type MoneyRounding, roundCash, roundMoney, splitPrice } from "crankworthy/warranty";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const rounding = fc.constantFrom<MoneyRounding>("half-up", "half-even");

const minorUnits = fc.oneof(
  fc.constantFrom(0n, 1n, 2n, 10n ** 12n),
  fc.bigInt({ min: 0n, max: 10n ** 16n }),
  fc.bigInt({ min: 0n, max: 100_000n }),
);

function decimalText(units: bigint, digits: number): string {
  const text = units.toString().padStart(digits + 1, "0");
  return digits === 0 ? text : `${text.slice(0, -digits)}.${text.slice(-digits)}`;
}

const units = (text: string) => BigInt(text.replace(".", ""));

/** Independent of decimal.js: integer division of minor units. */
function roundedQuotient(numerator: bigint, denominator: bigint, rule: MoneyRounding): bigint {
  const floor = numerator / denominator;
  const twice = 2n * (numerator % denominator);
  if (twice === denominator) return rule === "half-up" ? floor + 1n : floor + (floor % 2n);
  return twice > denominator ? floor + 1n : floor;
}

describe("splitPrice", () => {
  it("rounds like integer arithmetic, and the parts add up to the price", () => {
    fc.assert(
      fc.property(
        minorUnits,
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 1, max: 4000 }),
        fc.nat(),
        rounding,
        (price, digits, whole, seed, rule) => {
          const remaining = seed % (whole + 1);
          const { rebate, charge } = splitPrice(decimalText(price, digits), remaining, whole, digits, rule);
          expect(units(rebate)).toBe(roundedQuotient(price * BigInt(remaining), BigInt(whole), rule));
          expect(units(rebate) + units(charge)).toBe(price);
          expect(units(charge) >= 0n).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });

  it("keeps the last digit of the largest amount", () =>
    expect(splitPrice("999999999999999999.99", 1, 3, 2, "half-up")).toEqual({
      rebate: "333333333333333333.33",
      charge: "666666666666666666.66",
    }));

  it("refuses amounts the currency cannot express, and impossible parts", () => {
    for (const price of ["189.995", "-1.00", "1e3", "", " 1", "NaN", "1,00"]) {
      expect(() => splitPrice(price, 1, 2, 2, "half-up")).toThrow(/price: received/);
    }
    expect(() => splitPrice("1.00", 3, 2, 2, "half-up")).toThrow(RangeError);
    expect(() => splitPrice("1.00", 0, 0, 2, "half-up")).toThrow(RangeError);
  });
});

describe("rounding", () => {
  it("is idempotent, and symmetric about zero", () => {
    fc.assert(
      fc.property(minorUnits, fc.integer({ min: 0, max: 4 }), rounding, (amount, digits, rule) => {
        const text = decimalText(amount, 5);
        const once = roundMoney(text, digits, rule);
        expect(roundMoney(once, digits, rule)).toBe(once);
        const negative = roundMoney(`-${text}`, digits, rule);
        expect(negative).toBe(/[1-9]/.test(once) ? `-${once}` : once);
      }),
    );
  });

  it("cash lands on a multiple, at most half an increment away", () => {
    fc.assert(
      fc.property(minorUnits, fc.constantFrom(5n, 10n, 50n, 100n), rounding, (total, step, rule) => {
        const cash = units(roundCash(decimalText(total, 2), decimalText(step, 2), rule, 2));
        expect(cash % step).toBe(0n);
        const off = cash > total ? cash - total : total - cash;
        expect(2n * off <= step).toBe(true);
      }),
    );
    expect(() => roundCash("1.00", "0.00", "half-up", 2)).toThrow(/increment/);
  });
});
