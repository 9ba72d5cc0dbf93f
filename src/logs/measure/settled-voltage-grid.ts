import type { Guess, Readings } from "./settled-voltage-readings.js";

/** One part of a relaxation: how it fades from reading to reading. @internal */
export interface Part {
  readonly logSeconds: number;
  /** −fading at each reading over the reading's uncertainty, and its products with 1, with the readings, with itself. */
  readonly column: Float64Array;
  readonly withOne: number;
  readonly withVolts: number;
  readonly withSelf: number;
  /** −fading at the wanted time. */
  readonly wanted: number;
}

/** What the linear problem of one set of time constants gives. @internal */
export interface Solved {
  readonly parts: readonly Part[];
  readonly chiSquared: number;
  /** Settled voltage, then one amplitude for each part. */
  readonly amplitudes: readonly number[];
  readonly guess: Omit<Guess, "weight">;
}

/** The readings as the linear problem wants them. @internal */
export interface Weighted {
  readonly ones: Float64Array;
  readonly volts: Float64Array;
  /** Volts are counted from here, which keeps their digits. */
  readonly shift: number;
  readonly oneOne: number;
  readonly oneVolts: number;
  readonly voltsVolts: number;
}

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
};

/** @internal */
export function weigh({ volts: readings, uncertainties }: Readings): Weighted {
  const shift = readings[readings.length - 1]!;
  const ones = uncertainties.map((u) => 1 / u);
  const volts = readings.map((one, i) => (one - shift) * ones[i]!);
  return {
    ones,
    volts,
    shift,
    oneOne: dot(ones, ones),
    oneVolts: dot(ones, volts),
    voltsVolts: dot(volts, volts),
  };
}

/** @internal */
export function partOf(
  fading: (seconds: number) => number,
  logSeconds: number,
  seconds: Float64Array,
  weighted: Weighted,
  wanted: number,
): Part {
  const column = seconds.map((time, i) => -fading(time) * weighted.ones[i]!);
  return {
    logSeconds,
    column,
    withOne: dot(column, weighted.ones),
    withVolts: dot(column, weighted.volts),
    withSelf: dot(column, column),
    wanted: -fading(wanted),
  };
}

/**
 * Weighted least squares of settled voltage and amplitudes by their normal equations, two or three; undefined where
 * the parts are not told apart. @internal
 */
export function solveParts(weighted: Weighted, parts: readonly Part[]): Solved | undefined {
  const { shift, oneOne, oneVolts, voltsVolts } = weighted;
  const wanted = [1, ...parts.map((part) => part.wanted)];
  const right = [oneVolts, ...parts.map((part) => part.withVolts)];
  const n = wanted.length;
  // Two right-hand sides: the readings, and the direction of the wanted voltage.
  const rows = wanted.map((_, j) => [
    ...wanted.map((__, k) => {
      const [a, b] = [parts[j - 1], parts[k - 1]];
      if (!a) return b?.withOne ?? oneOne;
      if (!b) return a.withOne;
      return a === b ? a.withSelf : dot(a.column, b.column);
    }),
    right[j]!,
    wanted[j]!,
  ]);
  for (let j = 0; j < n; j++) {
    const self = j === 0 ? oneOne : parts[j - 1]!.withSelf;
    const pivot = rows[j]![j]!;
    if (!(pivot > 1e-11 * self)) return undefined;
    // A positive matrix needs no exchange of rows.
    for (let k = 0; k < n; k++) {
      if (k === j) continue;
      const factor = rows[k]![j]! / pivot;
      for (let c = j; c < n + 2; c++) rows[k]![c] = rows[k]![c]! - factor * rows[j]![c]!;
    }
  }
  const amplitudes = rows.map((row, j) => row[n]! / row[j]!);
  let [chiSquared, value, variance] = [voltsVolts, shift, 0];
  for (let j = 0; j < n; j++) {
    chiSquared -= right[j]! * amplitudes[j]!;
    value += wanted[j]! * amplitudes[j]!;
    variance += (wanted[j]! * rows[j]![n + 1]!) / rows[j]![j]!;
  }
  amplitudes[0] = amplitudes[0]! + shift;
  return {
    parts,
    chiSquared: Math.max(0, chiSquared),
    amplitudes,
    guess: { value, standardUncertainty: Math.sqrt(Math.max(0, variance)) },
  };
}
