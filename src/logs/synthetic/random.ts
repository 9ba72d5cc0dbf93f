import { wrongArgument } from "../../numeric/index.js";
import { naturalLog } from "./portable.js";

/** Repeatable random numbers. @internal */
export interface Random {
  /** A word of 32 bits, 0..2³² − 1. */
  readonly word: () => number;
  /** Uniform in 0 (included) to 1 (not included), 32 bits. */
  readonly uniform: () => number;
  /** Normal, mean 0, standard deviation 1. */
  readonly normal: () => number;
}

/**
 * xoshiro128++ 1.0, its four words filled by SplitMix64 (Blackman & Vigna, "Scrambled linear pseudorandom number
 * generators", ACM TOMS 47 (2021) 36; both in the public domain; from memory, the constants too). Normal numbers by
 * Marsaglia's polar method (Marsaglia & Bray 1964, from memory).
 *
 * @param seed whole number, 0..2⁵³ − 1
 * @param stream another sequence of the same seed
 * @internal
 */
export function createRandom(seed: number, stream = 0): Random {
  if (!Number.isSafeInteger(seed) || seed < 0) wrongArgument("seed", seed, "a whole number in 0..2^53 - 1");
  const [a, b] = splitMix64(BigInt(seed) + (BigInt(stream) << 53n));
  return fromState(Number(a! & 0xffffffffn), Number(a! >> 32n), Number(b! & 0xffffffffn), Number(b! >> 32n));
}

/** The first two numbers of SplitMix64. @internal */
export function splitMix64(seed: bigint): readonly bigint[] {
  let state = seed;
  return [0, 1].map(() => {
    state = BigInt.asUintN(64, state + 0x9e3779b97f4a7c15n);
    let z = BigInt.asUintN(64, (state ^ (state >> 30n)) * 0xbf58476d1ce4e5b9n);
    z = BigInt.asUintN(64, (z ^ (z >> 27n)) * 0x94d049bb133111ebn);
    return z ^ (z >> 31n);
  });
}

/** xoshiro128++ from its four words. @internal */
export function fromState(first: number, second: number, third: number, fourth: number): Random {
  let [a, b, c, d] = [first | 0, second | 0, third | 0, fourth | 0];
  let spare = Number.NaN;
  const word = (): number => {
    const sum = (a + d) | 0;
    const result = (((sum << 7) | (sum >>> 25)) + a) >>> 0;
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = (d << 11) | (d >>> 21);
    return result;
  };
  const uniform = (): number => word() / 4294967296;
  const normal = (): number => {
    if (!Number.isNaN(spare)) {
      const kept = spare;
      spare = Number.NaN;
      return kept;
    }
    for (;;) {
      const x = word() / 2147483648 - 1;
      const y = word() / 2147483648 - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const factor = Math.sqrt((-2 * naturalLog(square)) / square);
      spare = y * factor;
      return x * factor;
    }
  };
  return { word, uniform, normal };
}
