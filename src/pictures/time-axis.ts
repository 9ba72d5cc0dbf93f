import { range } from "d3-array";
import { decimalsOfStep } from "./numbers.js";
import type { Sheet } from "./sheet.js";

/** A unit of time with the steps between marks that people count in. */
interface TimeUnit {
  readonly symbol: "s" | "min" | "h" | "d";
  readonly seconds: number;
  readonly steps: readonly number[];
}

const UNITS: readonly TimeUnit[] = [
  { symbol: "s", seconds: 1, steps: [1, 2, 5, 10, 15, 20, 30, 60] },
  { symbol: "min", seconds: 60, steps: [1, 2, 5, 10, 15, 20, 30, 60] },
  { symbol: "h", seconds: 3600, steps: [1, 2, 3, 6, 12, 24] },
  { symbol: "d", seconds: 86_400, steps: [1, 2, 5, 10, 20, 50] },
];

/** The unit a stretch of time is best told in: the largest that it holds three times. */
export function timeUnit(seconds: number): TimeUnit {
  return UNITS.findLast((unit) => seconds >= 3 * unit.seconds) ?? UNITS[0]!;
}

/** A length of time in its unit, about three digits. */
export function duration(sheet: Sheet, seconds: number): string {
  const { symbol, seconds: size } = timeUnit(seconds);
  const value = seconds / size;
  return sheet.quantity(value, value >= 100 ? 0 : value >= 1 || value === 0 ? 1 : 3, symbol);
}

/** A time since the start, in the unit of the axis. */
export function moment(sheet: Sheet, seconds: number, span: number): string {
  const { symbol, seconds: size } = timeUnit(span);
  return sheet.quantity(seconds / size, span / size >= 100 ? 0 : span / size >= 10 ? 1 : 2, symbol);
}

/** Marks from 0 to a span, at most `most` of them; places in seconds. */
export function timeTicks(sheet: Sheet, span: number, most: number): { at: number; text: string }[] {
  const unit = timeUnit(span);
  const whole = span / unit.seconds;
  const wanted = whole / most;
  const magnitude = 10 ** Math.floor(Math.log10(wanted));
  const decimal = [1, 2, 5, 10].map((one) => one * magnitude).find((one) => one >= wanted * 0.999)!;
  const step = wanted > 1 ? (unit.steps.find((one) => one >= wanted) ?? decimal) : decimal;
  // Counted, not added up: the last mark is not lost to rounding.
  return range(Math.floor(whole / step + 1e-9) + 1).map((i) => ({
    at: i * step * unit.seconds,
    text: sheet.number(i * step, decimalsOfStep(step)),
  }));
}
