import { createBlockSums } from "./block-sums.js";

/** @internal Voltage as a sum of the current of three neighbouring rows. */
export interface ThreeRows {
  /** Sum of the three shares: what a steady current would give [Ω]. */
  readonly ohms: number;
  readonly standardUncertaintyOhms: number;
  /** Centre of the shares in rows from the middle one, within ±1. */
  readonly centre: number;
  readonly standardUncertaintyCentre: number;
  /** Current so many rows from the middle (−1..1), interpolated [A]; NaN where one of the three is missing. */
  readonly mixedAt: (place: number) => Float64Array;
}

/** The bend is fitted where at least this share of its squares is its own. Our choice: of a smooth load less is, of one that jumps every second row a third. */
const OWN_BEND = 0.05;
const OWN_SLOPE = 1e-6;

/**
 * @internal Fits V = E + R·I₀ + R·f·(I₊ − I₋)/2 + q·(I₊ − 2I₀ + I₋), columns with NaN where there is none. Where a load jumps
 * between rows f is the part of a row by which it comes late: the correlation of such a current falls in a straight line with
 * time, and then the best mix of its rows is the straight line between the two neighbours. The bend is left out where it
 * cannot be told from the current itself. Nothing for under 20 rows, a current that is the same in three rows, or a centre beyond them.
 */
export function threeRows(
  volts: Float64Array,
  early: Float64Array,
  middle: Float64Array,
  late: Float64Array,
): ThreeRows | undefined {
  const whole = early.map((one, k) => one + middle[k]! + late[k]!);
  const rows = whole.reduce((count, one) => (Number.isNaN(one) ? count : count + 1), 0);
  if (rows < 20) return undefined;
  const column = (of: (k: number) => number): Float64Array => {
    const picked = new Float64Array(rows);
    let at = 0;
    for (let k = 0; k < whole.length; k++) if (!Number.isNaN(whole[k]!)) picked[at++] = of(k);
    const mean = picked.reduce((sum, one) => sum + one / rows, 0);
    return picked.map((one) => one - mean);
  };
  const voltage = column((k) => volts[k]!);
  const level = column((k) => middle[k]!);
  const slope = column((k) => (late[k]! - early[k]!) / 2);
  const bend = column((k) => early[k]! - 2 * middle[k]! + late[k]!);

  const [l, s, b] = [level, slope, bend].map((one) => Math.sqrt(dot(one, one))) as [number, number, number];
  if (!(l > 0 && s > 0)) return undefined;
  const ls = dot(level, slope) / (l * s);
  const [lb, sb] = b > 0 ? [dot(level, bend) / (l * b), dot(slope, bend) / (s * b)] : [1, 0];
  const ownSlope = 1 - ls * ls;
  if (!(ownSlope > OWN_SLOPE)) return undefined;
  const determinant = ownSlope - lb * lb - sb * sb + 2 * ls * lb * sb;
  const bends = determinant > OWN_BEND * ownSlope;
  // First two rows of the inverse of the correlations.
  const [ll, lsInverse, lbInverse, ss, sbInverse] = bends
    ? [
        (1 - sb * sb) / determinant,
        (lb * sb - ls) / determinant,
        (ls * sb - lb) / determinant,
        (1 - lb * lb) / determinant,
        (ls * lb - sb) / determinant,
      ]
    : [1 / ownSlope, -ls / ownSlope, 0, 1 / ownSlope, 0];
  const bb = bends ? ownSlope / determinant : 0;
  const per = bends ? 1 / b : 0;
  /** What a row pulls at each of the three coefficients, per volt. */
  const pull = (k: number): readonly [number, number, number] => {
    const [x, y, z] = [level[k]! / l, slope[k]! / s, bend[k]! * per];
    return [
      (ll * x + lsInverse * y + lbInverse * z) / l,
      (lsInverse * x + ss * y + sbInverse * z) / s,
      (lbInverse * x + sbInverse * y + bb * z) * per,
    ];
  };
  let [ohms, sloping, bending] = [0, 0, 0];
  for (let k = 0; k < rows; k++) {
    const [x, y, z] = pull(k);
    ohms += x * voltage[k]!;
    sloping += y * voltage[k]!;
    bending += z * voltage[k]!;
  }
  const centre = sloping / ohms;
  if (!(ohms > 0 && Math.abs(centre) <= 1)) return undefined;
  const ofOhms = createBlockSums();
  const ofCentre = createBlockSums();
  for (let k = 0; k < rows; k++) {
    const residual = voltage[k]! - ohms * level[k]! - sloping * slope[k]! - bending * bend[k]!;
    const [x, y] = pull(k);
    ofOhms.push(x * residual);
    ofCentre.push(((y - centre * x) * residual) / ohms);
  }
  const fitted = Math.sqrt(rows / (rows - (bends ? 4 : 3)));
  // Between two changes of the load the lag shows nowhere: with n of them at times of their own it is known to 1/n of a row.
  const jumps = late.reduce(
    (sum, one, k) => sum + (Number.isNaN(whole[k]!) ? 0 : (one - middle[k]!) ** 2),
    0,
  );
  const changes = (rows * jumps) / (2 * l * l);
  return {
    ohms,
    standardUncertaintyOhms: fitted * ofOhms.standardUncertainty(),
    centre,
    standardUncertaintyCentre: Math.hypot(fitted * ofCentre.standardUncertainty(), 1 / Math.max(1, changes)),
    mixedAt: (place) => {
      const other = place < 0 ? early : late;
      const share = Math.abs(place);
      return whole.map((one, k) =>
        Number.isNaN(one) ? Number.NaN : middle[k]! * (1 - share) + other[k]! * share,
      );
    },
  };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!;
  return sum;
}
