import { type Estimate, isRefusal, type Refusal, requireKey } from "../numeric/index.js";
import { derive } from "../sources/derive.js";
import type { Provenance } from "../sources/index.js";
import type { Derivation } from "../sources/source.js";
import { decodeBciGroup } from "./bci-group.js";
import { decodeCaseCode } from "./case-code.js";
import { decodeDinNumber } from "./din-number.js";
import { decodeEtn } from "./etn.js";
import { decodeJisStartStop, decodeJisType } from "./jis-type.js";
import type { LabelReading, LabelRefusalCode, LabelScheme } from "./label-reading.js";

const DECODERS: Readonly<Record<LabelScheme, (text: string) => LabelReading | Refusal<LabelRefusalCode>>> = {
  etn: decodeEtn,
  "din-72310": decodeDinNumber,
  "jis-d-5301": decodeJisType,
  "jis-d-5306": decodeJisStartStop,
  "en-50342-2": decodeCaseCode,
  bci: decodeBciGroup,
};

/**
 * Reads a code printed on a battery.
 *
 * Scope: the scheme must be named; five digits or "48" fit several. Trade names such as "NS60" are not codes.
 *
 * @param code scheme and text as printed
 * @param derivation receives one step per number read, when given
 * @throws RangeError for an unknown scheme
 * @returns what the code says and what it cannot say; or a refusal `malformed-code`, `unlisted-code`, `zero-capacity`
 * @example
 * ```ts
 * import { isRefusal } from "crankworthy/numeric";
 * import { decodeLabelCode } from "crankworthy/label-codes";
 * const label = decodeLabelCode({ scheme: "din-72310", text: "91801" });
 * !isRefusal(label) && [label.nominalVolts, label.capacity?.ampereHours, label.capacity?.rateHours]; // => [6, 180, 5]
 * !isRefusal(label) && label.cannotSay.includes("cold-cranking-amperes"); // => true
 * ```
 */
export function decodeLabelCode(
  code: { readonly scheme: LabelScheme; readonly text: string },
  derivation?: Derivation,
): LabelReading | Refusal<LabelRefusalCode> {
  requireKey("scheme", code.scheme, DECODERS);
  const reading = DECODERS[code.scheme](code.text);
  if (derivation && !isRefusal(reading)) {
    const inputs = { scheme: reading.scheme, code: reading.text };
    const step = (quantity: string, result: number | Estimate, unit: string, by: Provenance) =>
      derive(derivation, quantity, "read from the code", inputs, result, unit, by);
    const {
      capacity,
      rating,
      estimatedRating: estimated,
      performanceRank: rank,
      caseMillimetres: size,
    } = reading;
    if (reading.nominalVolts !== undefined) step("nominal voltage", reading.nominalVolts, "V", reading);
    if (rank !== undefined) step("performance rank", rank, "1", reading);
    if (size)
      for (const side of ["length", "width", "height"] as const)
        step(`case, ${side}`, size[side], "mm", size);
    if (capacity) step(`capacity, ${capacity.rateHours} h`, capacity.ampereHours, "Ah", capacity);
    if (rating) step("rated cranking current", rating.amperes, "A", rating);
    if (estimated) {
      step("reference cranking current", estimated.amperes, "A", estimated);
      step("reference cranking current, lower end", estimated.interval.lower, "A", estimated);
      step("reference cranking current, upper end", estimated.interval.upper, "A", estimated);
    }
  }
  return reading;
}
