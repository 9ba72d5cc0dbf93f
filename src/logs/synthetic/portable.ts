// ECMAScript leaves the last digits of Math.exp, Math.log, Math.sin and ** to the engine. These use only the operations that
// IEEE 754 fixes to the last bit, so that a seed gives the same bytes on every machine.

const { LN2, SQRT1_2 } = Math;
/** ln 2 in two parts: the first has few enough bits that n·LN2_HIGH is exact. */
const LN2_HIGH = 0.6931471803691238; // 33 bits
const LN2_LOW = 1.9082149292705877e-10;

/** 1/0!, 1/1!, … 1/20!. */
const INVERSE_FACTORIALS: readonly number[] = /* @__PURE__ */ (() => {
  const all = [1];
  for (let k = 1; k <= 20; k++) all.push(all[k - 1]! / k);
  return all;
})();

/** e^x for x ≤ 0; 0 below −60, where a sum with anything near 1 notices nothing. @internal */
export function decay(x: number): number {
  if (x < -60) return 0;
  let n = Math.round(x / LN2);
  const r = x - n * LN2_HIGH - n * LN2_LOW;
  let sum = 0;
  for (let k = 13; k >= 0; k--) sum = sum * r + INVERSE_FACTORIALS[k]!;
  for (; n <= -30; n += 30) sum /= 1073741824;
  return sum / (1 << -n);
}

/** ln x for 0 < x ≤ 1. @internal */
export function naturalLog(x: number): number {
  let n = 0;
  let m = x;
  for (; m < SQRT1_2; m *= 2) n--;
  const z = (m - 1) / (m + 1);
  const square = z * z;
  let sum = 0;
  for (let k = 23; k > 0; k -= 2) sum = sum * square + 1 / k;
  return 2 * z * sum + n * LN2;
}

/** sin(2πx). @internal */
export function sineOfTurns(x: number): number {
  let turn = x - Math.round(x);
  if (turn > 0.25) turn = 0.5 - turn;
  else if (turn < -0.25) turn = -0.5 - turn;
  const a = 6.283185307179586 * turn;
  const square = a * a;
  let sum = 0;
  for (let k = 19; k > 0; k -= 2) sum = INVERSE_FACTORIALS[k]! - sum * square;
  return a * sum;
}
