// First, last, least and greatest value of every stretch of time: a line through those four per pixel column looks
// like the line through all rows. Buckets are whole multiples of a width that is a power of two, so the result depends
// neither on where chunks are cut nor on a time span known in advance: when the rows outgrow the buckets, neighbours
// are merged by two.

/** Values of one channel by bucket; a bucket is empty where `firstSeconds` is NaN. */
export interface Buckets {
  readonly firstSeconds: Float64Array;
  readonly first: Float64Array;
  readonly lastSeconds: Float64Array;
  readonly last: Float64Array;
  readonly leastSeconds: Float64Array;
  readonly least: Float64Array;
  readonly mostSeconds: Float64Array;
  readonly most: Float64Array;
}

export function emptyBuckets(count: number): Buckets {
  const column = () => new Float64Array(count).fill(Number.NaN);
  return {
    firstSeconds: column(),
    first: column(),
    lastSeconds: column(),
    last: column(),
    leastSeconds: column(),
    least: column(),
    mostSeconds: column(),
    most: column(),
  };
}

/** Puts one value into a bucket. Of equal values the earliest stays; of equal times the row that came last is `last`. */
export function put(buckets: Buckets, slot: number, seconds: number, value: number): void {
  const { firstSeconds, lastSeconds, leastSeconds, mostSeconds, first, last, least, most } = buckets;
  // Written so that an empty bucket (NaN) takes everything.
  if (!(seconds >= firstSeconds[slot]!)) {
    firstSeconds[slot] = seconds;
    first[slot] = value;
  }
  if (!(seconds < lastSeconds[slot]!)) {
    lastSeconds[slot] = seconds;
    last[slot] = value;
  }
  if (!(value >= least[slot]!) || (value === least[slot]! && seconds < leastSeconds[slot]!)) {
    leastSeconds[slot] = seconds;
    least[slot] = value;
  }
  if (!(value <= most[slot]!) || (value === most[slot]! && seconds < mostSeconds[slot]!)) {
    mostSeconds[slot] = seconds;
    most[slot] = value;
  }
}

/** Pours a bucket into another one; times decide what is first and last. */
export function merge(from: Buckets, a: number, into: Buckets, b: number): void {
  if (Number.isNaN(from.firstSeconds[a]!)) return;
  // Least and greatest first: they may be the only value of a time, and never change first or last wrongly.
  put(into, b, from.firstSeconds[a]!, from.first[a]!);
  put(into, b, from.leastSeconds[a]!, from.least[a]!);
  put(into, b, from.mostSeconds[a]!, from.most[a]!);
  put(into, b, from.lastSeconds[a]!, from.last[a]!);
}

/** Calls back with the up to four values of a bucket in order of time. */
export function visit(buckets: Buckets, slot: number, point: (seconds: number, value: number) => void): void {
  const { firstSeconds, lastSeconds, leastSeconds, mostSeconds, first, last, least, most } = buckets;
  let time = firstSeconds[slot]!;
  if (Number.isNaN(time)) return;
  let value = first[slot]!;
  point(time, value);
  const next = (nextTime: number, nextValue: number): void => {
    if (nextTime === time && nextValue === value) return;
    time = nextTime;
    value = nextValue;
    point(time, value);
  };
  const leastComesFirst = leastSeconds[slot]! <= mostSeconds[slot]!;
  if (leastComesFirst) next(leastSeconds[slot]!, least[slot]!);
  next(mostSeconds[slot]!, most[slot]!);
  if (!leastComesFirst) next(leastSeconds[slot]!, least[slot]!);
  next(lastSeconds[slot]!, last[slot]!);
}
