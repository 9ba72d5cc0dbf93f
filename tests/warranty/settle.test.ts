import {
  type Claim,
  type LastCoveredDay,
  type MoneyRounding,
  type MonthCount,
  type ProrationOrigin,
  type Purchase,
  settleClaim,
  type WarrantyTerms,
} from "crankworthy/warranty";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { purchase, terms } from "./terms-for-tests.js";

const settle = (
  claimedOn: string,
  policy: Partial<WarrantyTerms> = {},
  facts: Partial<Purchase> = {},
  rest: Partial<Claim> = {},
) => settleClaim({ terms: { ...terms, ...policy }, purchase: { ...purchase, ...facts }, claimedOn, ...rest });

const amounts = (settlement: ReturnType<typeof settle>) =>
  settlement.lines.map(({ kind, amount }) => `${kind} ${amount}`);

const claimable = { answer: "claimable", evidence: ["rejection-certain-enough"] } as const;

describe("ledger", () => {
  it("prorated: 36 of 60 months used", () => {
    const found = settle("2023-01-15", {}, {}, { eligibility: claimable });
    expect(found).toMatchObject({
      outcome: "prorated",
      startedOn: "2020-01-15",
      lastCoveredDay: "2025-01-15",
    });
    expect(found.elapsed).toEqual({ used: 36, whole: 60, unit: "months" });
    expect(amounts(found)).toEqual(["basis 120.00", "rebate 48.00", "charge 72.00", "total 72.00"]);
    expect(found.reasons).toEqual(["within-prorated-period"]);
    expect(found.lines[1]?.explanation).toMatchObject({
      code: "prorated-from-purchase",
      formula: "120.00 × (60 − 36) / 60",
      source: "ca-18-ccr-3210",
      standing: "read",
    });
  });

  it("the origin decides: 24 of the 36 months after the free period are left", () =>
    expect(amounts(settle("2023-01-15", { prorationOrigin: "end-of-free-period" })).slice(0, 3)).toEqual([
      "basis 120.00",
      "rebate 80.00",
      "charge 40.00",
    ]));

  it("free: nothing charged, with or without a known price", () => {
    expect(amounts(settle("2021-01-15"))).toEqual([
      "basis 120.00",
      "rebate 120.00",
      "charge 0.00",
      "total 0.00",
    ]);
    const { pricePaid: _, ...noPrice } = purchase;
    const found = settleClaim({ terms, purchase: noPrice, claimedOn: "2021-01-15" });
    expect([found.outcome, found.total]).toEqual(["free-replacement", "0.00"]);
  });

  it("prorated without the basis price: cannot tell, with the reason", () => {
    const found = settle("2023-01-15", { priceBasis: "list-today" });
    expect(found).toMatchObject({ outcome: "cannot-tell", lines: [], elapsedMonths: 36 });
    expect(found.reasons).toContain("basis-price-missing");
  });

  it("days: the share of days, 366 + 365 + 365 of 1827", () => {
    const found = settle("2023-01-15", { monthCount: "days" });
    expect(found.elapsed).toEqual({ used: 1096, whole: 1827, unit: "days" });
    expect(found.rebate).toBe("48.01");
  });

  it("free days and days counted: 90 free of 366 + 365, 100 used", () => {
    const policy = { freeMonths: 0, freeDays: 90, totalMonths: 24, monthCount: "days" } as const;
    const facts = { pricePaid: "641.00" };
    expect(settle("2020-04-14", policy, facts).outcome).toBe("free-replacement");
    const fromEnd = settle("2020-04-24", { ...policy, prorationOrigin: "end-of-free-period" }, facts);
    expect(fromEnd.elapsed).toEqual({ used: 100, whole: 731, unit: "days" });
    expect(fromEnd.rebate).toBe("631.00");
    expect(settle("2020-04-24", policy, facts).rebate).toBe("553.31");
  });

  it("step schedule: the step begun counts, no interpolation", () => {
    const stepSchedule = [
      { fromMonth: 24, rebatePercent: "50" },
      { fromMonth: 36, rebatePercent: "25" },
      { fromMonth: 48, rebatePercent: "12.5" },
    ];
    const rebate = (date: string) => settle(date, { stepSchedule }).rebate;
    expect(["2022-01-16", "2023-01-14", "2023-01-15", "2025-01-15"].map(rebate)).toEqual([
      "60.00",
      "60.00",
      "30.00",
      "15.00",
    ]);
  });

  it("cap limits the rebate, and the charge takes the rest", () => {
    const found = settle("2023-01-15", { cap: "40.00" });
    expect(amounts(found).slice(1, 3)).toEqual(["rebate 40.00", "charge 80.00"]);
    expect(found.reasons).toContain("cap-applied");
    expect(found.lines[1]).toMatchObject({
      amount: "40.00",
      explanation: { formula: "min(40.00, 120.00 × (60 − 36) / 60)" },
    });
    expect(settle("2023-01-15", { cap: "40.5" }).lines[1]?.explanation.formula).toMatch(/^min\(40\.50, /);
    expect(settle("2023-01-15", { cap: "48.00" }).lines[1]?.explanation.formula).toBe(
      "120.00 × (60 − 36) / 60",
    );
    expect(settle("2023-01-15", { cap: "48.00" }).reasons).not.toContain("cap-applied");
  });

  it("a replacement cheaper than the rebate leaves an amount in the customer's favour, untaxed and named", () => {
    const tax = { ratePercent: "10", base: "charge", coreTaxed: false, freeReplacementTaxed: false } as const;
    const found = settle("2023-01-15", { tax }, { replacementPrice: "30.00" });
    expect(amounts(found).slice(2)).toEqual(["charge -18.00", "tax 0.00", "total -18.00"]);
    expect(found.reasons).toContain("rebate-exceeds-replacement-price");
  });

  it("currencies without and with three digits", () => {
    expect(settle("2023-02-15", { currency: "JPY", minorUnitDigits: 0 }, { pricePaid: "9999" }).rebate).toBe(
      "3833",
    );
    expect(settle("2023-02-15", { currency: "KWD", minorUnitDigits: 3 }, { pricePaid: "9.999" }).rebate).toBe(
      "3.833",
    );
  });
});

describe("core", () => {
  const core = (depositInExchange: "waived" | "due", coreReturned?: boolean) => {
    const facts = coreReturned === undefined ? {} : { coreReturned };
    const found = settle("2023-01-15", { core: { depositAmount: "7.00", depositInExchange } }, facts);
    return [
      amounts(found)
        .filter((line) => line.startsWith("core"))
        .join(),
      found.rebate,
      found.total,
    ];
  };
  it.each([
    ["waived", undefined, ["core 0.00", "48.00", "72.00"]],
    ["waived", false, ["core 7.00", "48.00", "79.00"]],
    ["due", undefined, ["core 7.00", "48.00", "79.00"]],
    ["due", true, ["core 7.00,core -7.00", "48.00", "72.00"]],
  ] as const)("%s, returned %s", (policy, returned, expected) =>
    expect(core(policy, returned)).toEqual(expected),
  );

  it.each([
    ["due", undefined, ["core-not-known"]],
    ["due", true, []],
    ["due", false, ["core-not-returned"]],
    ["waived", undefined, []],
  ] as const)("%s, returned %s: reasons %j", (depositInExchange, coreReturned, expected) => {
    const facts = coreReturned === undefined ? {} : { coreReturned };
    const { reasons } = settle("2023-01-15", { core: { depositAmount: "7.00", depositInExchange } }, facts);
    expect(reasons.filter((one) => one.startsWith("core-"))).toEqual(expected);
  });
});

describe("tax", () => {
  const tax = { ratePercent: "8.25", base: "charge", coreTaxed: false, freeReplacementTaxed: false } as const;
  const retained = { ...tax, base: "charge-plus-retained-value" } as const;
  const taxOf = (date: string, policy: Partial<WarrantyTerms>, facts: Partial<Purchase> = {}) =>
    amounts(settle(date, policy, facts)).find((line) => line.startsWith("tax"));

  it("on the charge; on the charge and the value kept", () => {
    expect(taxOf("2023-01-15", { tax })).toBe("tax 5.94");
    expect(taxOf("2023-01-15", { tax: retained }, { retainedValue: "10.00" })).toBe("tax 6.77");
  });
  it("on the core only where it is taxed, also when it is refunded afterwards", () => {
    const core = { depositAmount: "20.00", depositInExchange: "due" } as const;
    expect(taxOf("2023-01-15", { tax, core })).toBe("tax 5.94");
    expect(taxOf("2023-01-15", { tax: { ...tax, coreTaxed: true }, core }, { coreReturned: true })).toBe(
      "tax 7.59",
    );
  });
  it("nothing charged, nothing taxed, unless the policy says so", () => {
    const kept = { retainedValue: "10.00" };
    expect(taxOf("2021-01-15", { tax: retained }, kept)).toBe("tax 0.00");
    expect(taxOf("2021-01-15", { tax: { ...retained, freeReplacementTaxed: true } }, kept)).toBe("tax 0.83");
  });
  it("an unknown value kept: cannot tell", () =>
    expect(settle("2023-01-15", { tax: retained }).reasons).toContain("retained-value-missing"));
});

describe("cash", () => {
  it("rounds the total once, in a line of its own, only for cash", () => {
    const policy = { cashIncrement: "0.05", rounding: "half-even" } as const;
    const facts = { pricePaid: "100.01" };
    expect(amounts(settle("2023-01-15", policy, facts, { paidInCash: true })).slice(2)).toEqual([
      "charge 60.01",
      "cash-rounding -0.01",
      "total 60.00",
    ]);
    expect(settle("2023-01-15", policy, facts).total).toBe("60.01");
  });
});

describe("undecided and overridden", () => {
  const lost = { receipt: false } as const;
  const startWithoutReceipt = { kind: "manufacture-plus-months", months: 6 } as const;
  const manufactured = { from: "2020-03-01", to: "2020-03-31" };

  it("an interval that straddles the end of the free period gives both settlements", () => {
    const found = settle("2022-09-15", { startWithoutReceipt }, lost, { manufactured });
    expect(found).toMatchObject({ outcome: "cannot-tell", lines: [] });
    expect(found.total).toBeUndefined();
    expect(found.alternatives?.lower).toMatchObject({
      outcome: "prorated",
      charge: "48.00",
      startedOn: "2020-09-01",
    });
    expect(found.alternatives?.upper).toMatchObject({ outcome: "free-replacement", startedOn: "2020-09-30" });
  });

  it("one phase, two amounts: still undecided", () => {
    const { alternatives, outcome } = settle("2023-09-15", { startWithoutReceipt }, lost, { manufactured });
    expect(outcome).toBe("cannot-tell");
    expect([alternatives?.lower.rebate, alternatives?.upper.rebate]).toEqual(["48.00", "50.00"]);
  });

  it("two starts, one result: settled, and no start is claimed to be known", () => {
    const found = settle("2022-01-10", { startWithoutReceipt }, lost, { manufactured });
    expect(found.outcome).toBe("free-replacement");
    expect(found.startedOn).toBeUndefined();
    expect(found.elapsedMonths).toBeUndefined();
    expect([found.alternatives?.lower.startedOn, found.alternatives?.upper.startedOn]).toEqual([
      "2020-09-01",
      "2020-09-30",
    ]);
  });

  it("undecided shelf age: denied or settled", () => {
    const facts = { soldOn: "2020-09-15" };
    const found = settle("2023-10-01", { shelfAgeLimitDays: 180 }, facts, { manufactured });
    expect(found.shelfAge).toEqual({ answer: "cannot-tell", lowerDays: 168, upperDays: 198 });
    expect([found.alternatives?.lower.outcome, found.alternatives?.upper.outcome]).toEqual([
      "not-covered",
      "prorated",
    ]);
  });

  it("statutory floor: no charge after the commercial term, with scope and citation in the explanation", () => {
    const statutoryFloor = { months: 24, scope: "consumer", citation: "national sale of goods act" } as const;
    const found = settle(
      "2021-10-01",
      { freeMonths: 3, totalMonths: 12, statutoryFloor },
      { buyer: "consumer" },
    );
    expect(found).toMatchObject({ outcome: "free-replacement", total: "0.00", lastCoveredDay: "2022-01-15" });
    expect(found.reasons).toContain("statutory-floor");
    expect(found.lines[1]?.explanation).toMatchObject({
      code: "statutory-floor",
      parameters: { months: 24, scope: "consumer", citation: "national sale of goods act" },
    });
    const unknown = settle("2021-10-01", { freeMonths: 3, totalMonths: 12, statutoryFloor });
    expect([unknown.alternatives?.lower.outcome, unknown.alternatives?.upper.outcome]).toEqual([
      "not-covered",
      "free-replacement",
    ]);
  });

  it("a floor within the term leaves the term's last day", () => {
    const found = settle("2021-10-01", { freeMonths: 3, statutoryFloor: { months: 24, scope: "anyone" } });
    expect(found).toMatchObject({ outcome: "free-replacement", lastCoveredDay: "2025-01-15" });
  });

  describe("damage the terms exclude, within a statutory period", () => {
    const statutoryFloor = { months: 24, scope: "consumer", citation: "national sale of goods act" } as const;
    const damaged = (
      claimedOn: string,
      facts: Partial<Purchase> = { buyer: "consumer" },
      evidence: NonNullable<Claim["eligibility"]>["evidence"] = ["low-electrolyte"],
      policy: Partial<WarrantyTerms> = { statutoryFloor },
    ) => settle(claimedOn, policy, facts, { eligibility: { answer: "excluded", evidence } });

    it.each([
      "low-electrolyte",
      "wrong-application",
      "altered-date-code",
      "physical-damage",
      "freeze-damage",
    ] as const)("%s is for the law to judge", (damage) => {
      const found = damaged("2021-10-01", undefined, [damage]);
      expect(found.outcome).toBe("cannot-tell");
      expect(found.reasons).toEqual(["statutory-floor-may-apply", "excluded", damage]);
      const { lower, upper } = found.alternatives!;
      expect(lower).toMatchObject({ outcome: "not-covered", reasons: ["excluded", damage] });
      expect(upper).toMatchObject({
        outcome: "free-replacement",
        total: "0.00",
        reasons: ["statutory-floor"],
      });
      expect(upper.lines[1]?.explanation).toMatchObject({
        code: "statutory-floor",
        parameters: { months: 24, citation: "national sale of goods act" },
      });
    });

    it("the law is named also without a price", () => {
      const found = settle(
        "2021-10-01",
        { statutoryFloor },
        { buyer: "consumer", pricePaid: undefined } as never,
        { eligibility: { answer: "excluded", evidence: ["low-electrolyte"] } },
      );
      expect(found.alternatives!.upper.lines[0]).toMatchObject({
        kind: "charge",
        explanation: { code: "statutory-floor", parameters: { citation: "national sale of goods act" } },
      });
    });

    it("the last day of the period still, the next no more", () => {
      expect(damaged("2022-01-15").outcome).toBe("cannot-tell");
      expect(damaged("2022-01-16")).toMatchObject({
        outcome: "not-covered",
        reasons: ["excluded", "low-electrolyte"],
      });
    });

    it("a business buyer has none, an unknown buyer is a further question", () => {
      expect(damaged("2021-10-01", { buyer: "business" }).outcome).toBe("not-covered");
      expect(damaged("2021-10-01", {}).reasons).toEqual([
        "statutory-floor-may-apply",
        "excluded",
        "low-electrolyte",
        "buyer-kind-not-known",
      ]);
    });

    it("without a defect there is nothing for the law to judge", () =>
      expect(damaged("2021-10-01", undefined, ["no-defect-found"]).outcome).toBe("not-covered"));

    it("without a start the period is not ruled out", () => {
      const found = damaged("2021-10-01", { ...lost, buyer: "consumer" });
      expect(found.outcome).toBe("cannot-tell");
      expect(found.reasons[0]).toBe("statutory-floor-may-apply");
      expect(found.alternatives).toBeUndefined();
    });

    it("without a floor the terms decide", () =>
      expect(damaged("2021-10-01", undefined, undefined, {}).outcome).toBe("not-covered"));
  });

  it("a month begun on the anniversary counts where the old one ended the day before", () => {
    const used = (lastCoveredDay: LastCoveredDay, claimedOn: string) =>
      settle(claimedOn, { monthCount: "started", lastCoveredDay }).elapsed?.used;
    expect(used("anniversary", "2022-01-15")).toBe(24);
    expect(used("day-before", "2022-01-14")).toBe(24);
    expect(used("day-before", "2022-01-15")).toBe(25);
  });

  it("statutory floor overrides an excluded use class", () => {
    const policy = {
      useClasses: { taxi: { excluded: true as const } },
      statutoryFloor: { months: 24, scope: "anyone" as const },
    };
    expect(settle("2021-10-01", policy, { useClass: "taxi" }).outcome).toBe("free-replacement");
  });

  it("not yet claimable: what it would come to stands in the alternatives", () => {
    const eligibility = { answer: "not-yet", evidence: ["recharge-and-test-again"] } as const;
    const found = settle("2023-01-15", {}, {}, { eligibility });
    expect(found.outcome).toBe("cannot-tell");
    expect(found.reasons).toEqual(["not-yet-claimable", "recharge-and-test-again"]);
    expect(found.alternatives?.upper.charge).toBe("72.00");
  });

  it("expired and not yet claimable is expired", () => {
    const eligibility = { answer: "not-yet", evidence: ["recharge-and-test-again"] } as const;
    const found = settle("2026-01-15", {}, {}, { eligibility });
    expect(found).toMatchObject({ outcome: "not-covered", startedOn: "2020-01-15" });
    expect(found.alternatives).toBeUndefined();
  });

  it("no start: cannot tell, unless a condition denies cover anyway", () => {
    expect(settle("2023-01-15", {}, lost)).toMatchObject({ outcome: "cannot-tell", lines: [] });
    const policy = { maxClaims: 1 };
    expect(settle("2023-01-15", policy, { ...lost, claimsSoFar: 1 }).outcome).toBe("not-covered");
    const floor = { ...policy, statutoryFloor: { months: 24, scope: "anyone" as const } };
    expect(settle("2023-01-15", floor, { ...lost, claimsSoFar: 1 }).outcome).toBe("cannot-tell");
  });
});

describe("what is no date or no amount", () => {
  it.each<[object, object, RegExp]>([
    [{ claimedOn: "2023-02-29" }, {}, /claimedOn: received 2023-02-29/],
    [{ manufactured: { from: "2020", to: "2020-01-31" } }, {}, /manufactured.from/],
    [{ manufactured: { from: "2020-02-01", to: "2020-01-01" } }, {}, /from ≤ to/],
    [{}, { soldOn: "15.01.2020" }, /soldOn/],
    [{}, { pricePaid: "120,00" }, /purchase.pricePaid: received 120,00/],
    [{}, { replacementPrice: "-5.00" }, /purchase.replacementPrice/],
  ])("%j %j", (claim, facts, message) => {
    expect(() => settle("2023-01-15", {}, facts, claim)).toThrow(message);
  });
});

describe("cover of the replacement", () => {
  it("remaining or new, by the terms", () => {
    expect(settle("2023-01-20").replacementCover).toEqual({
      startsOn: "2023-01-20",
      lastCoveredDay: "2025-01-15",
    });
    expect(settle("2023-01-20", { replacementTerm: "new" }).replacementCover?.lastCoveredDay).toBe(
      "2028-01-20",
    );
  });
});

describe("derivation", () => {
  it("is filled only when asked for and changes nothing", () => {
    const steps: never[] = [];
    const claim = { terms, purchase, claimedOn: "2023-01-15" };
    expect(settleClaim(claim, steps)).toEqual(settleClaim(claim));
    expect(steps.map(({ quantity, result }) => [quantity, result])).toEqual([
      ["elapsed months", 36],
      ["basis", "120.00"],
      ["rebate", "48.00"],
      ["charge", "72.00"],
      ["total", "72.00"],
    ]);
  });
});

describe("properties", () => {
  const minor = (text: string) => BigInt(text.replace(".", ""));
  const policies = fc.record({
    minorUnitDigits: fc.integer({ min: 0, max: 4 }),
    freeMonths: fc.integer({ min: 0, max: 36 }),
    totalMonths: fc.integer({ min: 36, max: 84 }),
    prorationOrigin: fc.constantFrom<ProrationOrigin>("purchase", "end-of-free-period"),
    monthCount: fc.constantFrom<MonthCount>(
      "completed-clamped",
      "completed-day-of-month",
      "started",
      "calendar",
      "days",
    ),
    lastCoveredDay: fc.constantFrom<LastCoveredDay>("anniversary", "day-before"),
    rounding: fc.constantFrom<MoneyRounding>("half-up", "half-even"),
  });
  const prices = fc.oneof(fc.constantFrom(0n, 1n, 10n ** 12n), fc.bigInt({ min: 0n, max: 10n ** 15n }));
  const dayText = (n: number) => new Date(n * 86_400_000).toISOString().slice(0, 10);

  it("rebate + charge = price, 0 ≤ rebate ≤ price, and the lines add up to the total", () => {
    fc.assert(
      fc.property(
        policies,
        prices,
        fc.integer({ min: 10_000, max: 20_000 }),
        fc.integer({ min: 0, max: 2700 }),
        fc.boolean(),
        (policy, price, sold, used, paidInCash) => {
          const text = price.toString().padStart(policy.minorUnitDigits + 1, "0");
          const cut = text.length - policy.minorUnitDigits;
          const pricePaid = policy.minorUnitDigits === 0 ? text : `${text.slice(0, cut)}.${text.slice(cut)}`;
          const found = settle(
            dayText(sold + used),
            {
              ...policy,
              cashIncrement: "5",
              core: { depositAmount: "7", depositInExchange: "due" },
              tax: { ratePercent: "7.7", base: "charge", coreTaxed: true, freeReplacementTaxed: false },
            },
            { soldOn: dayText(sold), pricePaid, coreReturned: true },
            { paidInCash },
          );
          if (found.outcome === "not-covered") return;
          expect(found.outcome).toBe(
            found.reasons[0] === "within-free-period" ? "free-replacement" : "prorated",
          );
          const rebate = minor(found.rebate!);
          expect(rebate + minor(found.charge!)).toBe(price);
          expect(rebate >= 0n && rebate <= price).toBe(true);
          const paid = found.lines.filter(({ kind }) => !["basis", "rebate", "total"].includes(kind));
          expect(paid.reduce((sum, { amount }) => sum + minor(amount), 0n)).toBe(minor(found.total!));
          for (const { amount } of found.lines) {
            expect(amount).toMatch(
              new RegExp(`^-?\\d+${policy.minorUnitDigits ? `\\.\\d{${policy.minorUnitDigits}}` : ""}$`),
            );
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it("the rebate never rises with time", () => {
    fc.assert(
      fc.property(
        policies,
        fc.integer({ min: 10_000, max: 20_000 }),
        fc.integer({ min: 0, max: 2700 }),
        fc.nat(60),
        (policy, sold, used, later) => {
          const rebate = (days: number) =>
            Number(
              settle(dayText(sold + days), policy, { soldOn: dayText(sold), pricePaid: "100" }).rebate ?? 0,
            );
          expect(rebate(used + later)).toBeLessThanOrEqual(rebate(used));
        },
      ),
    );
  });
});
