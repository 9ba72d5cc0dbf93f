import type { Refusal } from "../numeric/index.js";
import {
  compact,
  type LabelReading,
  type LabelRefusalCode,
  labelReading,
  malformed,
  readCapacityDigits,
  writeCapacityDigits,
  written,
  zeroCapacity,
} from "./label-reading.js";

/** What a European type number says. */
export interface EtnReading extends LabelReading {
  /** Group A as printed: volts and ampere hours, or a special series. */
  readonly series: string;
  /** Group B: case, layout, posts, hold-down, lid in a central register closed in 2006; not decodable digit by digit. */
  readonly register: string;
  /** From the first digit of the register number; absent when that digit has no known meaning. */
  readonly registration?: "from-din-number" | "new" | "immobilised-electrolyte";
}

/** The parts {@link formatEtn} writes. An {@link EtnReading} is one. */
export type EtnParts = Pick<EtnReading, "register"> &
  Partial<Pick<EtnReading, "series">> & {
    readonly nominalVolts?: number;
    readonly capacity?: { readonly ampereHours: number };
    readonly rating?: { readonly amperes: number };
  };

const REGISTRATION: Readonly<Record<string, EtnReading["registration"]>> = {
  0: "from-din-number",
  1: "new",
  9: "immobilised-electrolyte",
};
const SOURCE = "etn-register";

/**
 * Reads a European type number: nine digits AAA BBB CCC.
 *
 * Scope: 6 V (first digit 0-4; one sheet says 1-2) and 12 V (5-7); 8 and 9 are special series without volts or capacity.
 * The rating is EN with unstated level.
 *
 * @param text nine digits, blanks and hyphens allowed
 * @returns nominal V, Ah at the 20 h rate, A; or a refusal `malformed-code`, `zero-capacity`
 * Equation: Ah = AAA − 500 (12 V) or AAA (6 V); A = 10 × CCC.
 * Source: auto-einbau.de; a Dutch supplier's knowledge base (both read).
 * @example
 * ```ts
 * import { isRefusal } from "crankworthy/numeric";
 * import { decodeEtn } from "crankworthy/label-codes";
 * const etn = decodeEtn("536 046 030");
 * !isRefusal(etn) && [etn.nominalVolts, etn.capacity?.ampereHours, etn.rating?.amperes]; // => [12, 36, 300]
 * ```
 */
export function decodeEtn(text: string): EtnReading | Refusal<LabelRefusalCode> {
  const match = /^(\d{3})((\d)\d\d)(\d{3})$/.exec(compact(text));
  if (!match) return malformed("AAA BBB CCC, nine digits");
  const [, series, register, kind, current] = match as unknown as [string, string, string, string, string];
  const size = readCapacityDigits(series);
  if (size?.ampereHours === 0) return zeroCapacity();
  const amperes = Number(current) * 10;
  return labelReading<EtnReading>("etn", `${series} ${register} ${current}`, SOURCE, "read", {
    series,
    register,
    registration: REGISTRATION[kind],
    nominalVolts: size?.volts,
    capacity: size && {
      ampereHours: size.ampereHours,
      rateHours: 20,
      source: SOURCE,
      standing: "read",
    },
    rating:
      amperes > 0
        ? { amperes, standard: "en-50342-1:unstated", source: "number-codes", standing: "read" }
        : undefined,
  });
}

/**
 * Writes a European type number.
 *
 * @param parts 6 or 12 V, whole Ah 1-499 (6 V) or 1-299 (12 V), register number of three digits, A a multiple of 10 below
 *   10 000; a `series` without volts is written as it is
 * @returns `AAA BBB CCC`; or a refusal `malformed-code` when a part cannot be written
 * @example
 * ```ts
 * import { formatEtn } from "crankworthy/label-codes";
 * const parts = { nominalVolts: 12, capacity: { ampereHours: 105 }, register: "026", rating: { amperes: 600 } };
 * formatEtn(parts); // => "605 026 060"
 * ```
 */
export function formatEtn(parts: EtnParts): string | Refusal<LabelRefusalCode> {
  const { nominalVolts, capacity, rating, register, series } = parts;
  const head = nominalVolts === undefined ? series : writeCapacityDigits(nominalVolts, capacity?.ampereHours);
  const tail = String((rating?.amperes ?? 0) / 10).padStart(3, "0");
  const text = `${head} ${register} ${tail}`;
  return written(text, /^\d{3} \d{3} \d{3}$/);
}
