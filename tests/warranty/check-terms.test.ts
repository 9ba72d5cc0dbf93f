import { checkTerms, policyConventions, settleClaim, type WarrantyTerms } from "crankworthy/warranty";
import { describe, expect, it } from "vitest";
import { purchase, terms } from "./terms-for-tests.js";

const paths = (changes: object) =>
  checkTerms({ ...terms, ...changes } as WarrantyTerms).map(({ code, path }) => `${code} ${path}`);

describe("checkTerms", () => {
  it("finds nothing in complete terms", () => expect(checkTerms(terms)).toEqual([]));

  it.each([
    "prorationOrigin",
    "monthCount",
    "lastCoveredDay",
    "priceBasis",
    "rounding",
    "replacementTerm",
  ] as const)("%s has no default; the issue lists the conventions, and settling throws", (field) => {
    const { [field]: _, ...rest } = terms;
    const [issue, ...others] = checkTerms(rest);
    expect(others).toEqual([]);
    expect(issue).toMatchObject({ code: "missing", path: field, conventions: policyConventions[field] });
    expect(() => settleClaim({ terms: rest as WarrantyTerms, purchase, claimedOn: "2021-01-01" })).toThrow(
      field,
    );
  });

  it("reports everything at once for empty terms, without throwing", () => {
    const found = checkTerms({}).map(({ path }) => path);
    expect(found).toEqual(
      expect.arrayContaining([
        "minorUnitDigits",
        "currency",
        "freeMonths",
        "totalMonths",
        "exclusions",
        "core.depositInExchange",
      ]),
    );
    expect(checkTerms(undefined as never).length).toBe(found.length);
  });

  it.each<[object, string]>([
    [{ monthCount: "lunar" }, "not-a-choice monthCount"],
    [{ totalMonths: 12 }, "inconsistent totalMonths"],
    [{ freeMonths: -1 }, "out-of-range freeMonths"],
    [{ freeMonths: 2.5 }, "out-of-range freeMonths"],
    [{ freeDays: 90 }, "inconsistent freeDays"],
    [{ freeMonths: 0, freeDays: 85, totalMonths: 3 }, "inconsistent freeDays"],
    [{ freeMonths: 0, freeDays: 90, prorationOrigin: "end-of-free-period" }, "inconsistent freeDays"],
    [{ minorUnitDigits: 5 }, "out-of-range minorUnitDigits"],
    [{ cashIncrement: "0.00" }, "out-of-range cashIncrement"],
    [{ cap: "10.005" }, "out-of-range cap"],
    [{ exclusions: ["weather"] }, "not-a-choice exclusions.0"],
    [{ core: { depositInExchange: "due" } }, "missing core.depositAmount"],
    [{ tax: { ratePercent: "7", base: "charge", coreTaxed: true } }, "missing tax.freeReplacementTaxed"],
    [{ tax: { ratePercent: "7", coreTaxed: true, freeReplacementTaxed: false } }, "missing tax.base"],
    [
      { tax: { ratePercent: "7", base: "charge", coreTaxed: true, freeReplacementTaxed: true } },
      "inconsistent tax.freeReplacementTaxed",
    ],
    [{ statutoryFloor: { months: 24 } }, "missing statutoryFloor.scope"],
    [{ useClasses: { taxi: { freeMonths: 6, totalMonths: 3 } } }, "inconsistent useClasses.taxi.totalMonths"],
    [{ stepSchedule: [{ fromMonth: 30, rebatePercent: "50" }] }, "inconsistent stepSchedule.0.fromMonth"],
    [{ stepSchedule: [] }, "out-of-range stepSchedule"],
    [
      {
        stepSchedule: [
          { fromMonth: 24, rebatePercent: "50" },
          { fromMonth: 36, rebatePercent: "60" },
        ],
      },
      "inconsistent stepSchedule.1.rebatePercent",
    ],
  ])("%j", (changes, expected) => expect(paths(changes)).toEqual([expected]));
});
