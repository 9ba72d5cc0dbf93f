import { divide, type Estimate, interval95, isRefusal, type Mutable } from "../numeric/index.js";
import { compareToRating } from "../ratings/index.js";
import { derive } from "../sources/index.js";
import { resistanceAt25Celsius, resistanceSlope } from "../temperature/index.js";
import { repeatedReadingUncertainty } from "../verdict/index.js";
import { type ContactSpread, contactSpread } from "./contact.js";
import type { AbilitySection, ReferenceCranking } from "./evaluation.js";
import type { BatteryRecord, CrankingMeasurement } from "./record.js";
import { note, refused, type Workbook } from "./workbook.js";

/** Assumed for a hand-held cranking estimate, as a fraction: 4-5 % of the reading, our choice, always said. */
export const ASSUMED_CRANKING_UNCERTAINTY = 0.045;
/** Share of it that repeats at random and shrinks with more readings. Our choice. */
const REPEATABLE_SHARE = 0.5;
/** How well a resistance against its reference tells cranking ability, as a fraction. Our choice: IEEE 1188 calls a change
 *  of 30-50 % significant, and later studies rank batteries between 80 and 100 % poorly (both from memory). */
const OHMIC_MODEL_UNCERTAINTY = 0.1;
/** Spread of a reference by where it comes from, as a fraction. Our choice. */
const REFERENCE_UNCERTAINTY = {
  "own-baseline": 0.03,
  "published-for-type": 0.1,
  "fleet-median": 0.08,
} as const;
/** "EN" without its level on label or instrument: level 2 is 0.85-0.92 of level 1 (from memory), taken as a rectangular
 *  spread of 0 to 15 %, as a fraction. Our choice. */
const UNSTATED_EN_LEVEL_UNCERTAINTY = 0.15 / Math.sqrt(12);
/** Spread of repeated readings beyond this many repeatability standard deviations is not the instrument's. */
const SCATTER_LIMIT = 3.5;

/** What ability readings leave for the verdict besides their ratios. */
export interface AbilityOutcome {
  readonly sections: readonly AbilitySection[];
  /** A cranking reading was made that the label cannot be compared with. */
  readonly notComparable: boolean;
  readonly scatter?: { readonly relative: number; readonly limit: number };
  /** Spread between placings of the clamps, where the readings tell. */
  readonly contact?: ContactSpread;
}

/** How much of its rated ability is left, by each way it was measured. */
export function abilities(
  record: BatteryRecord,
  rating: ReferenceCranking | undefined,
  temperature: Estimate | undefined,
  book: Workbook,
): AbilityOutcome {
  const { cranking, resistance, conductance } = record.measurements;
  const sections: AbilitySection[] = [];
  const outcome: Mutable<AbilityOutcome> = { sections, notComparable: false };
  if (cranking) {
    const reading = crankingReading(cranking, book);
    if (reading.scatter) outcome.scatter = reading.scatter;
    if (reading.contact) outcome.contact = reading.contact;
    const amperes = compensated(reading.amperes, cranking, temperature, book);
    if (amperes) explainReading(cranking, reading.amperes, amperes, book);
    const compared = amperes && compareCranking(amperes, cranking, rating, book);
    if (compared && plausible(compared.ratio, book)) sections.push(compared);
  }
  if (resistance) {
    const relative = resistance.referenceMilliohms / resistance.milliohms;
    ohmic(relative, resistance.referenceBasis, "internal-resistance", temperature, sections, book);
  }
  if (conductance) {
    const relative = conductance.siemens / conductance.referenceSiemens;
    ohmic(relative, conductance.referenceBasis, "conductance", temperature, sections, book);
  }
  outcome.notComparable = cranking !== undefined && sections[0]?.from !== "cranking-estimate";
  return outcome;
}

