import { type PlainDate, plainDate } from "../numeric/index.js";
import type { Derivation, DerivationStep, SourceId, Standing } from "../sources/index.js";
import type { DateReading, ExcludedReading } from "./reading.js";
import type { DecodeContext } from "./scheme.js";
import { dateSchemes } from "./schemes/index.js";

/** Pushes the accepted window, then one step per reading kept or excluded. */
export function deriveReadings(
  derivation: Derivation,
  text: string,
  context: DecodeContext,
  readings: readonly DateReading[],
  excluded: readonly ExcludedReading[],
): void {
  const push = (
    quantity: string,
    formula: string,
    inputs: DerivationStep["inputs"],
    { from, to, source = "date-code-choices", standing = "our-choice" }: Period,
  ): void => {
    derivation.push({ quantity, formula, inputs, result: `${from}..${to}`, unit: "", source, standing });
  };
  const { inspectionDay, earliestDay, latestDay, weekRule: rule = "iso or jan1" } = context;
  push(
    "accepted manufacture dates",
    "inspectedOn - age .. inspectedOn + toleranceDays",
    { inspectedOn: plainDate(inspectionDay), toleranceDays: latestDay - inspectionDay },
    { from: plainDate(earliestDay), to: plainDate(latestDay) },
  );
  for (const one of excluded) push("excluded period", one.because, { text, scheme: one.scheme }, one);
  for (const one of readings) {
    const { scheme, rank, reasons } = one;
    const structure = scheme === "punched-grid" ? scheme : dateSchemes[scheme].structure;
    push(
      "manufacture period",
      structure,
      { text, scheme, weekRule: one.weekRule ?? rule, rank, reasons: reasons.join(", ") },
      one,
    );
  }
}

interface Period {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly source?: SourceId;
  readonly standing?: Standing;
}
