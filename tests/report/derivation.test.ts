import { evaluate } from "crankworthy/evaluate";
import { renderDerivation } from "crankworthy/report";
import { bibliography, type DerivationStep } from "crankworthy/sources";
import { describe, expect, it } from "vitest";
import { columns } from "../../src/report/text.js";
import { records } from "./records.js";

const step: DerivationStep = {
  quantity: "ratio to rating",
  formula: "measured / label",
  inputs: { measured: 587.6667, label: 600, standard: "sae-j537", note: "" },
  result: 0.979444,
  unit: "1",
  standardUncertainty: 0.03599,
  source: "jcgm-100",
  standing: "computed",
};
const show = (change: Partial<DerivationStep>) =>
  renderDerivation({ derivation: [{ ...step, ...change }] }, { width: 200 }).split("\n");

describe("renderDerivation", () => {
  it("a step: formula, inputs, result with its uncertainty, source with edition, locator and standing", () => {
    expect(show({})).toEqual([
      "How was it worked out?",
      "  1. ratio to rating = measured / label",
      "     measured = 587.67; label = 600; standard = sae-j537",
      "     = 0.979 ± 0.036",
      "     Source: Guide to the expression of uncertainty in measurement, JCGM 100:2008, §4.3.7, §5.1.2 (computed)",
      "  ± gives the standard uncertainty.",
    ]);
  });

  it("two significant digits of the uncertainty decide where the result ends", () => {
    expect(show({ result: 1234.5678, standardUncertainty: 12.4, unit: "A" })[3]).toBe("     = 1235 ± 12 A");
    expect(show({ result: 12.62449, standardUncertainty: 0.00249, unit: "V" })[3]).toBe(
      "     = 12.6245 ± 0.0025 V",
    );
    expect(show({ result: 300, standardUncertainty: 0, unit: "A" })[3]).toBe("     = 300 A");
    expect(show({ result: "2022-03-01..2022-03-31", unit: "" })[3]).toBe("     = 2022-03-01..2022-03-31");
  });

  it("an unknown source is named by its key, and no inherited name is taken for one", () => {
    expect(show({ source: "constructor" })[4]).toBe("     Source: constructor (computed)");
  });

  it("text in a step is cleaned", () => {
    const lines = show({ inputs: { text: "a\nb\u001b[31m" }, result: "c\r\nd", unit: "" });
    expect(lines[2]).toBe("     text = a b [31m");
    expect(lines[3]).toBe("     = c d");
  });

  it.each(Object.entries(records))(
    "%s: every source is in the bibliography, no line is too wide",
    (_, record) => {
      const evaluation = evaluate(record, { explain: true });
      for (const one of evaluation.derivation!) expect(Object.keys(bibliography)).toContain(one.source);
      const text = renderDerivation(evaluation);
      expect(text).not.toMatch(/undefined|NaN|\[object/);
      for (const one of text.split("\n")) expect(columns(one)).toBeLessThanOrEqual(80);
    },
  );

  it("says so when there is none", () => {
    expect(renderDerivation({})).toBe("How was it worked out?\n  This evaluation carries no derivation.");
  });
});
