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
    from: PlainDate,
    to: PlainDate,
    source: SourceId = "date-code-choices",
    standing: Standing = "our-choice",
  ): void => {
    derivation.push({ quantity, formula, inputs, result: `${from}..${to}`, unit: "", source, standing });
  };
  const inspectedOn = plainDate(context.inspectionDay);
  push(
    "accepted manufacture dates",
    "inspectedOn - age .. inspectedOn + toleranceDays",
    { inspectedOn, toleranceDays: context.latestDay - context.inspectionDay },
    plainDate(context.earliestDay),
    plainDate(context.latestDay),
  );
  for (const { scheme, from, to, because } of excluded) {
    push("excluded period", because, { text, scheme }, from, to);
  }
  for (const { scheme, from, to, rank, reasons, source, standing } of readings) {
    const structure = scheme === "punched-grid" ? scheme : dateSchemes[scheme].structure;
    const inputs = { text, scheme, weekRule: context.weekRule, rank, reasons: reasons.join(", ") };
    push("manufacture period", structure, inputs, from, to, source, standing);
  }
}
