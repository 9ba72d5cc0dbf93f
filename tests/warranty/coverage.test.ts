import { type CoverageQuestion, coverageOn, shelfAge } from "crankworthy/warranty";
import { describe, expect, it } from "vitest";
import { purchase, terms } from "./terms-for-tests.js";

const march = { from: "2024-03-01", to: "2024-03-31" };
const ask = (claimedOn: string, changes: Partial<CoverageQuestion> = {}) =>
  coverageOn({ terms, purchase, claimedOn, ...changes });

describe("coverageOn, with a receipt", () => {
  it.each([
    ["2020-01-15", "free"],
    ["2022-01-15", "free"],
    ["2022-01-16", "prorated"],
    ["2025-01-15", "prorated"],
    ["2025-01-16", "expired"],
  ])("%s: %s", (date, phase) => expect(ask(date).answer).toBe(phase));

  it("day-before ends each period a day earlier", () => {
    const shorter = { terms: { ...terms, lastCoveredDay: "day-before" as const } };
    expect(ask("2022-01-15", shorter).answer).toBe("prorated");
    expect(ask("2025-01-15", shorter).answer).toBe("expired");
  });

  it("no free period: prorated from the first day", () =>
    expect(ask("2020-01-15", { terms: { ...terms, freeMonths: 0 } }).answer).toBe("prorated"));

  it("starts at installation where the terms say so, and anywhere from sale to claim when that day is unknown", () => {
    const fromInstallation = { ...terms, termStart: "installation" as const };
    const known = { ...purchase, installedOn: "2020-06-01" };
    expect(ask("2022-06-01", { terms: fromInstallation, purchase: known }).answer).toBe("free");
    const unknown = ask("2022-06-01", { terms: fromInstallation });
    expect(unknown.answer).toBe("cannot-tell");
    expect(unknown.cases.map(({ phase }) => phase)).toEqual(["prorated", "free"]);
  });

  it("contradicting dates are named, not repaired", () => {
    expect(ask("2019-12-31").reasons).toEqual(["claim-before-start"]);
    expect(ask("2021-01-01", { manufactured: march }).reasons).toEqual(["sold-before-manufacture"]);
    expect(ask("2021-01-01", { manufactured: march }).answer).toBe("cannot-tell");
  });
});

describe("coverageOn, without a receipt", () => {
  const lost = { receipt: false, soldOn: "2024-06-01" };
  const withRule = { ...terms, startWithoutReceipt: { kind: "manufacture-plus-months" as const, months: 6 } };

  it("does not believe a date of sale without proof", () => {
    expect(ask("2025-01-01", { purchase: lost }).reasons).toEqual(["start-not-established"]);
  });

  it("starts at manufacture + months, as an interval; undecided where it straddles a limit", () => {
    const on = (date: string) => ask(date, { terms: withRule, purchase: lost, manufactured: march });
    expect(on("2026-09-01").answer).toBe("free");
    expect(on("2026-09-02").answer).toBe("cannot-tell");
    expect(on("2026-09-30").answer).toBe("cannot-tell");
    expect(on("2026-10-01").answer).toBe("prorated");
    expect(on("2026-09-15").cases.map(({ startedOn, phase }) => [startedOn, phase])).toEqual([
      ["2024-09-01", "prorated"],
      ["2024-09-30", "free"],
    ]);
  });

  it("a claim within the month of manufacture is possible, one before it is not", () => {
    const on = (date: string) => ask(date, { terms: withRule, purchase: lost, manufactured: march });
    expect(on("2024-03-15").answer).toBe("free");
    expect(on("2024-02-29").reasons).toEqual(["claim-before-start"]);
  });

  it("an assumed start later than the claim is the day of the claim, and says so", () => {
    const early = ask("2024-05-01", { terms: withRule, purchase: lost, manufactured: march });
    expect(early.answer).toBe("free");
    expect(early.reasons).toContain("assumed-start-after-claim");
  });
});

