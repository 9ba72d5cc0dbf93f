import { english, renderTicket, renderWide } from "crankworthy/report";
import { describe, expect, it } from "vitest";
import { columns } from "../../src/report/text.js";
import { evaluations } from "./records.js";

describe("renderWide", () => {
  it("the question stands beside its answer, a long one wraps in its own column", () => {
    const lines = renderWide(evaluations.unserviceable!).split("\n");
    expect(lines).toContain("What is it?              Flooded battery, 12 V.");
    const at = lines.indexOf("How much of its ability  By cranking estimate: 48 % of the rating (from 44 to");
    expect(lines.slice(at + 1, at + 3)).toEqual([
      "is left?                 52 %). That is 288 A CCA (SAE).",
      "                         Chance that it reaches the limit for serviceable: less",
    ]);
  });

  it.each(Object.entries(evaluations))("%s says what the ticket says, within its width", (_, evaluation) => {
    const bag = (text: string): string[] =>
      text
        .split(/\s+/)
        .filter((one) => one !== "")
        .sort();
    for (const width of [60, 80, 132]) {
      const text = renderWide(evaluation, { width });
      for (const one of text.split("\n")) expect(columns(one)).toBeLessThanOrEqual(width);
    }
    expect(bag(renderWide(evaluation, { width: 10_000 }))).toEqual(
      bag(renderTicket(evaluation, { width: 10_000 })),
    );
  });

  it("a narrow page is a ticket, and no page is narrower than 20", () => {
    expect(renderWide(evaluations.good!, { width: 59 })).toBe(renderTicket(evaluations.good!, { width: 59 }));
    expect(() => renderWide(evaluations.good!, { width: 19 })).toThrow(RangeError);
    expect(() => renderWide(evaluations.good!, { width: Number.NaN })).toThrow(RangeError);
    expect(() => renderWide(evaluations.good!, { width: 80.5 })).toThrow(RangeError);
  });

  it("wide characters keep the second column where it is", () => {
    const messages = { ...english, question: { ...english.question, what: "これは何ですか" } };
    expect(renderWide(evaluations.good!, { messages })).toContain(
      "\nこれは何ですか           Flooded battery, 12 V.\n",
    );
  });
});
