import type { Say } from "./words.js";

/** How a number is written: a finite value, and how many decimals. */
export type NumberFormat = (value: number, decimals: number) => string;

/** Fixed decimals as a language writes them, digits 0 to 9, a true minus sign, no grouping, no minus zero. */
export function numbersIn(language: string): NumberFormat {
  const formats = new Map<number, Intl.NumberFormat>();
  return (value, decimals) => {
    let format = formats.get(decimals);
    if (!format) {
      format = new Intl.NumberFormat(language, {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
        useGrouping: false,
        numberingSystem: "latn",
        signDisplay: "negative",
      });
      formats.set(decimals, format);
    }
    return format.format(value).replace("-", "−");
  };
}

/** Decimals that a step between ticks needs. */
export function decimalsOfStep(step: number): number {
  return step > 0 ? Math.min(9, Math.max(0, -Math.floor(Math.log10(step) + 1e-9))) : 0;
}

/** Decimals that show about three digits of a number of this size, three at most. */
export function decimalsOfSize(size: number): number {
  const absolute = Math.abs(size);
  return absolute >= 100 ? 0 : absolute >= 10 ? 1 : absolute >= 1 ? 2 : 3;
}

/** A probability as a chance in a hundred or a thousand; never rounded to certainty. */
export function chance(probability: number, say: Say, number: NumberFormat): string {
  if (probability > 0.999) return say("chance.above");
  if (probability < 0.001) return say("chance.below");
  return probability > 0.99 || probability < 0.01
    ? say("chance.thousand", { n: number(1000 * probability, 0) })
    : say("chance.hundred", { n: number(100 * probability, 0) });
}