function crankingReading(
  cranking: CrankingMeasurement,
  book: Workbook,
): { readonly amperes: Estimate } & Pick<AbilityOutcome, "scatter" | "contact"> {
  const relative = cranking.relativeStandardUncertainty ?? ASSUMED_CRANKING_UNCERTAINTY;
  if (cranking.relativeStandardUncertainty === undefined)
    note(book, "missing-instrument-uncertainty", "note", { assumed: ASSUMED_CRANKING_UNCERTAINTY });
  if (typeof cranking.amperes === "number")
    return { amperes: { value: cranking.amperes, standardUncertainty: relative * cranking.amperes } };
  const readings = cranking.amperes;
  let sum = 0;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = 0;
  for (const one of readings) {
    sum += one;
    lowest = Math.min(lowest, one);
    highest = Math.max(highest, one);
  }
  const mean = sum / readings.length;
  const repeatability = relative * Math.sqrt(REPEATABLE_SHARE);
  const common = relative * Math.sqrt(1 - REPEATABLE_SHARE);
  const amperes = {
    value: mean,
    standardUncertainty: mean * repeatedReadingUncertainty(common, repeatability, readings.length),
  };
  if (readings.length === 1) return { amperes };
  const scatter = { relative: (highest - lowest) / mean, limit: SCATTER_LIMIT * repeatability };
  if (cranking.readingsPerPlacement === undefined) return { amperes, scatter };
  const contact = contactSpread(readings, cranking.readingsPerPlacement);
  const standardUncertainty = Math.hypot(amperes.standardUncertainty, mean * contact.standardUncertainty);
  return { amperes: { value: mean, standardUncertainty }, scatter, contact };
}

function explainReading(
  {
    amperes: readings,
    standard,
    relativeStandardUncertainty = ASSUMED_CRANKING_UNCERTAINTY,
  }: CrankingMeasurement,
  mean: Estimate,
  compensatedMean: Estimate,
  { derivation }: Workbook,
): void {
  if (!derivation) return;
  const count = typeof readings === "number" ? 1 : readings.length;
  const policy = { source: "crankworthy-policy", standing: "our-choice" } as const;
  derive(
    derivation,
    "cranking reading",
    "mean; u = mean·√(common² + repeatable²/n), common² = repeatable² = relative²/2 (n = 1: relative·mean)",
    { readings: String(readings), n: count, relative: relativeStandardUncertainty, standard },
    mean,
    "A",
    policy,
  );
  derive(
    derivation,
    "cranking reading with temperature",
    "u widened by 0.0037/K away from 25 °C where compensation is assumed; divided by R25/R where it was not made",
    { reading: mean.value, u: mean.standardUncertainty },
    compensatedMean,
    "A",
    policy,
  );
}

// Instruments allow for temperature as they see it. Where nobody says so, the correction is taken as made, and the
// uncertainty of its slope stays; where it was not made, it is made here as for a resistance.
function compensated(
  amperes: Estimate,
  { temperatureCompensated }: CrankingMeasurement,
  temperature: Estimate | undefined,
  book: Workbook,
): Estimate | undefined {
  if (temperatureCompensated === true || (temperatureCompensated === undefined && !temperature))
    return amperes;
  if (temperatureCompensated === false) {
    const at25 = resistanceAt25Celsius(
      { value: 1, standardUncertainty: 0 },
      temperature ?? UNKNOWN_TEMPERATURE,
      book.derivation,
    );
    if (!isRefusal(at25)) return divide(amperes, at25);
    refused(book, "measurements.cranking", at25);
    return undefined;
  }
  const away = Math.abs(temperature!.value - 25);
  const relative = resistanceSlope.standardUncertainty * away;
  if (away > 10)
    note(book, "temperature-compensation-assumed", "warning", {
      temperatureCelsius: temperature!.value,
      relativeUncertainty: relative,
    });
  return {
    value: amperes.value,
    standardUncertainty: Math.hypot(amperes.standardUncertainty, relative * amperes.value),
  };
}

