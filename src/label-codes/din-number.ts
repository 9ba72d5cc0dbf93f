import type { Refusal } from "../numeric/index.js";
import {
  compact,
  type LabelReading,
  type LabelRefusalCode,
  labelReading,
  malformed,
  readCapacityDigits,
  unlisted,
  writeCapacityDigits,
  written,
  zeroCapacity,
} from "./label-reading.js";

/** What a five-digit DIN number says. */
export interface DinNumberReading extends LabelReading {
  readonly nominalVolts: number;
  readonly capacity: NonNullable<LabelReading["capacity"]>;
  /** Last digits, without further meaning. */
  readonly serial: string;
}

const SOURCE = "number-codes";

/**
 * Reads a five-digit number of DIN 72310 / 72311, the predecessor of the European type number.
 *
 * Scope: 6 V and 12 V; a leading 9 marks semi-traction with the 5 h capacity. It holds no cold current.
 *
 * @param text five digits, blanks and hyphens allowed
 * @returns nominal V and Ah with their rate in h; or a refusal `malformed-code`, `zero-capacity`, `unlisted-code` (series 8)
 * Equation: Ah = first three digits − 500 (12 V) or as they stand (6 V), behind the 9 where there is one.
 * Source: a Dutch supplier's knowledge base, pages on DIN numbers (read).
 * @example
 * ```ts
 * import { isRefusal } from "crankworthy/numeric";
 * import { decodeDinNumber } from "crankworthy/label-codes";
 * const din = decodeDinNumber("574 12");
 * !isRefusal(din) && [din.nominalVolts, din.capacity.ampereHours]; // => [12, 74]
 * ```
 */
export function decodeDinNumber(text: string): DinNumberReading | Refusal<LabelRefusalCode> {
  const match = /^(9?)(\d{3})(\d\d?)$/.exec(compact(text));
  if (!match || compact(text).length !== 5) return malformed("AAASS or 9AAAS, five digits");
  const [digits, semiTraction, size, serial] = match as unknown as [string, string, string, string];
  const read = readCapacityDigits(size);
  if (!read) return unlisted(`series ${size}`);
  if (read.ampereHours === 0) return zeroCapacity();
  return labelReading<DinNumberReading>("din-72310", digits, SOURCE, "read", {
    nominalVolts: read.volts,
    capacity: {
      ampereHours: read.ampereHours,
      rateHours: semiTraction ? 5 : 20,
      source: SOURCE,
      standing: "read",
    },
    serial,
  });
}

/**
 * Writes a five-digit DIN number.
 *
 * @param parts 6 or 12 V, whole Ah at the 20 h rate or, for semi-traction, the 5 h rate, and the serial digits
 * @returns five digits; or a refusal `malformed-code` when a part cannot be written
 * @example
 * ```ts
 * import { formatDinNumber } from "crankworthy/label-codes";
 * formatDinNumber({ nominalVolts: 12, capacity: { ampereHours: 200, rateHours: 20 }, serial: "27" }); // => "70027"
 * ```
 */
export function formatDinNumber(parts: {
  readonly nominalVolts: number;
  readonly capacity: { readonly ampereHours: number; readonly rateHours: number };
  readonly serial: string;
}): string | Refusal<LabelRefusalCode> {
  const { ampereHours, rateHours } = parts.capacity;
  const prefix = rateHours === 5 ? "9" : rateHours === 20 ? "" : "?";
  return written(prefix + writeCapacityDigits(parts.nominalVolts, ampereHours) + parts.serial, /^\d{5}$/);
}
