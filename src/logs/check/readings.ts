/** Different readings told apart; a noisy meter has more, and is then known to. */
const MOST = 16;

/** @internal How often each of a few different readings comes. */
export interface Readings {
  known: number;
  /** Times that a further reading came. */
  others: number;
  /** Where the last one was found: the same often comes again. */
  at: number;
  readonly values: Float64Array;
  readonly times: Float64Array;
}

/** @internal */
export function createReadings(): Readings {
  return { known: 0, others: 0, at: 0, values: new Float64Array(MOST), times: new Float64Array(MOST) };
}

/** @internal */
export function addReading(all: Readings, value: number, times: number): void {
  const { values, known } = all;
  let at = all.at;
  if (at >= known || values[at] !== value) {
    at = 0;
    while (at < known && values[at] !== value) at++;
    if (at === known) {
      if (known === MOST) {
        all.others += times;
        return;
      }
      values[at] = value;
      all.known++;
    }
    all.at = at;
  }
  all.times[at]! += times;
}

/** @internal */
export function mergeReadings(into: Readings, from: Readings): void {
  for (let i = 0; i < from.known; i++) addReading(into, from.values[i]!, from.times[i]!);
  into.others += from.others;
}

/** @internal The reading that came most often; the first of equals. */
export function commonestReading(all: Readings): number {
  let best = 0;
  for (let i = 1; i < all.known; i++) if (all.times[i]! > all.times[best]!) best = i;
  return all.values[best]!;
}
