import { evaluate } from "crankworthy/evaluate";
import { english, renderMarkdown, renderTicket } from "crankworthy/report";
import { describe, expect, it } from "vitest";
import { changed, evaluations, good } from "./records.js";

describe("renderMarkdown", () => {
  it("one title, one heading for each question, lists for lists", () => {
    const lines = renderMarkdown(evaluations.claim!).split("\n");
    expect(lines.filter((one) => one.startsWith("# "))).toEqual(["# Battery inspection"]);
    expect(lines.filter((one) => one.startsWith("## "))).toHaveLength(10);
    expect(lines).toContain(`1. ${english.nextStep["take-back"]}`);
    expect(lines).toContain("**Defects:**");
    expect(lines).toContain("- To pay: 98.16 USD");
  });

  it.each(Object.entries(evaluations))("%s says what the ticket says", (_, evaluation) => {
    const bare = (text: string) => text.replace(/&lt;|&gt;|&amp;|[^\p{L}\p{N}]/gu, "");
    expect(bare(renderMarkdown(evaluation))).toBe(bare(renderTicket(evaluation, { width: 10_000 })));
  });

  it("turns no text of a record into markup", () => {
    const id =
      "<img src=x onerror=alert(1)> [a](javascript:b) ![c](d) `e` **f** | g & <!-- https://h.example";
    const page = renderMarkdown(evaluate(changed({ id, identity: { dateCode: { text: "1. <b>*x*</b>" } } })));
    expect(page.split("\n")[2]).toBe(
      "Reference: &lt;img src=x onerror=alert(1)&gt; \\[a\\](javascript:b) \\!\\[c\\](d) \\`e\\` \\*\\*f\\*\\* \\| g &amp; &lt;\\!-- https\\://h.example",
    );
    expect(page).toContain('"1. &lt;b&gt;\\*x\\*&lt;/b&gt;" was not read as a date.');
    expect(page).not.toMatch(/[<>]/);
  });

  it("keeps the parts of a derivation step in their entry", () => {
    const page = renderMarkdown(evaluate(good, { explain: true }));
    expect(page).toMatch(
      /\n\d+\. ratio to rating = measured \/ label\\\n {3}measured = 587\.67; label = 600;/,
    );
  });
});
