import { cashIncrement, minorUnitDigits } from "crankworthy/warranty";
import { describe, expect, it } from "vitest";

describe("minorUnitDigits", () => {
  it.each(["XXX", "eur", "", "UR ", "EUR USD", "R U"])("does not guess two digits for %j", (code) =>
    expect(minorUnitDigits(code)).toMatchObject({ refused: true, code: "unknown-currency" }),
  );
  it("one code of each group, and the standard's value where usage differs", () => {
    expect(["EUR", "KWD", "VND", "UYW", "ALL"].map(minorUnitDigits)).toEqual([2, 3, 0, 4, 2]);
    expect(cashIncrement("EUR")).toBeUndefined();
    expect(cashIncrement("toString")).toBeUndefined();
  });
});
