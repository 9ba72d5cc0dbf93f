import type { Confusable, DateCodeRefusal, DateCodeRefusalCode, ExcludedReading } from "./reading.js";

const TEXTS: Readonly<Record<DateCodeRefusalCode, readonly [reason: string, wouldHelp: string]>> = {
  empty: ["The date code is empty.", "The code on the battery."],
  "too-long": ["The text is longer than any date code.", "Only the marking that holds the date."],
  "not-ascii": ["The text is not printable ASCII.", "The code in A-Z, 0-9 and / - ."],
  "no-reading": ["No chosen scheme reads this text as a date.", "The maker's scheme, or a template."],
  "outside-window": [
    "The date lies after the inspection or beyond the accepted age.",
    "The inspection date, or a larger accepted age.",
  ],
  "template-mismatch": ["The text does not fit the template.", "A template with one mark per character."],
  "iec-60062-year-g": [
    "Published rows of year letters disagree on G.",
    "A second code, or the scheme if it is not IEC 60062.",
  ],
  "contradicted-by-evidence": [
    "Every reading lies after the sale or the activation.",
    "A check of the code and these dates.",
  ],
  "grid-not-punched": ["No month or no year is removed.", "The removed month and year."],
};

/** The refusal of this code. */
export function refuseCode(
  code: DateCodeRefusalCode,
  confusables: readonly Confusable[] = [],
  excluded: readonly ExcludedReading[] = [],
): DateCodeRefusal {
  const [reason, wouldHelp] = TEXTS[code];
  return { refused: true, code, reason, wouldHelp, confusables, excluded };
}
