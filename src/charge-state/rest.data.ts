/**
 * What a battery did before a voltage was read, and what that does to the voltage. Rows of [from this many hours at
 * rest, shift in V to add to the reading, standard uncertainty in V]. "charge-state-defaults", our choice: the excess
 * (or, after a discharge, the deficit) is taken as rectangular between 0 and the largest that was seen.
 *
 * After charge: 12 V 35 Ah sealed, excess over 13.1 V 1.0 V at 15 min, 0.5 at 1 h, 0.1 at 5 h (a public charging note,
 * read); trade practice 0.1-0.4 V for hours after driving (from memory). Below 15 min nothing bounds it.
 */
export const afterCharge = [
  [24, 0, 0.01],
  [8, -0.03, 0.02],
  [4, -0.075, 0.045],
  [1, -0.15, 0.09],
  [0.25, -0.25, 0.15],
] as const;

/**
 * After discharge: 12 V 17 Ah valve-regulated, deficit 0.10-0.15 V at 10 min, about 0.04 V after an hour (computed from
 * an open record, github.com/valentinsulzer/faster-lead-acid). After a shallow discharge it is about a third; that
 * is not used, because a shift that depends on the result would let a higher reading give a lower charge.
 */
export const afterDischarge = [
  [4, 0, 0.01],
  [1, 0.03, 0.02],
  [1 / 6, 0.08, 0.05],
  [0, 0.125, 0.07],
] as const;

/** Surface charge drawn off by lamps or a load, then 3-10 min without load: ±0.09 V. Workshop manuals, read. */
export const REMOVED_UNCERTAINTY_VOLTS = 0.05;
/** Minutes without load before the voltage has recovered from drawing off surface charge. */
export const REMOVED_WAIT_MINUTES = 3;

/** What is left when nothing moves any more. */
export const SETTLED_UNCERTAINTY_VOLTS = 0.01;

/** History not known: ±0.26 V, rectangular. */
export const UNKNOWN_UNCERTAINTY_VOLTS = 0.15;
