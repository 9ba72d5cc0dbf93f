/** A monotone piecewise cubic through given points; outside the points it returns NaN, never an extrapolation. */
export type Interpolant = (x: number) => number;

/**
 * Shape-preserving cubic interpolation (Fritsch & Butland weights with the one-sided end rule of SciPy's
 * `PchipInterpolator`): monotone data give a monotone curve, without overshoot.
 *
 * @param xs strictly increasing, at least two
 * @param ys same length
 * @returns a function of x; NaN for x outside `xs`
 * @example
 * ```ts
 * import { pchip } from "crankworthy/numeric";
 * const curve = pchip([0, 1, 2, 3], [0, 0, 1, 1]);
 * curve(1.5); // => 0.5
 * curve(4); // => NaN
 * ```
 */
export function pchip(xs: readonly number[], ys: readonly number[]): Interpolant {
  const n = xs.length;
  if (n < 2 || ys.length !== n) throw new RangeError("pchip needs at least two points and as many ys as xs");
  const h = new Float64Array(n - 1);
  const slope = new Float64Array(n - 1);
  for (let i = 0; i < n - 1; i++) {
    h[i] = xs[i + 1]! - xs[i]!;
    if (!(h[i]! > 0)) throw new RangeError("pchip needs strictly increasing xs");
    slope[i] = (ys[i + 1]! - ys[i]!) / h[i]!;
  }
  const d = new Float64Array(n);
  if (n === 2) {
    d[0] = slope[0]!;
    d[1] = slope[0]!;
  } else {
    for (let i = 1; i < n - 1; i++) {
      const before = slope[i - 1]!;
      const after = slope[i]!;
      if (before * after > 0) {
        const w1 = 2 * h[i]! + h[i - 1]!;
        const w2 = h[i]! + 2 * h[i - 1]!;
        d[i] = (w1 + w2) / (w1 / before + w2 / after);
      }
    }
    d[0] = endSlope(h[0]!, h[1]!, slope[0]!, slope[1]!);
    d[n - 1] = endSlope(h[n - 2]!, h[n - 3]!, slope[n - 2]!, slope[n - 3]!);
  }
  return (x) => {
    if (!(x >= xs[0]! && x <= xs[n - 1]!)) return Number.NaN;
    let low = 0;
    let high = n - 2;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (x < xs[middle]!) high = middle - 1;
      else low = middle;
    }
    const width = h[low]!;
    const t = (x - xs[low]!) / width;
    const u = 1 - t;
    return (
      u * u * ((1 + 2 * t) * ys[low]! + t * width * d[low]!) +
      t * t * ((1 + 2 * u) * ys[low + 1]! - u * width * d[low + 1]!)
    );
  };
}

function endSlope(h0: number, h1: number, s0: number, s1: number): number {
  const d = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1);
  if (d * s0 <= 0) return 0;
  if (s0 * s1 < 0 && Math.abs(d) > 3 * Math.abs(s0)) return 3 * s0;
  return d;
}

/**
 * Straight lines between given points.
 *
 * @param xs strictly increasing, at least two
 * @param ys same length
 * @param x where to read
 * @returns the value, NaN outside `xs`
 */
export function interpolateLinear(xs: readonly number[], ys: readonly number[], x: number): number {
  const n = xs.length;
  if (!(x >= xs[0]! && x <= xs[n - 1]!)) return Number.NaN;
  let i = 0;
  while (i < n - 2 && x > xs[i + 1]!) i++;
  const t = (x - xs[i]!) / (xs[i + 1]! - xs[i]!);
  return ys[i]! + t * (ys[i + 1]! - ys[i]!);
}
