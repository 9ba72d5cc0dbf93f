import { describe, expect, it } from "vitest";
import { createBlockSums } from "../../../src/logs/measure/block-sums.js";
import { seeded } from "./recovery.js";

/** Root mean square of sum/u over many sums of terms that follow each other: 1 where u is right. */
function score(terms: number, make: (random: ReturnType<typeof seeded>) => () => number): number {
  const runs = 1000;
  let squares = 0;
  for (let run = 0; run < runs; run++) {
    const next = make(seeded(run + 1));
    const sums = createBlockSums();
    let sum = 0;
    for (let i = 0; i < terms; i++) {
      const term = next();
      sum += term;
      sums.push(term);
    }
    squares += (sum / sums.standardUncertainty()) ** 2 / runs;
  }
  return Math.sqrt(squares);
}

describe("block sums", () => {
  it("white terms: nearly their plain scatter", () => {
    const white = score(500, (random) => random.normal);
    expect(white).toBeGreaterThan(0.8);
    expect(white).toBeLessThan(1.05);
  });

  it("terms that follow each other count as few", () => {
    const following = score(2000, (random) => {
      let one = 0;
      return () => {
        one = 0.8 * one + random.normal();
        return one;
      };
    });
    expect(following).toBeGreaterThan(0.8);
    // Without blocks it would be √((1 + 0.8)/(1 − 0.8)) = 3.
    expect(following).toBeLessThan(1.1);
  });

  it("under ten terms tell nothing", () => {
    const sums = createBlockSums();
    for (let i = 0; i < 9; i++) sums.push(1);
    expect(sums.standardUncertainty()).toBe(0);
  });
});
