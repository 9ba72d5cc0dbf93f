import { normalCdf } from "../../numeric/index.js";

/** Noise further out hardly ever decides [standard deviations]. */
const FAR = 6;
const PARTS = 48;

/**
 * @internal By how much white noise raises the highest of so many rows of a sine, on average [V]; the lowest goes as far the other
 * way. Rows lie evenly over the period's phases. Equation: E(max) − top = ∫₀^∞ (1 − P(top + x)) dx − ∫₀^∞ P(top − x) dx,
 * P(x) = Π Φ((x − sₖ)/σ), by Simpson's rule, after the extreme of independent variables.
 */
export function noiseInPeaks(amplitude: number, noise: number, rows: number): number {
  if (!(noise > 0)) return 0;
  // Depth below the highest of the rows on one side of the top, in standard deviations, rising; each stands for two.
  const depths: number[] = [];
  const highest = Math.cos(Math.PI / rows);
  for (let i = 0; i < rows / 2; i++) {
    const depth = (amplitude * (highest - Math.cos((Math.PI * (2 * i + 1)) / rows))) / noise;
    if (depth > 2 * FAR) break;
    depths.push(depth);
  }
  const belowAll = (x: number): number => {
    let product = 1;
    for (const depth of depths) {
      if (x + depth > FAR) break;
      product *= normalCdf(x + depth) ** 2;
    }
    return product;
  };
  // Above the top 1 − product counts up, below it the product counts down.
  const width = FAR / PARTS;
  let sum = 0;
  for (let i = 0; i <= PARTS; i++) {
    const weight = i === 0 || i === PARTS ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * (1 - belowAll(i * width) - belowAll(-i * width));
  }
  return (noise * sum * width) / 3;
}
