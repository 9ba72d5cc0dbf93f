import { type Estimate, requireFinite, wrongArgument } from "../../numeric/index.js";

/** Time by which the current is reported after the voltage of the same moment. */
export interface LagEstimate {
  /** Positive: current comes late [s]. */
  readonly lagSeconds: Estimate;
  /** Share of the voltage's variance that the current explains at the best lag tried, and without a lag (0..1). */
  readonly rSquared: number;
  readonly rSquaredWithoutLag: number;
  /** Time between two rows, and between two lags tried [s]. */
  readonly stepSeconds: number;
  readonly gridSeconds: number;
  /** Windows with a changing load that were used. */
  readonly windows: number;
}

/** Why no lag is given. */
export type LagRefusalCode =
  | "out-of-order"
  | "not-evenly-sampled"
  | "no-change-of-current"
  | "too-few-rows"
  | "no-relation"
  | "at-edge";

/** Lags to try [s]; negative where current comes early. */
export interface LagSecondsRange {
  readonly firstSeconds: number;
  readonly lastSeconds: number;
}

/** @internal */
export function requireLagRange({ firstSeconds, lastSeconds }: LagSecondsRange): void {
  requireFinite("firstSeconds", firstSeconds, -1e6, 1e6);
  requireFinite("lastSeconds", lastSeconds, -1e6, 1e6);
  if (!(firstSeconds < lastSeconds)) wrongArgument("lastSeconds", lastSeconds, `more than ${firstSeconds}`);
}
