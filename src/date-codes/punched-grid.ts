import type { Derivation } from "../sources/index.js";
import { answer } from "./answer.js";
import { checkWhole, type DecodeWindow, decodeContext } from "./context.js";
import { type Candidate, type DateCodeEvidence, hear } from "./evidence.js";
import { monthPeriod, periodsInside } from "./periods.js";
import type { DateCodeRefusal, DateCodeResult } from "./reading.js";
import { refuseCode } from "./refusals.js";

/** The cells that are punched out or scraped off a sticker. */
export interface PunchedGrid {
  /** 1..12. */
  readonly months: readonly number[];
  /** As printed: 0..9, 0..99 or in full, see `yearDigits`. */
  readonly years: readonly number[];
  /** How many digits of the year the grid prints; default 2. */
  readonly yearDigits?: 1 | 2 | 4;
}

const SCHEME = {
  id: "punched-grid",
  precision: "month",
  source: "date-code-trade-practice",
  standing: "common-practice",
} as const;

/**
 * Reads a sticker on which the month and the year of manufacture are punched out or scraped off.
 *
 * Scope: one grid of months 1..12 and one of years. More than one removed cell gives every combination: damage and date
 * look the same.
 *
 * @param grid removed cells
 * @param options inspection date, accepted age [years], tolerance [days], evidence without a second code
 * @param derivation receives one step per reading
 * @returns as {@link decodeDateCode}, or a refusal: `grid-not-punched`, `outside-window`, `contradicted-by-evidence`
 * @throws RangeError when a month or year is outside its range
 *
 * Source: trade practice without a citable text (`date-code-trade-practice`).
 * @example
 * ```ts
 * import { decodePunchedGrid } from "crankworthy/date-codes";
 * import { isRefusal } from "crankworthy/numeric";
 * const result = decodePunchedGrid({ months: [3], years: [24] }, { inspectedOn: "2025-06-15" });
 * isRefusal(result) ? result.reason : result.readings[0]?.to; // => "2024-03-31"
 * ```
 */
export function decodePunchedGrid(
  grid: PunchedGrid,
  options: DecodeWindow & { readonly evidence?: Omit<DateCodeEvidence, "secondCode"> },
  derivation?: Derivation,
): DateCodeResult | DateCodeRefusal {
  const context = decodeContext(options);
  const { months, years, yearDigits = 2 } = grid;
  const cycle = 10 ** yearDigits;
  if (months.length === 0 || years.length === 0) return refuseCode("grid-not-punched");
  const candidates: Candidate[] = [];
  for (const year of years) {
    checkWhole("years", year, 0, cycle - 1);
    for (const month of months) {
      checkWhole("months", month, 1, 12);
      for (const { fromDay, toDay } of periodsInside(year, cycle, context, monthPeriod, month)) {
        candidates.push({ scheme: { ...SCHEME, yearCycle: cycle }, template: undefined, fromDay, toDay });
      }
    }
  }
  if (candidates.length === 0) return refuseCode("outside-window");
  const text = `${months.join("+")}/${years.join("+")}`;
  return answer(text, candidates, context, hear(options.evidence), [], [], derivation);
}
