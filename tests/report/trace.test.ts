import { evaluate } from "crankworthy/evaluate";
import { english, reportSections, traceReport } from "crankworthy/report";
import { describe, expect, it } from "vitest";
import { records } from "./records.js";

const explained = Object.entries(records).map(
  ([name, record]) => [name, evaluate(record, { explain: true })] as const,
);

/** Figures that a report shows and no step of today's derivations yields. Shorten this list when a room adds the step. */
const WITHOUT_STEP = [
  // Of several readings of a code: only all of them together have a step.
  "age.ofReading",
  // Below the range of the acid the section is refused, and the finding says empty.
  "charge.stateOfCharge",
  "charge-not-established.probability",
  "charge-sufficient.probability",
  "charging-rise-high.volts",
  "charging-rise-low.volts",
  "contact-spread.between",
  "flat-too-fast-for-drain.probability",
  "flat-unexplained.probability",
  "frozen-possible.freezingPointCelsius",
  "rating-edition-unstated.relativeUncertainty",
  "readings-scatter.relative",
  // The step yields the middle, the report shows the interval.
  "standing-time.fromDays",
  "standing-time.toDays",
  "temperature-compensation-assumed.relativeUncertainty",
  "vehicle.drainSuffices",
  "vehicle.standingDaysLeast",
  "vehicle.standingDaysMost",
  "voltage-drop-high.milliohms",
  // Days used: the step counts in months.
  "warranty.used",
];

/** In these a missing step is no exception, whatever the record. */
const ALWAYS =
  /^(?:ability|loadTest|start|next)\.|^charge\.(?:lower|upper)$|^age\.(?:reading|oldest|youngest)$|^warranty\.(?!used)|^vehicle\.(?:margin|probabilityWithin)$/;

describe("traceReport", () => {
  it.each(explained)("%s: every worked-out figure has its step, but for those listed", (_, evaluation) => {
    const without = traceReport(evaluation).filter(({ steps }) => steps.length === 0);
    expect(without.filter(({ figure }) => !WITHOUT_STEP.includes(figure))).toEqual([]);
    expect(without.filter(({ figure }) => ALWAYS.test(figure))).toEqual([]);
  });

  it("the list of exceptions holds nothing that has its step", () => {
    const without = explained.flatMap(([, one]) =>
      traceReport(one).filter(({ steps }) => steps.length === 0),
    );
    expect(new Set(without.map(({ figure }) => figure))).toEqual(new Set(WITHOUT_STEP));
  });

  it("a charge or a term is without a step only for the reason given", () => {
    for (const [name, evaluation] of explained)
      for (const { figure, steps } of traceReport(evaluation)) {
        if (steps.length > 0) continue;
        if (figure === "charge.stateOfCharge") expect(evaluation.charge, name).toBeUndefined();
        if (figure === "warranty.used")
          expect(evaluation.warranty?.settlement?.elapsed?.unit, name).toBe("days");
      }
  });

  it.each(explained)(
    "%s: what is charged, able, cold, old and paid is among the figures",
    (_, evaluation) => {
      const found = new Set(traceReport(evaluation).map(({ figure }) => figure));
      const { charge, ability, coldStart, age, warranty, verdict, loadTest } = evaluation;
      const wanted = [
        charge?.bound === "two-sided" && "charge.stateOfCharge",
        ability.length > 0 && "ability.ratio",
        verdict.serviceableProbability !== undefined && "ability.serviceable",
        loadTest && "loadTest.pass",
        coldStart && "value" in coldStart.lowestStartCelsius && "start.lowest",
        age && "age.oldest",
        ...(warranty?.settlement?.lines.map(({ kind }) => `warranty.${kind}`) ?? []),
      ];
      for (const one of wanted) if (one) expect(found).toContain(one);
    },
  );

  it.each(explained)("%s: a figure stands in the very line that it is traced for", (_, evaluation) => {
    const sections = reportSections(evaluation, english);
    for (const { question, line, figure, value } of traceReport(evaluation)) {
      // Ages are shown in months or years, margins only in the step; ends of an interval may lie outside the possible.
      if (typeof value === "string" || /^age|^vehicle\.margin|upper$|lower$/.test(figure)) continue;
      const text = sections
        .find((one) => one.question === question)!
        .lines[line]!.text.replaceAll("\u00a0", " ");
      expect(
        shown(value).some((one) => new RegExp(`(?<![\\d.])${one}(?![\\d]|\\.\\d)`).test(text)),
        `${figure} ${value}: ${text}`,
      ).toBe(true);
    }
  });

  it("without a derivation the figures are there, their steps are not", () => {
    const figures = traceReport(evaluate(records.good!));
    expect(figures.map(({ figure }) => figure)).toContain("ability.ratio");
    expect(figures.flatMap(({ steps }) => steps)).toEqual([]);
  });

  it("a probability is traced to its own limit, though another is as certain", () => {
    const evaluation = evaluate(records.drain!, { explain: true });
    const draws = traceReport(evaluation).filter(({ figure }) => figure === "vehicle.probabilityWithin");
    expect(draws.map(({ value }) => value)).toEqual([0, 0]);
    const [usual, search] = draws.map(({ steps }) => evaluation.derivation![steps[0]! - 1]!.inputs.margin);
    expect(usual).toBeCloseTo(-0.26, 12);
    expect(search).toBeCloseTo(-0.225, 12);
  });
});

/** How a number may stand in a sentence: whole or with decimals, as a share, a sign turned, a chance. */
function shown(value: number): string[] {
  const numbers = [value, -value, 100 * value, 1000 * value].flatMap((one) =>
    [0, 1, 2, 3].map((digits) => one.toFixed(digits).replace(".", "\\.")),
  );
  return [
    ...numbers,
    ...(value > 0.999 ? ["more than 999 in 1000", "100 %"] : []),
    ...(value < 0.001 ? ["less than 1 in 1000", "0 %"] : []),
  ];
}
