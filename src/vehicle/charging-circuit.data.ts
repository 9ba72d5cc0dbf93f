import type { SourceId } from "../sources/index.js";
import type { LimitRow } from "./limit.js";

/** Temperatures of the regulator's surroundings at which the bands are printed [°C]. */
export const BAND_CELSIUS = [-20, 20, 60, 80] as const;

/** Regulated voltage of a 12 V system at those temperatures: lower ends, upper ends [V]. */
export const REGULATED_BANDS = {
  "first-maker": [[14, 13.7, 13.2, 12.9], [15.1, 14.6, 14.3, 14.1], "workshop-charging-2018"],
  "first-maker-hot-market": [[14.2, 13.9, 13.4, 13.1], [15.4, 14.9, 14.6, 14.5], "workshop-charging-2018"],
  "second-maker": [[14.2, 14, 13.7, 13.5], [15.4, 15, 14.9, 14.7], "workshop-charging-undated"],
} as const satisfies Record<string, readonly [readonly number[], readonly number[], SourceId]>;

/** Which band: one maker's, or the envelope of the three (default). */
export type BandName = keyof typeof REGULATED_BANDS | "envelope";

/** Rise of the charging voltage over the engine-off value [V]. */
export const CHARGING_RISES = {
  "unloaded-at-most": [2.5, 2, 2.5, "vehicle-defaults", "our-choice"],
  "unloaded-at-most-1984": [2, 2, 2, "workshop-truck-1984"],
  "unloaded-at-most-bulletin": [2.5, 2.5, 2.5, "charging-bulletin"],
  "unloaded-at-least": [0.5, 0.5, 0.5, "charging-bulletin"],
  "loaded-at-least": [0.5, 0.5, 0.5, "charging-bulletin"],
} as const satisfies Record<string, LimitRow>;

/** Name of a limit of the rise. */
export type ChargingRiseName = keyof typeof CHARGING_RISES;

/** Where ripple was read. */
export type RipplePlace = "battery-posts" | "alternator-output";
/** How: a meter on AC (its bandwidth and rectifier unknown), true RMS, or peak to peak by oscilloscope. */
export type RippleMethod = "meter-on-ac" | "true-rms" | "peak-to-peak";

// Published ripple limits differ tenfold. The supply test for control units (1-4 V peak to peak, from memory) is no
// limit for a vehicle and is left out. "posts-50-mv" prints "meter on AC, full battery": taken as read at the posts.
// Engine speeds: posts rows 1500 rpm with load, output 250 mV 2000-2500 rpm, 300 mV full load, 500 mV 3000 rpm.
/** Limit [V] with place and method; `null`: the source prints no method. */
export const RIPPLE_LIMITS = {
  "default-look-further": ["battery-posts", "true-rms", [0.1, 0.05, 0.2, "vehicle-defaults", "our-choice"]],
  "default-rectifier-fault": ["battery-posts", "true-rms", [0.5, 0.25, 1, "vehicle-defaults", "our-choice"]],
  "posts-50-mv": ["battery-posts", "meter-on-ac", [0.05, 0.05, 0.1, "ripple-trade-pages"]],
  "posts-90-mv": ["battery-posts", "meter-on-ac", [0.09, 0.09, 0.09, "ripple-oscilloscope-page"]],
  "posts-1-v-spikes": ["battery-posts", "peak-to-peak", [1, 1, 1, "ripple-oscilloscope-page"]],
  "output-250-mv": ["alternator-output", null, [0.25, 0.25, 0.25, "ripple-training-page"]],
  "output-300-mv": ["alternator-output", null, [0.3, 0.3, 0.3, "ripple-flash-cards"]],
  "output-500-mv": ["alternator-output", null, [0.5, 0.5, 0.5, "ripple-dealer-magazine"]],
} as const satisfies Record<string, readonly [RipplePlace, RippleMethod | null, LimitRow]>;

/** Name of a ripple limit: place and figure. */
export type RippleLimitName = keyof typeof RIPPLE_LIMITS;
