import {
  addMonthsFrom,
  expectedWarrantyCost,
  failureShareBy,
  MEAN_MONTH_DAYS,
  type PromisePolicy,
  partialMeanLifeMonths,
  promiseOf,
  settleClaim,
  type WarrantyCostQuestion,
} from "crankworthy/warranty";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainDate } from "../../src/numeric/index.js";
import { drawLife, seeded } from "./random.js";
import { purchase, terms } from "./terms-for-tests.js";

const shapes = fc.double({ min: 0.2, max: 20, noNaN: true });
const scales = fc.double({ min: 1, max: 500, noNaN: true });
const lengths = fc
  .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 1, max: 200, noNaN: true }))
  .map(([share, totalMonths]) => ({ freeMonths: share * totalMonths, totalMonths }));

const cost = (question: WarrantyCostQuestion): number => expectedWarrantyCost(question).expectedCost.value;
const POLICIES = [
  "pro-rata",
  "combined-from-purchase",
  "combined-from-end-of-free-period",
  "free-replacement",
] as const;

/** Simpson's rule over the middle of the life's distribution function, so that steep densities cause no trouble. */
function simpson(f: (t: number) => number, from: number, to: number, n = 4000): number {
  const h = (to - from) / n;
  let sum = f(from) + f(to);
  for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return (sum * h) / 3;
}

/** Share of the price given back at age t, straight from the definition of each policy. */
const rebate: Record<PromisePolicy, (t: number, w: number, W: number) => number> = {
  "free-replacement": () => 1,
  "pro-rata": (t, _, W) => 1 - t / W,
  "combined-from-purchase": (t, w, W) => (t <= w ? 1 : 1 - t / W),
  "combined-from-end-of-free-period": (t, w, W) => (t <= w ? 1 : (W - t) / (W - w)),
};

