import type { Estimate } from "../numeric/index.js";

/** Both ratios at one temperature. */
export interface Side {
  readonly celsius: number;
  readonly ability: Estimate;
  readonly demand: Estimate;
}

/** Straight from one number to another. */
export function lerp(from: number, to: number, t: number): number {
  return from + (to - from) * t;
}

/** The side at a temperature inside the range, straight between its neighbours; sides run from warm to cold. */
export function between(sides: readonly Side[], celsius: number): Side {
  let i = 1;
  while (i < sides.length - 1 && celsius < sides[i]!.celsius) i++;
  const cold = sides[i]!;
  const warm = sides[i - 1]!;
  const t = (celsius - cold.celsius) / (warm.celsius - cold.celsius);
  const mix = (from: Estimate, to: Estimate): Estimate => ({
    value: lerp(from.value, to.value, t),
    standardUncertainty: lerp(from.standardUncertainty, to.standardUncertainty, t),
  });
  return { celsius, ability: mix(cold.ability, warm.ability), demand: mix(cold.demand, warm.demand) };
}

/** Amperes of a relative uncertainty, times a ratio with its own. */
export function scaled(amperes: number, relative: number, ratio: number, ratioUncertainty: number): Estimate {
  return {
    value: amperes * ratio,
    standardUncertainty: amperes * Math.hypot(relative * ratio, ratioUncertainty),
  };
}
