import { normalCdf } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";
import { createRandom, fromState, splitMix64 } from "../../../src/logs/synthetic/random.js";

describe("random numbers", () => {
  it("are those published for xoshiro128++ and SplitMix64", () => {
    // First words for the state 1, 2, 3, 4 and numbers for the seed 1477776061723855037: test vectors of the open Rust
    // implementation rand_xoshiro, made with the authors' C code (from memory).
    const random = fromState(1, 2, 3, 4);
    expect(Array.from({ length: 10 }, random.word)).toEqual([
      641, 1573767, 3222811527, 3517856514, 836907274, 4247214768, 3867114732, 1355841295, 495546011,
      621204420,
    ]);
    expect(splitMix64(1477776061723855037n)).toEqual([1985237415132408290n, 2979275885539914483n]);
  });

  it("are normal: moments and tails of 200 000", () => {
    const { normal } = createRandom(7);
    const draws = Array.from({ length: 200_000 }, normal);
    const mean = draws.reduce((a, b) => a + b, 0) / draws.length;
    const variance = draws.reduce((a, b) => a + b * b, 0) / draws.length;
    expect(Math.abs(mean)).toBeLessThan(0.01);
    expect(Math.abs(variance - 1)).toBeLessThan(0.015);
    for (const limit of [-2.5, -1, 0, 0.5, 2]) {
      const share = draws.filter((one) => one < limit).length / draws.length;
      expect(Math.abs(share - normalCdf(limit))).toBeLessThan(0.005);
    }
  });

  it("differ by seed and by stream", () => {
    const first = (seed: number, stream?: number) => createRandom(seed, stream).word();
    expect(new Set([first(0), first(1), first(2), first(1, 1), first(1, 2), first(2 ** 53 - 1)]).size).toBe(
      6,
    );
    expect(first(5)).toBe(first(5));
  });

  it("want a whole seed", () => {
    for (const seed of [-1, 0.5, Number.NaN, 2 ** 53]) expect(() => createRandom(seed)).toThrow(RangeError);
  });
});
