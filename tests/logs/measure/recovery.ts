import type { Estimate } from "crankworthy/numeric";

/** Repeatable random numbers (mulberry32): even in 0..1, and normal with standard deviation 1. */
export function seeded(seed: number): { readonly even: () => number; readonly normal: () => number } {
  let state = seed >>> 0;
  const even = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    even,
    normal: () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even()),
  };
}

/** Share of runs whose 95 % interval holds the truth. */
export function coverage(
  runs: number,
  run: (seed: number) => { readonly truth: number; readonly got: Estimate },
): number {
  let held = 0;
  for (let i = 0; i < runs; i++) {
    const { truth, got } = run(1000 + i);
    if (Math.abs(got.value - truth) <= 1.96 * got.standardUncertainty) held++;
  }
  return held / runs;
}

export const rounded = (value: number, step: number): number => Math.round(value / step) * step;
