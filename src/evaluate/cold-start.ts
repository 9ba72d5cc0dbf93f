import { isRefusal, multiply } from "../numeric/index.js";
import { convertRating } from "../ratings/index.js";
import { type ColdStart, type ColdStartInput, coldStartMargin } from "../temperature/index.js";
import type { AbilitySection, IdentitySection } from "./evaluation.js";
import type { RecordRequirement } from "./record.js";
import { note, refused, type Workbook } from "./workbook.js";

/** Standard uncertainty of a stated engine demand, as a fraction. Our choice. */
const DEMAND_UNCERTAINTY = 0.1;

/** Will it start this engine on the coldest morning: ability today, carried to −18 °C terms, against the demand. */
export function coldStart(
  requirement: RecordRequirement,
  { rating }: IdentitySection,
  ability: AbilitySection | undefined,
  book: Workbook,
): ColdStart | undefined {
  if (!ability || !rating) {
    note(book, "requirement-not-judged", "note", { reason: "no-ability" });
    return undefined;
  }
  // From the reading itself where there is one: converting a converted number would count a factor twice.
  const { amperes, standard } = ability.measured ?? {
    amperes: multiply(ability.ratio, rating.amperes),
    standard: rating.standard,
  };
  const atRatingTemperature = convertRating({ amperes, from: standard, to: "sae-j537" }, book.derivation);
  if (isRefusal(atRatingTemperature)) {
    refused(book, "requirement", atRatingTemperature);
    note(book, "requirement-not-judged", "note", { reason: atRatingTemperature.code });
    return undefined;
  }
  const { crankingAmperes, atCelsius, coldestMorningCelsius } = requirement;
  // Asked for the battery as it goes back to its vehicle, which is charged: no state of charge is handed on.
  const input: ColdStartInput = {
    abilityAmperes: atRatingTemperature,
    demandAmperes: { value: crankingAmperes, standardUncertainty: DEMAND_UNCERTAINTY * crankingAmperes },
    demandReferenceCelsius: atCelsius,
    coldestMorningCelsius,
  };
  const start = coldStartMargin(input, book.derivation);
  if (isRefusal(start)) {
    refused(book, "requirement", start);
    note(book, "requirement-not-judged", "note", { reason: start.code });
    return undefined;
  }
  if (!start.atColdestMorning || isRefusal(start.atColdestMorning))
    note(book, "requirement-not-judged", "note", { reason: "outside-tables" });
  return start;
}