describe("expectedWarrantyCost", () => {
  it.each(POLICIES)("%s is the integral of rebate times density", (policy) => {
    for (const [shape, scaleMonths, w, W] of [
      [1, 60, 24, 60],
      [2.5, 60, 24, 72],
      [3.7, 41, 12, 36],
      [8, 50, 6, 60],
    ] as const) {
      const density = (t: number) =>
        t === 0
          ? shape === 1
            ? 1 / scaleMonths
            : 0
          : (shape / t) * (t / scaleMonths) ** shape * Math.exp(-((t / scaleMonths) ** shape));
      const weighted = (t: number) => rebate[policy](t, w, W) * density(t);
      // The jump at w belongs to both pieces' ends.
      const after = (t: number) => (t === w ? rebate[policy](w + 1e-12, w, W) * density(w) : weighted(t));
      const expected = simpson(weighted, 0, w) + simpson(after, w, W);
      const own = policy === "pro-rata" || policy === "free-replacement";
      const question = { shape, scaleMonths, policy, totalMonths: W, ...(!own && { freeMonths: w }) };
      expect(cost(question)).toBeCloseTo(expected, 10);
    }
  });

  it("pro rata has two forms: F(W) − μ(W)/W and the mean of F over the term", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 8, noNaN: true }),
        scales,
        lengths,
        (shape, scaleMonths, { totalMonths }) => {
          const life = { shape, scaleMonths };
          const mean = simpson((t) => failureShareBy(life, t), 0, totalMonths, 20_000) / totalMonths;
          expect(cost({ ...life, policy: "pro-rata", totalMonths })).toBeCloseTo(mean, 6);
        },
      ),
      { numRuns: 30 },
    );
  });

  it("pro rata of an exponential life has a closed form", () => {
    fc.assert(
      fc.property(scales, lengths, (scaleMonths, { totalMonths }) => {
        const x = totalMonths / scaleMonths;
        const closed = 1 + Math.expm1(-x) / x;
        const ours = cost({ shape: 1, scaleMonths, policy: "pro-rata", totalMonths });
        expect(Math.abs(ours - closed)).toBeLessThan(1e-13);
      }),
    );
  });

  it("orders the policies: less is never dearer", () => {
    fc.assert(
      fc.property(shapes, scales, lengths, (shape, scaleMonths, { freeMonths, totalMonths }) => {
        const life = { shape, scaleMonths, totalMonths };
        const costs = POLICIES.map((policy) =>
          cost({ ...life, policy, ...(policy.startsWith("combined") && { freeMonths }) }),
        );
        for (let i = 1; i < costs.length; i++)
          expect(costs[i]! - costs[i - 1]!).toBeGreaterThanOrEqual(-1e-11);
        expect(costs[0]).toBeGreaterThanOrEqual(-1e-14);
        expect(costs.at(-1)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("combined policies end at pro rata and at free replacement", () => {
    fc.assert(
      fc.property(shapes, scales, lengths, (shape, scaleMonths, { totalMonths }) => {
        const life = { shape, scaleMonths, totalMonths };
        const proRata = cost({ ...life, policy: "pro-rata" });
        const free = cost({ ...life, policy: "free-replacement" });
        for (const policy of ["combined-from-purchase", "combined-from-end-of-free-period"] as const) {
          expect(cost({ ...life, policy, freeMonths: 0 })).toBeCloseTo(proRata, 12);
          expect(cost({ ...life, policy, freeMonths: totalMonths })).toBe(free);
        }
      }),
    );
  });

  it.each(["purchase", "end-of-free-period"] as const)(
    "agrees with the mean of settled claims, proration from %s",
    (prorationOrigin) => {
      const random = seeded(20);
      const runs = 3000;
      const policyTerms = { ...terms, prorationOrigin, monthCount: "days" as const };
      const soldOn = "2020-01-15";
      let paid = 0;
      let squares = 0;
      for (let i = 0; i < runs; i++) {
        const days = Math.floor(drawLife(random, 2, 60) * MEAN_MONTH_DAYS);
        if (days > 365 * 6) continue;
        const claimedOn = plainDate(days + 18_276);
        const { rebate = "0" } = settleClaim({
          terms: policyTerms,
          purchase: { ...purchase, soldOn },
          claimedOn,
        });
        const share = Number(rebate) / 120;
        paid += share;
        squares += share * share;
      }
      expect(plainDate(18_276)).toBe(soldOn);
      expect(addMonthsFrom(soldOn, 60)).toBe("2025-01-15");
      const mean = paid / runs;
      const standardError = Math.sqrt((squares / runs - mean * mean) / runs);
      const policy = `combined-from-${prorationOrigin}` as const;
      const ours = cost({ shape: 2, scaleMonths: 60, policy, freeMonths: 24, totalMonths: 60 });
      // Lives were cut to whole days, which is 0.0003 at most.
      expect(Math.abs(mean - ours)).toBeLessThan(3 * standardError + 0.0005);
    },
  );

  it("does not jump where a nearly free term is worked out in another way", () => {
    for (const shape of [0.2, 1, 3, 30]) {
      const at = (freeMonths: number) =>
        cost({
          shape,
          scaleMonths: 60,
          policy: "combined-from-end-of-free-period",
          freeMonths,
          totalMonths: 60,
        });
      const [before, after] = [at(60 * (0.999 - 1e-9)), at(60 * (0.999 + 1e-9))];
      expect(Math.abs(after - before)).toBeLessThan(1e-7);
      expect(at(60 * (1 - 1e-9))).toBeCloseTo(failureShareBy({ shape, scaleMonths: 60 }, 60), 7);
    }
  });

  it("scales with the cost of a replacement, and says whose formula it is", () => {
    const question = {
      shape: 2,
      scaleMonths: 50,
      policy: "combined-from-purchase",
      freeMonths: 18,
      totalMonths: 60,
    } as const;
    const one = expectedWarrantyCost(question);
    const many = expectedWarrantyCost({ ...question, costPerReplacement: 72.5 });
    expect(many.expectedCost.value).toBeCloseTo(72.5 * one.expectedCost.value, 12);
    expect(one.failureShareInFreePeriod).toBe(failureShareBy(question, 18));
    expect(one.failureShareInTerm).toBe(failureShareBy(question, 60));
    expect(one.standing).toBe("computed");
  });

  it("carries the uncertainty of shape and scale, with their correlation", () => {
    const question = { policy: "pro-rata", totalMonths: 60 } as const;
    const shape = { value: 2, standardUncertainty: 0.02 };
    const scaleMonths = { value: 60, standardUncertainty: 0.6 };
    const at = (b: number, eta: number) => cost({ ...question, shape: b, scaleMonths: eta });
    const byShape = ((at(2.0002, 60) - at(1.9998, 60)) / 0.0004) * 0.02;
    const byScale = ((at(2, 60.006) - at(2, 59.994)) / 0.012) * 0.6;
    for (const correlation of [-0.8, 0, 0.35]) {
      const { standardUncertainty } = expectedWarrantyCost({
        ...question,
        shape,
        scaleMonths,
        correlation,
      }).expectedCost;
      const expected = Math.sqrt(byShape ** 2 + byScale ** 2 + 2 * correlation * byShape * byScale);
      expect(standardUncertainty / expected).toBeCloseTo(1, 3);
    }
    expect(
      expectedWarrantyCost({ ...question, shape: 2, scaleMonths: 60 }).expectedCost.standardUncertainty,
    ).toBe(0);
  });

  it.each<[string, Partial<WarrantyCostQuestion>]>([
    ["shape", { shape: 0.05 }],
    ["shape", { shape: Number.NaN }],
    ["scaleMonths", { scaleMonths: 0 }],
    ["totalMonths", { totalMonths: 0 }],
    ["freeMonths", { freeMonths: 61 }],
    ["freeMonths", { policy: "pro-rata" }],
    ["freeMonths", { policy: "free-replacement" }],
    ["policy", { policy: "constructor" as PromisePolicy }],
    ["correlation", { correlation: 1.1 }],
    ["costPerReplacement", { costPerReplacement: -1 }],
    ["shape.standardUncertainty", { shape: { value: 2, standardUncertainty: 3 } }],
  ])("throws naming %s", (name, change) => {
    const sound = {
      policy: "combined-from-purchase",
      shape: 2,
      scaleMonths: 60,
      freeMonths: 24,
      totalMonths: 60,
    } as const;
    expect(() => expectedWarrantyCost({ ...sound, ...change })).toThrow(new RegExp(`^${name}:`));
  });

  it("asks for the free period of a combined policy", () => {
    const question = {
      policy: "combined-from-purchase",
      shape: 2,
      scaleMonths: 60,
      totalMonths: 60,
    } as const;
    expect(() => expectedWarrantyCost(question)).toThrow(/^freeMonths:/);
  });
});

describe("partialMeanLifeMonths", () => {
  it("tends to the mean life: 1 for a scale of 1 and shape 1, √π/2 for shape 2", () => {
    expect(partialMeanLifeMonths({ shape: 1, scaleMonths: 1 }, 1e6)).toBeCloseTo(1, 13);
    expect(partialMeanLifeMonths({ shape: 2, scaleMonths: 1 }, 1e6)).toBeCloseTo(Math.sqrt(Math.PI) / 2, 13);
  });

  it("is 0 at age 0, where nothing has failed", () => {
    expect(partialMeanLifeMonths({ shape: 2, scaleMonths: 60 }, 0)).toBe(0);
    expect(failureShareBy({ shape: 2, scaleMonths: 60 }, 0)).toBe(0);
  });
});

describe("promiseOf", () => {
  it.each([
    [{ freeMonths: 24, totalMonths: 24 }, "free-replacement"],
    [{ freeMonths: 0, totalMonths: 48 }, "pro-rata"],
    [{ freeMonths: 12, totalMonths: 48 }, "combined-from-purchase"],
    [
      { freeMonths: 12, totalMonths: 48, prorationOrigin: "end-of-free-period" },
      "combined-from-end-of-free-period",
    ],
  ] as const)("%j is %s", (change, policy) => {
    const promise = promiseOf({ ...terms, ...change });
    expect(promise).toMatchObject({ policy });
    if ("refused" in promise) throw new Error(promise.reason);
    expect(cost({ ...promise, shape: 2, scaleMonths: 60 })).toBeGreaterThan(0);
  });

  it.each([
    [{ stepSchedule: [{ fromMonth: 0, rebatePercent: "50" }] }],
    [{ freeDays: 90 }],
    [{ useClasses: { taxi: { excluded: true } } }],
    [{ cap: "50.00" }],
  ] as const)("refuses %j", (change) => {
    expect(promiseOf({ ...terms, ...change })).toMatchObject({
      refused: true,
      code: "cost-formula-not-known",
    });
  });
});
