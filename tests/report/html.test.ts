import { evaluate } from "crankworthy/evaluate";
import { arabic } from "crankworthy/languages/ar";
import {
  abilityPicture,
  chargePicture,
  coldStartPicture,
  englishPictureWords,
  warrantyPicture,
} from "crankworthy/pictures";
import { english, renderHtml, reportSections } from "crankworthy/report";
import { bibliography } from "crankworthy/sources";
import { describe, expect, it } from "vitest";
import { attribute, elements, type HtmlNode, parsePage, textOf } from "./parse-html.js";
import { evaluations, records } from "./records.js";

const bare = (text: string): string => text.replace(/[^\p{L}\p{N}]/gu, "");
const byId = (root: HtmlNode, id: string): HtmlNode | undefined =>
  elements(root).find((one) => attribute(one, "id") === id);
const addresses = Object.values(bibliography).map((one) => ("address" in one ? one.address : undefined));
const named = (root: HtmlNode, ...names: readonly string[]): HtmlNode[] =>
  elements(root).filter((one) => names.includes(one.nodeName));

describe("renderHtml", () => {
  it.each(Object.entries(records))(
    "%s: a valid page with every line of the report, each link has its target",
    (_, record) => {
      const evaluation = evaluate(record, { explain: true });
      const { root, errors } = parsePage(renderHtml(evaluation));
      expect(errors).toEqual([]);
      for (const { question, lines } of reportSections({ ...evaluation, derivation: [] }, english)) {
        const part = question === "title" ? named(root, "header")[0]! : byId(root, question)!;
        const text = bare(textOf(part).replace(/\[[\d, ]+\]/g, ""));
        for (const line of lines)
          expect(text, line.text).toContain(bare(line.text).replace(bare(english.phrase.byCondition), ""));
      }
      const ids = elements(root).flatMap((one) => attribute(one, "id") ?? []);
      expect(new Set(ids).size).toBe(ids.length);
      const links = named(root, "a").map((one) => attribute(one, "href")!);
      expect(links.filter((one) => one.startsWith("#step-")).length).toBeGreaterThan(0);
      for (const one of links)
        if (one.startsWith("#")) expect(ids).toContain(one.slice(1));
        else expect(addresses).toContain(one);
      expect(named(root, "li").filter((one) => attribute(one, "id")?.startsWith("step-"))).toHaveLength(
        evaluation.derivation!.length,
      );
    },
  );

  it("headings: one title, a heading for each question, groups of findings below theirs", () => {
    const { root } = parsePage(renderHtml(evaluations.damaged!));
    const levels = named(root, "h1", "h2", "h3", "h4").map((one) => one.nodeName);
    expect(levels.filter((one) => one === "h1")).toEqual(["h1"]);
    expect(levels[0]).toBe("h1");
    expect(levels.filter((one) => one === "h2")).toHaveLength(
      reportSections(evaluations.damaged!, english).length - 1,
    );
    expect(named(byId(root, "noticed")!, "h3").map(textOf)).toEqual(["Hazards:", "Notes:"]);
  });

  it("both axes of the answer stand first, and with a hazard what can hurt comes before what to do", () => {
    const order = (name: string): string[] =>
      elements(parsePage(renderHtml(evaluations[name]!)).root)
        .filter((one) => one.nodeName === "section")
        .map((one) => attribute(one, "id")!);
    expect(order("damaged")[0]).toBe("now");
    expect(order("damaged").indexOf("hurt")).toBeLessThan(order("damaged").indexOf("next"));
    expect(order("good").indexOf("hurt")).toBeGreaterThan(order("good").indexOf("next"));
    const { root } = parsePage(renderHtml(evaluations.damaged!));
    expect(
      elements(byId(root, "now")!)
        .filter((one) => attribute(one, "class") === "answer")
        .map(textOf),
    ).toEqual(["Unserviceable", "Set it apart and do not charge it"]);
    const frame = elements(root).find((one) => attribute(one, "class") === "hazard")!;
    expect(textOf(frame)).toContain("Visible damage. Seen: cracked");
    expect(textOf(frame)).not.toContain("Ability reaches");
  });

  it("a figure leads to the step that yields it, an inserted number to the step before", () => {
    const evaluation = evaluate(records.good!, { explain: true });
    const { root } = parsePage(renderHtml(evaluation));
    const target = (link: HtmlNode): string => textOf(byId(root, attribute(link, "href")!.slice(1))!);
    const [charge] = named(byId(root, "charge")!, "a");
    expect(target(charge!)).toMatch(/^\d+state of charge=/);
    expect(attribute(charge!, "aria-label")).toMatch(/^Step \d+$/);
    const step = named(root, "li").find((one) => textOf(one).includes("ratio to rating"))!;
    expect(target(named(step, "a")[0]!)).toMatch(/^\d+cranking reading with temperature/);
    expect(named(step, "mfrac")).toHaveLength(1);
  });

  it("without a derivation there is neither a step nor a word of one", () => {
    const page = renderHtml(evaluations.good!);
    expect(page).not.toContain("#step-");
    expect(page).not.toContain(english.phrase.stepsInBrackets);
    expect(page).not.toContain('id="derivation"');
  });

  it("needs nothing from elsewhere and allows nothing", () => {
    const page = renderHtml(evaluate(records.good!, { explain: true }));
    const { root } = parsePage(page);
    const policy = named(root, "meta").find(
      (one) => attribute(one, "http-equiv") === "Content-Security-Policy",
    )!;
    expect(attribute(policy, "content")).toBe(
      "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'",
    );
    expect(named(root, "script", "link", "img", "iframe", "object", "embed", "form", "base")).toEqual([]);
    expect(textOf(named(root, "style")[0]!)).toBe("");
    expect(page).not.toMatch(/url\(|@import|@font-face|src=/);
  });

  it("takes the pictures of the pictures room and nothing else", () => {
    for (const name of ["engineUnsure", "claimNoReceipt", "worn", "byResistance", "bare"]) {
      const record = records[name]!;
      const evaluation = evaluate(record);
      const made = [
        chargePicture(evaluation),
        abilityPicture(evaluation),
        coldStartPicture({ evaluation, record }),
        warrantyPicture({ evaluation, record }),
      ];
      const pictures = made.filter((one) => typeof one === "string");
      const { root, errors } = parsePage(renderHtml(evaluation, { pictures }));
      expect(errors).toEqual([]);
      expect(named(root, "figure")).toHaveLength(pictures.length);
      expect(named(root, "svg")).toHaveLength(pictures.length);
    }
    expect(englishPictureWords.lang).toBe("en");
    expect(() =>
      renderHtml(evaluations.good!, { pictures: ["<svg></svg>", "<svg onload='a'></svg>"] }),
    ).toThrow(/^pictures\[1\]: received onload/);
  });

  it("language and direction are the catalogue's; formulas stay English and run left to right", () => {
    const evaluation = evaluate(records.engineUnsure!, { explain: true });
    const { root, errors } = parsePage(renderHtml(evaluation, { messages: arabic.messages }));
    expect(errors).toEqual([]);
    const [html] = named(root, "html");
    expect([attribute(html!, "lang"), attribute(html!, "dir")]).toEqual([arabic.messages.language, "rtl"]);
    const formulas = elements(root).filter((one) => attribute(one, "class") === "formula");
    for (const one of formulas)
      expect([attribute(one, "lang"), attribute(one, "dir")]).toEqual(["en", "ltr"]);
    const apart = named(byId(root, "start")!, "bdi").map(textOf);
    expect(apart).toContain("632\u00a0A");
    expect(apart.some((one) => /^-?[−-]?25/.test(one.replace(/\u200e/g, "")))).toBe(true);
    expect(named(named(root, "header")[0]!, "bdi").map(textOf)).toContain("W-17");
  });

  it("a sentence from right to left loses nothing by the quantities set apart", () => {
    for (const [name, evaluation] of Object.entries(evaluations)) {
      const { root, errors } = parsePage(
        renderHtml(evaluation, { messages: { ...english, language: "ar", direction: "rtl" } }),
      );
      expect(errors, name).toEqual([]);
      const { root: other } = parsePage(renderHtml(evaluation, { messages: { ...english, language: "ar" } }));
      expect(bare(textOf(named(root, "main")[0]!))).toBe(bare(textOf(named(other, "main")[0]!)));
    }
  });
});
