import { mergeSummaries, summaryOf } from "crankworthy/fleet";
import { type DaySummary, renderDaySummary } from "crankworthy/report";
import { describe, expect, it } from "vitest";
import { columns } from "../../src/report/text.js";
import { evaluations } from "./records.js";

const none: DaySummary = {
  count: 0,
  refused: 0,
  byCondition: {},
  byAction: {},
  byChemistry: {},
  byRatingStandard: {},
  byFinding: {},
};

describe("renderDaySummary", () => {
  it("most frequent first, in words, counts at the right edge", () => {
    const summary = {
      ...none,
      count: 12,
      refused: 1,
      byCondition: { worn: 2, serviceable: 10 },
      byFinding: { "charge-low": 4, "vehicle-loads-possible": 3, "near-freezing": 0 },
    };
    expect(renderDaySummary(summary, { width: 30 })).toBe(
      `Summary
  Evaluated                 12
  Not usable                 1

Condition
  Serviceable               10
  Worn                       2

Noticed
  Charge low                 4
  Loads in the vehicle not
  ruled out                  3`,
    );
  });

  it("takes what fleet makes; every code of it has words", () => {
    const summary = Object.values(evaluations).map(summaryOf).reduce(mergeSummaries);
    const text = renderDaySummary(summary);
    expect(text).toContain(`Evaluated${String(summary.count).padStart(42 - 11)}`);
    expect(text).not.toMatch(/[a-z]-[a-z]+-[a-z]|undefined/);
    for (const one of text.split("\n")) expect(columns(one)).toBeLessThanOrEqual(42);
  });

  it("keys nobody knows are shown cleaned, inherited names are no labels", () => {
    const byChemistry = { "a\u001b[2J\nb": 1, constructor: 2, ["x".repeat(90)]: 3 };
    const text = renderDaySummary({ ...none, byChemistry });
    expect(text).toContain("  a [2J b");
    expect(text).toContain("  constructor");
    for (const one of text.split("\n")) expect(columns(one)).toBeLessThanOrEqual(42);
  });
});
