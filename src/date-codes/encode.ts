import { type PlainDate, requireDay } from "../numeric/index.js";
import type { DateSchemeId, WeekRule } from "./scheme.js";
import { schemeNamed } from "./template.js";

/**
 * The code that a product made on this day carries, inverse of {@link decodeDateCode}.
 *
 * @param scheme name of the scheme
 * @param madeOn day of manufacture
 * @param weekRule for the schemes with weeks; default `iso`
 * @throws RangeError for an unknown scheme or a date that is none of the calendar
 * @example
 * ```ts
 * import { encodeDateCode } from "crankworthy/date-codes";
 * encodeDateCode("letter-month-no-i", "2019-02-14"); // => "B9"
 * encodeDateCode("yyww", "2024-12-31"); // => "2501"
 * ```
 */
export function encodeDateCode(scheme: DateSchemeId, madeOn: PlainDate, weekRule: WeekRule = "iso"): string {
  return schemeNamed(scheme).encode(requireDay("madeOn", madeOn), weekRule);
}
