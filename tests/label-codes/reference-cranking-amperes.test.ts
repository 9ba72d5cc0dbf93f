import { performanceRank, type ReferenceOptions, referenceCrankingAmperes } from "crankworthy/label-codes";
import { isRefusal } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jisList } from "../../src/label-codes/jis-type.data.js";
import type { Derivation } from "../../src/sources/source.js";

function reference(type: string, options?: ReferenceOptions) {
  const result = referenceCrankingAmperes(type, options);
  if (isRefusal(result)) throw new Error(result.code);
  return result;
}

describe("referenceCrankingAmperes", () => {
  it("takes the list for listed types, wide for a battery, narrow for the entry", () => {
    for (const [type, amperes] of Object.entries(jisList)) {
      const battery = reference(`${type}L`);
      expect(battery).toMatchObject({ basis: "list", amperes: { value: amperes } });
      expect(battery.interval.lower / amperes).toBeCloseTo(0.85, 12);
      expect(battery.interval.upper / amperes).toBeCloseTo(1.3, 12);
      const entry = reference(type, { of: "list-entry" });
      expect(entry.interval.upper / amperes).toBeCloseTo(1.04, 12);
      expect(entry.amperes.standardUncertainty / amperes).toBeCloseTo(0.04 / Math.sqrt(3), 12);
    }
  });

  it("turns the asymmetric interval into the root mean square distance of a uniform quantity from the value", () => {
    const { amperes, interval } = reference("55B24L");
    let sum = 0;
    const steps = 10_000;
    for (let i = 0; i < steps; i++) {
      const at = interval.lower + ((i + 0.5) / steps) * (interval.upper - interval.lower);
      sum += (at - amperes.value) ** 2;
    }
    expect(amperes.standardUncertainty).toBeCloseTo(Math.sqrt(sum / steps), 3);
  });

  it("an unlisted type is never surer than a listed one", () => {
    const unlisted = reference("70B24L");
    expect(unlisted).toMatchObject({ basis: "rank-class", amperes: { value: 455 } });
    const listed = reference("65B24L");
    expect(unlisted.amperes.standardUncertainty / 455).toBeGreaterThan(
      listed.amperes.standardUncertainty / listed.amperes.value,
    );
    expect(reference("70B24L", { of: "list-entry" }).interval.lower).toBeCloseTo(455 * 0.9, 9);
  });

  it("the rank relation undoes performanceRank, and its interval holds every current the printed rank allows", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 150, max: 900, noNaN: true }),
        fc.double({ min: 30, max: 200, noNaN: true }),
        (coldCrankingAmperes, reserveCapacityMinutes) => {
          const rank = performanceRank({ coldCrankingAmperes, reserveCapacityMinutes });
          fc.pre(rank >= 20 && rank < 140);
          // Nearest printed rank: even below 50, multiples of 5 from 50 on.
          const printed = rank < 49 ? 2 * Math.round(rank / 2) : Math.max(50, 5 * Math.round(rank / 5));
          const { interval, amperes, basis } = reference(`${printed}D26L`, { reserveCapacityMinutes });
          expect(basis).toBe("reserve-capacity");
          expect(interval.lower).toBeLessThanOrEqual(coldCrankingAmperes * (1 + 1e-9));
          expect(interval.upper).toBeGreaterThanOrEqual(coldCrankingAmperes * (1 - 1e-9));
          expect(performanceRank({ coldCrankingAmperes: amperes.value, reserveCapacityMinutes })).toBeCloseTo(
            printed,
            9,
          );
        },
      ),
    );
  });

  it("reserve capacity serves valve-regulated and unlisted cases too", () => {
    expect(reference("S46B24R", { reserveCapacityMinutes: 60 }).basis).toBe("reserve-capacity");
    expect(referenceCrankingAmperes("S46B24R")).toMatchObject({ code: "rank-class-unknown" });
    expect(referenceCrankingAmperes("145G51")).toMatchObject({ code: "rank-class-unknown" });
    expect(referenceCrankingAmperes("44B20L")).toMatchObject({ code: "rank-class-unknown" });
  });

  it("refuses what is no JIS type, throws on a reserve capacity of 0, derives on request", () => {
    for (const options of [{ labelYear: 2005 }, { labelYear: 1999, reserveCapacityMinutes: 64 }]) {
      expect(referenceCrankingAmperes("55B24L", options)).toMatchObject({ code: "jis-before-2006" });
    }
    expect(reference("55B24L", { labelYear: 2006 }).basis).toBe("list");
    expect(referenceCrankingAmperes("NS60")).toMatchObject({ code: "malformed-code" });
    expect(() => referenceCrankingAmperes("55B24L", { reserveCapacityMinutes: 0 })).toThrow(RangeError);
    const derivation: Derivation = [];
    referenceCrankingAmperes("55B24L", {}, derivation);
    expect(derivation).toMatchObject([{ result: 370, source: "jis-cca-list", standing: "read" }]);
  });
});
