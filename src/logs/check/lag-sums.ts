/** @internal Centred sums of squares and products of a window, one of each per lag tried. */
export interface LagSums {
  readonly vv: Float64Array;
  readonly vi: Float64Array;
  readonly ii: Float64Array;
}

/** @internal */
export interface PooledSums extends LagSums {
  readonly rSquared: (lag: number) => number;
}

function pooled(vv: Float64Array, vi: Float64Array, ii: Float64Array): PooledSums {
  return {
    vv,
    vi,
    ii,
    rSquared: (lag) => {
      const both = vv[lag]! * ii[lag]!;
      return both > 0 ? Math.min(1, vi[lag]! ** 2 / both) : 0;
    },
  };
}

/** @internal Sums over windows: one slope for all, an offset for each. */
export function pool(windows: readonly LagSums[]): PooledSums {
  const add = (name: keyof LagSums) =>
    Float64Array.from(windows[0]![name], (_, lag) => windows.reduce((sum, one) => sum + one[name][lag]!, 0));
  return pooled(add("vv"), add("vi"), add("ii"));
}

/** @internal */
export function withoutWindow(all: LagSums, one: LagSums): PooledSums {
  const less = (name: keyof LagSums) => all[name].map((sum, lag) => sum - one[name][lag]!);
  return pooled(less("vv"), less("vi"), less("ii"));
}

/** @internal The lag of the greatest R², between the lags tried by a parabola through it and its neighbours. */
export function bestLag(sums: PooledSums): {
  readonly place: number;
  readonly rSquared: number;
  readonly atEdge: boolean;
} {
  const last = sums.vv.length - 1;
  let best = 0;
  for (let lag = 1; lag <= last; lag++) if (sums.rSquared(lag) > sums.rSquared(best)) best = lag;
  const rSquared = sums.rSquared(best);
  if (best === 0 || best === last) return { place: best, rSquared, atEdge: true };
  const before = sums.rSquared(best - 1);
  const after = sums.rSquared(best + 1);
  const bend = before - 2 * rSquared + after;
  const shift = bend < 0 ? (0.5 * (before - after)) / bend : 0;
  return { place: best + shift, rSquared, atEdge: false };
}
