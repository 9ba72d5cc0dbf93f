import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createSampler, median, quantile } from "../../../src/logs/check/sampler.js";

describe("sampler", () => {
  it("keeps an even selection of what it is given, all of it while there is room", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), (count) => {
        const sampler = createSampler(64);
        for (let i = 0; i < count; i++) sampler.add(i);
        const kept = sampler.sorted();
        const stride = kept.length > 1 ? kept[1]! - kept[0]! : 1;
        expect(kept).toEqual(kept.map((_, i) => i * stride));
        expect(sampler.seen()).toBe(count);
        if (count <= 64) expect(kept).toHaveLength(count);
        else expect(kept.length).toBeGreaterThanOrEqual(32);
      }),
    );
  });

  it("takes the same of columns, whole or with missing values, as one by one", () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.option(fc.nat(99), { nil: Number.NaN }), { maxLength: 300 })),
        (columns) => {
          const [one, other] = [createSampler(64), createSampler(64)];
          for (const column of columns) {
            one.take(Float64Array.from(column), column.length, !column.some(Number.isNaN));
            for (const value of column) if (!Number.isNaN(value)) other.add(value);
          }
          expect(one.sorted()).toEqual(other.sorted());
          expect(one.seen()).toBe(other.seen());
        },
      ),
    );
  });

  it("median and quantile of few", () => {
    expect(median(Float64Array.of(1, 2, 10))).toBe(2);
    expect(median(Float64Array.of(1, 2, 4, 10))).toBe(3);
    expect(median(new Float64Array(0))).toBeNaN();
    expect(quantile(Float64Array.of(0, 1, 2, 3, 4), 0.75)).toBe(3);
  });
});