describe("conditions beside the dates", () => {
  it.each([
    [198, "within", "free"],
    [180, "cannot-tell", "cannot-tell"],
    [168, "cannot-tell", "cannot-tell"],
    [167, "beyond", "expired"],
  ] as const)("shelf limit %i: %s", (shelfAgeLimitDays, shelf, answer) => {
    const found = ask("2025-01-01", {
      terms: { ...terms, shelfAgeLimitDays },
      purchase: { ...purchase, soldOn: "2024-09-15" },
      manufactured: march,
    });
    expect([found.shelfAge?.answer, found.answer]).toEqual([shelf, answer]);
  });

  it("shelf age within the month of sale starts at zero days", () =>
    expect(shelfAge(march, "2024-03-10", 5)).toEqual({ answer: "cannot-tell", lowerDays: 0, upperDays: 9 }));

  it.each([
    [{ originalBuyerOnly: true }, {}, "cannot-tell", "original-buyer-not-known"],
    [{ originalBuyerOnly: true }, { originalBuyer: false }, "expired", "not-original-buyer"],
    [{ maxClaims: 1 }, {}, "cannot-tell", "claims-so-far-not-known"],
    [{ maxClaims: 1 }, { claimsSoFar: 1 }, "expired", "claim-limit-reached"],
    [
      { useClasses: { taxi: { excluded: true as const } } },
      { useClass: "taxi" },
      "expired",
      "use-class-excluded",
    ],
    [{ useClasses: { taxi: { excluded: true as const } } }, {}, "cannot-tell", "use-class-not-known"],
  ])("%j %j: %s, %s", (policy, facts, answer, reason) => {
    const found = ask("2021-01-01", { terms: { ...terms, ...policy }, purchase: { ...purchase, ...facts } });
    expect(found.answer).toBe(answer);
    expect(found.reasons).toContain(reason);
  });

  it("one sure denial is enough, whatever else is unknown", () => {
    const policy = { ...terms, originalBuyerOnly: true, maxClaims: 1 };
    expect(ask("2021-01-01", { terms: policy, purchase: { ...purchase, originalBuyer: false } }).answer).toBe(
      "expired",
    );
  });

  it("met conditions leave no trace", () => {
    const met = { ...purchase, originalBuyer: true, claimsSoFar: 0, useClass: "private" };
    const policy = {
      ...terms,
      originalBuyerOnly: true,
      maxClaims: 1,
      useClasses: { taxi: { excluded: true as const } },
    };
    expect(ask("2021-01-01", { terms: policy, purchase: met })).toMatchObject({
      answer: "free",
      reasons: [],
    });
  });

  it("use classes have lengths of their own; the unlisted class keeps the general terms", () => {
    const policy = { ...terms, useClasses: { commercial: { freeMonths: 6, totalMonths: 12 } } };
    const on = (useClass: string) =>
      ask("2021-06-01", { terms: policy, purchase: { ...purchase, useClass } }).answer;
    expect([on("commercial"), on("private"), on("toString")]).toEqual(["expired", "free", "free"]);
  });
});

describe("statutory floor", () => {
  const floor = {
    ...terms,
    freeMonths: 6,
    totalMonths: 12,
    statutoryFloor: { months: 24, scope: "consumer" as const },
  };
  const on = (date: string, facts: object) =>
    ask(date, { terms: floor, purchase: { ...purchase, ...facts } });

  it("overrides the terms for a consumer, and says so", () => {
    expect(on("2022-01-15", { buyer: "consumer" })).toMatchObject({
      answer: "free",
      reasons: ["statutory-floor"],
    });
    expect(on("2022-01-16", { buyer: "consumer" }).answer).toBe("expired");
    expect(on("2021-06-01", { buyer: "business" })).toMatchObject({ answer: "expired", reasons: [] });
    expect(on("2021-06-01", {})).toMatchObject({ answer: "cannot-tell", reasons: ["buyer-kind-not-known"] });
  });

  it("is not mentioned while the terms are free anyway", () =>
    expect(on("2020-02-01", { buyer: "consumer" })).toMatchObject({
      answer: "free",
      statutory: "no",
      reasons: [],
    }));

  it("is undecided where the assumed start straddles its end", () => {
    const startWithoutReceipt = { kind: "manufacture-plus-months" as const, months: 6 };
    const lost = { receipt: false, buyer: "consumer" as const };
    const on = (date: string) =>
      ask(date, { terms: { ...floor, startWithoutReceipt }, purchase: lost, manufactured: march }).statutory;
    expect([on("2026-09-01"), on("2026-09-02"), on("2026-09-30"), on("2026-10-01")]).toEqual([
      "yes",
      "cannot-tell",
      "cannot-tell",
      "no",
    ]);
  });

  it("overrides an exceeded shelf age too", () => {
    const found = ask("2025-01-01", {
      terms: { ...floor, shelfAgeLimitDays: 30 },
      purchase: { ...purchase, soldOn: "2024-09-15", buyer: "consumer" },
      manufactured: march,
    });
    expect(found.answer).toBe("free");
    expect(found.reasons).toEqual(["shelf-age-beyond-limit", "statutory-floor"]);
  });
});
