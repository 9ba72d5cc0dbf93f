import type { LogChannel } from "./quality.js";

/**
 * Numbers that loggers and their programmers write where there is no value: nines, the ends of 16-bit integers in tenths,
 * hundredths and thousandths. Common practice, no document.
 */
const NINES = [99.9, 99.99, 999, 999.9, 999.99, 9999, 9999.9, 9999.99, 99_999];
const INTEGERS = [32_767, 32_768, 65_535].flatMap((one) => [one, one / 10, one / 100, one / 1000]);
const either = (all: readonly number[]) => new Set(all.flatMap((one) => [one, -one]));

/** 0 V is what an open lead or an empty cell of a table reads; 85 °C and −127 °C a digital sensor before its first reading, and without one. */
const SENTINELS: Partial<Record<LogChannel, ReadonlySet<number>>> = {
  volts: either([0, ...NINES, ...INTEGERS]),
  amperes: either([...NINES, ...INTEGERS].filter((one) => one > 300)),
  temperatureCelsius: either([85, 127, ...NINES, ...INTEGERS]),
};

/**
 * @internal A sentinel lies this far from the last value that is none (our choice): 5 V is more than a weak battery falls by
 * between two rows, 100 A with the voltage unmoved is no current, a battery's heat does not change by 20 K between two rows.
 */
export const JUMP: Partial<Record<LogChannel, number>> = { volts: 5, amperes: 100, temperatureCelsius: 20 };

/** Without a value before it, a sentinel is believed from this magnitude on. */
const ALONE: Partial<Record<LogChannel, number>> = { volts: 99, amperes: 999, temperatureCelsius: 99 };

/** A real current of this size moves the voltage by more [V]. */
const UNMOVED_VOLTS = 0.5;

/** @internal True for a number of the list that stands far from the value before it. */
export function isSentinel(name: LogChannel, value: number, before: number, voltsMoved: number): boolean {
  if (!SENTINELS[name]?.has(value)) return false;
  if (Number.isNaN(before)) return Math.abs(value) >= ALONE[name]!;
  if (name === "amperes" && voltsMoved > UNMOVED_VOLTS) return false;
  return Math.abs(value - before) > Math.max(JUMP[name]!, 0.3 * Math.abs(before));
}
