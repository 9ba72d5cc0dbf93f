import { type Evaluation, evaluate } from "crankworthy/evaluate";
import { mergeSummaries, summaryOf } from "crankworthy/fleet";
import { guidedStepCodes } from "crankworthy/guidance";
import { english, renderDaySummary, renderDerivation, renderStep, renderTicket } from "crankworthy/report";
import { describe, expect, it } from "vitest";
import { columns } from "../../src/report/text.js";
import { changed, evaluations, good, terms } from "../report/records.js";
import { packs } from "./packs.js";

const count = (text: string, mark: string): number => text.split(mark).length - 1;
// Minus signs of right-to-left languages bring the mark of direction that keeps them before their number.
const bare = (text: string): string => text.replace(/[\u200e\u200f\u061c]/g, "");

const hostile = [
  "\u001b[2J\u001b[1;31mPAID\u0007",
  "line\r\nbreak\u2028and\u2029more\u0000",
  "\u202egnidaer\u2066 \u200b\u200d\ufeff",
  "x".repeat(100),
  "電".repeat(40),
  "{condition} [{undefined}] $& $1",
  "<img src=x onerror=alert(1)>",
];

describe.each(packs)("%s", (_, { messages, guidance }) => {
  // A no-break space is printed as a blank.
  const headings: readonly string[] = [messages.phrase.title, ...Object.values(messages.question)].map(
    (one) => one.replaceAll("\u00a0", " "),
  );

  it("headings fit into one line of 42 columns", () => {
    for (const heading of headings) expect(columns(heading), heading).toBeLessThanOrEqual(42);
  });

  it("the ticket of every record keeps 42 columns and leaves no hole", () => {
    for (const one of Object.values(evaluations)) keepsColumnsWithoutHole(one);
  });

  function keepsColumnsWithoutHole(one: Evaluation): void {
    for (const width of [20, 42])
      for (const row of renderTicket(one, { messages, width }).split("\n"))
        expect(columns(row), row).toBeLessThanOrEqual(width);
    const wide = renderTicket(one, { messages, width: 10_000 });
    expect(wide).not.toMatch(/undefined|NaN|Infinity|null|\[object|[{}[\]]/);
    expect(wide).not.toMatch(/(?![0-9])\p{Nd}/u);
    const lines = (text: string) => text.split("\n").filter((row) => row.startsWith("  "));
    const [own, source] = [lines(wide), lines(renderTicket(one, { width: 10_000 }))];
    expect(own).toHaveLength(source.length);
    // A question mark among the answers stands for what is missing.
    own.forEach((row, index) => {
      expect(count(row, "?"), row).toBe(count(source[index]!, "?"));
    });
  }

  it("numbers and units come out as in English, but for the marks of the language", () => {
    for (const one of Object.values(evaluations)) {
      const found = (text: string) =>
        [...bare(text).matchAll(/[-−]?\d+[.,]\d+(?=[\s\u00a0](?:V|mΩ|h)\b)/g)]
          .map(([number]) => number.replace(",", ".").replace("−", "-"))
          .sort();
      const own = found(renderTicket(one, { messages, width: 10_000 }));
      expect(own).toEqual(found(renderTicket(one, { width: 10_000 })));
    }
  });

  it("a summary, a derivation and every step of the guidance keep their width", () => {
    const summary = Object.values(evaluations).map(summaryOf).reduce(mergeSummaries);
    const texts = [renderDaySummary(summary, { messages, width: 42 })];
    texts.push(renderDerivation(evaluate(good, { explain: true }), { messages, width: 42 }));
    for (const code of guidedStepCodes) {
      const step = {
        code,
        riskNow: 0.2,
        expectedRiskDrop: 0.1,
        why: { code: "hazard-first" },
        parameters: {},
      };
      texts.push(renderStep(step as never, { messages, guidance, width: 42 }));
    }
    for (const row of texts.join("\n").split("\n")) expect(columns(row), row).toBeLessThanOrEqual(42);
  });

  it.each(hostile)("%j in a record changes no line, cursor or column", (text) => {
    const evaluation = evaluate(
      changed({
        id: text,
        identity: {
          labelCode: { scheme: "etn", text: text.slice(0, 40) },
          dateCode: { text: text.slice(0, 40) },
        },
        measurements: { cranking: { standard: "sae-j537", amperes: 280, relativeStandardUncertainty: 0.04 } },
        warranty: {
          terms: {
            ...terms,
            freeMonths: 0,
            totalMonths: 12,
            statutoryFloor: { months: 90, scope: "anyone", citation: text },
          },
          purchase: { receipt: true, soldOn: "2022-06-10", pricePaid: "10.00" },
        },
      }),
      { explain: true },
    );
    const ticket = renderTicket(evaluation, { messages });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the newline of a line is the one that is allowed
    expect(bare(ticket)).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
    const rows = ticket.split("\n");
    for (const row of rows) expect(columns(row)).toBeLessThanOrEqual(42);
    for (const heading of rows.filter((row) => /^\S/.test(row))) expect(headings).toContain(heading);
    const plain = renderTicket(evaluation, { messages: { ...english, language: messages.language } });
    expect(rows.filter((row) => /^\S/.test(row))).toHaveLength(
      plain.split("\n").filter((row) => /^\S/.test(row)).length,
    );
  });
});
