/**
 * The bibliography: every coefficient, limit and table row names one of these keys and its standing.
 *
 * @module
 */
import { benchSources } from "./bench.data.js";
import { chargeStateSources } from "./charge-state.data.js";
import { dateCodesSources } from "./date-codes.data.js";
import { ratingsSources } from "./ratings.data.js";
import type { Source, Standing } from "./source.js";
import { temperatureSources } from "./temperature.data.js";
import { vehicleSources } from "./vehicle.data.js";
import { verdictSources } from "./verdict.data.js";
import { warrantySources } from "./warranty.data.js";

export { derive, deriveProbability } from "./derive.js";
export type { Derivation, DerivationStep, Source, Standing } from "./source.js";

/** All sources by key. Keys are stable. */
export const bibliography = {
  ...ratingsSources,
  ...chargeStateSources,
  ...temperatureSources,
  ...dateCodesSources,
  ...benchSources,
  ...vehicleSources,
  ...warrantySources,
  ...verdictSources,
} as const satisfies Record<string, Source>;

/** A key of {@link bibliography}. */
export type SourceId = keyof typeof bibliography;

/** Where a figure comes from and how far it can be trusted. */
export interface Provenance {
  readonly source: SourceId;
  readonly standing: Standing;
}
