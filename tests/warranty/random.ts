/** Uniform numbers in 0..1 from a seed (mulberry32): a failing run can be run again. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** One life drawn from a Weibull distribution, months. */
export const drawLife = (random: () => number, shape: number, scaleMonths: number): number =>
  scaleMonths * (-Math.log(1 - random())) ** (1 / shape);