/** Nobody told: 25 °C give or take 10 K, rectangular. Our choice. */
const UNKNOWN_TEMPERATURE: Estimate = { value: 25, standardUncertainty: 10 / Math.sqrt(3) };
/** A label is a promise that new batteries exceed, but not by more than this; below the lower end no connection was made.
 *  Our choice. */
const PLAUSIBLE_RATIO = { lower: 0.05, upper: 1.6 } as const;

function plausible(ratio: Estimate, book: Workbook): boolean {
  if (ratio.value >= PLAUSIBLE_RATIO.lower && ratio.value <= PLAUSIBLE_RATIO.upper) return true;
  note(book, "ability-implausible", "warning", { ratio: ratio.value });
  return false;
}

function compareCranking(
  amperes: Estimate,
  cranking: CrankingMeasurement,
  rating: ReferenceCranking | undefined,
  book: Workbook,
): AbilitySection | undefined {
  if (!rating) {
    note(book, "rating-not-comparable", "warning", { reason: "no-rating" });
    return undefined;
  }
  const compared = compareToRating(
    {
      measured: { amperes, standard: cranking.standard },
      label: { amperes: rating.amperes.value, standard: rating.standard },
    },
    book.derivation,
  );
  if (isRefusal(compared)) {
    refused(book, "measurements.cranking", compared);
    note(book, "rating-not-comparable", "warning", { reason: compared.code });
    return undefined;
  }
  if (compared.caveat === "iec-edition-unstated") {
    // One name for tests whose results differ by half: no ratio is honest.
    note(book, "rating-not-comparable", "warning", { reason: compared.caveat });
    return undefined;
  }
  const editions = compared.caveat ? UNSTATED_EN_LEVEL_UNCERTAINTY : 0;
  if (compared.caveat) note(book, "rating-edition-unstated", "note", { relativeUncertainty: editions });
  // A rating that is itself an estimate, or of an unstated level, carries its uncertainty into the ratio.
  const reference = {
    value: rating.amperes.value,
    standardUncertainty: Math.hypot(rating.amperes.standardUncertainty, editions * rating.amperes.value),
  };
  const ratio =
    reference.standardUncertainty === 0
      ? compared.ratio
      : divide(compared.measuredInLabelStandard, reference);
  return {
    ratio,
    interval: interval95(ratio),
    from: "cranking-estimate",
    amperes: compared.measuredInLabelStandard,
    standard: rating.standard,
    converted: compared.converted,
    measured: { amperes, standard: cranking.standard },
  };
}

function ohmic(
  conductanceRatio: number,
  basis: keyof typeof REFERENCE_UNCERTAINTY,
  from: "internal-resistance" | "conductance",
  temperature: Estimate | undefined,
  sections: AbilitySection[],
  book: Workbook,
): void {
  // The reference is taken at 25 °C; the reading is brought there, resistance being the reciprocal of the ratio.
  const corrected = resistanceAt25Celsius(
    { value: 1 / conductanceRatio, standardUncertainty: 0 },
    temperature ?? UNKNOWN_TEMPERATURE,
    book.derivation,
  );
  if (isRefusal(corrected)) {
    refused(book, `measurements.${from === "conductance" ? "conductance" : "resistance"}`, corrected);
    return;
  }
  const value = 1 / corrected.value;
  const relative = Math.hypot(
    corrected.standardUncertainty / corrected.value,
    REFERENCE_UNCERTAINTY[basis],
    OHMIC_MODEL_UNCERTAINTY,
  );
  const ratio = { value, standardUncertainty: relative * value };
  book.derivation?.push({
    quantity: "ability against the reference",
    formula: "reference resistance / resistance at 25 °C",
    inputs: { resistanceRatioAt25: corrected.value, reference: basis },
    result: value,
    unit: "1",
    standardUncertainty: ratio.standardUncertainty,
    source: "crankworthy-policy",
    standing: "our-choice",
  });
  if (plausible(ratio, book)) sections.push({ ratio, interval: interval95(ratio), from });
}
