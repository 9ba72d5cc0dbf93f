import { describe, expect, it } from "vitest";
import { englishPack, packs, texts } from "./packs.js";
import { placeholders, prose } from "./template.js";

const englishTexts = new Map(texts(englishPack));

/** What a translation must keep of a placeholder: its name, its unit, and what must be known for it to be shown. */
const kept = (template: string): string[] => [
  ...new Set(
    placeholders(template)
      .filter(({ forms }) => !forms)
      .map(({ name, unit, shownWith }) => `{${name}:${unit}} with ${shownWith.join(",")}`),
  ),
];

/** Numbers that stand in a text, with the SI symbol behind them, in the decimal mark of English and its rpm. */
function numbers(template: string): string[] {
  const found = prose(template)
    .replace(/(\d),(\d)/g, "$1.$2")
    .replaceAll("1/min", "rpm")
    .replace(/[\u00a0\u202f]/g, " ")
    .matchAll(/(\d+(?:\.\d+)?)(?:[ -]?(°C|Ah|V|A|min|h|s|%|g)(?![\p{L}\d]))?/gu);
  return [...new Set([...found].map(([, number, unit]) => `${number} ${unit ?? ""}`.trim()))].sort();
}

// What stands between texts has blanks of its own, or none.
const JOINTS: ReadonlySet<string> = new Set([
  "/messages/comma",
  "/messages/semicolon",
  "/messages/sentence/1",
]);

// Standards' names and the like stand as they are printed.
const SAME_AS_ENGLISH = /^\/messages\/(standard|phrase\/(amount|stepResult|because))/;

describe("the reader of templates", () => {
  it("sees names, units, plural forms and optional parts, and refuses a mark without its partner", () => {
    expect(placeholders("{a:V}[ b {c}[ {d#one=x|other=y}]]")).toEqual([
      { name: "a", unit: "V", shownWith: [] },
      { name: "c", unit: "", shownWith: ["c"] },
      { name: "d", unit: "", forms: { one: "x", other: "y" }, shownWith: ["c", "d"] },
    ]);
    for (const broken of ["{a", "a}", "[a", "a]", "]a["])
      expect(() => placeholders(broken)).toThrow(/partner/);
    expect(numbers("[{a:V} ]12-V, 7,5 h or 25 °C, 4 mV")).toEqual(["12 V", "25 °C", "4", "7.5 h"]);
  });
});

describe("what a translation must keep", () => {
  it("a unit, and being optional with the same values; not order, nor a plural", () => {
    const source = kept("Up to {a:V}[, about {b:d} to {c:h}].");
    expect(kept("[Von {b:d} bis {c:h}, ]bis {a:V} {a#one=x|other=y}.").sort()).toEqual(source.sort());
    for (const broken of [
      "{a:A}[, {b:d} {c:h}]",
      "{a:V}, {b:d} {c:h}",
      "{a:V}[, {b:d}][ {c:h}]",
      "[{a:V}, {b:d} {c:h}]",
    ])
      expect(kept(broken).sort(), broken).not.toEqual(source.sort());
  });
});

describe.each(packs)("%s", (tag, pack) => {
  const own = texts(pack);
  const categories: readonly string[] = new Intl.PluralRules(pack.messages.language).resolvedOptions()
    .pluralCategories;

  it("names itself everywhere alike, and reads its script's way", () => {
    expect(pack.language).toBe(tag);
    for (const one of [pack.messages.language, pack.pictures.lang]) expect(one.split("-")[0]).toBe(tag);
    expect(Intl.NumberFormat.supportedLocalesOf(pack.messages.language)).toHaveLength(1);
    expect(pack.messages.direction).toBe(tag === "ar" ? "rtl" : "ltr");
  });

  it("has every text of English, and none besides", () => {
    expect(own.map(([path]) => path).sort()).toEqual([...englishTexts.keys()].sort());
  });

  it("leaves no text empty that English does not", () => {
    expect(
      own.filter(([path, text]) => text.trim() === "" && englishTexts.get(path) !== "" && !JOINTS.has(path)),
    ).toEqual([]);
  });

  it("keeps name, unit and optional part of every placeholder", () => {
    for (const [path, text] of own)
      expect(kept(text).sort(), path).toEqual(kept(englishTexts.get(path)!).sort());
  });

  it("asks for a plural only by a number that English has there, in forms its own rule can pick", () => {
    for (const [path, text] of own) {
      const names = new Set(placeholders(englishTexts.get(path)!).map((one) => one.name));
      for (const { name, forms } of placeholders(text)) {
        if (!forms) continue;
        expect(names, path).toContain(name);
        expect(Object.keys(forms), path).toContain("other");
        for (const category of Object.keys(forms)) expect(categories, path).toContain(category);
      }
    }
  });

  it("keeps the numbers and their SI symbols that stand in a text", () => {
    for (const [path, text] of own) expect(numbers(text), path).toEqual(numbers(englishTexts.get(path)!));
  });

  it("writes digits 0 to 9 only, and no invisible marks", () => {
    for (const [path, text] of own) {
      expect(text, path).not.toMatch(/(?![0-9])\p{Nd}/u);
      expect(text, path).not.toMatch(/[\p{Cf}\p{Cc}\p{Co}]/u);
      expect(text, path).toBe(text.normalize("NFC"));
      if (!JOINTS.has(path)) expect(text, path).not.toMatch(/^\s|\s$| {2}/);
    }
  });

  it("has titles that stand alone, and closes its sentences", () => {
    const { finding, condition, action, caution, nextStep, eligibility, outcome, settlement } = pack.messages;
    for (const part of [finding, condition, action])
      for (const [title, meaning] of Object.values(part)) {
        expect(title).toMatch(/^\P{Ll}[^{}[\].。؟]*$/u);
        if (meaning !== undefined) expect(meaning).toMatch(/[.。\]]$/);
      }
    for (const part of [caution, nextStep, eligibility, outcome, settlement])
      for (const text of Object.values(part)) expect(text).toMatch(/[.。]$/);
    for (const [reason, wouldHelp] of Object.values(pack.messages.refusal!).map((one) => one!))
      for (const text of [reason, wouldHelp]) expect(text).toMatch(/^\P{Ll}[^{}[\]?؟？]+[.。]$/u);
  });

  it("left nothing in English", () => {
    for (const [path, text] of own) {
      if (prose(text).replace(/\P{L}/gu, "").length > 12 && !SAME_AS_ENGLISH.test(path))
        expect(text, path).not.toBe(englishTexts.get(path));
      expect(prose(text), path).not.toMatch(/\b(the|and|with|from|this|that|without|not|which)\b/i);
    }
    for (const [code, refusal] of Object.entries(pack.messages.refusal!))
      expect(refusal!.join(" "), code).not.toMatch(/\b(the|and|with|from|this|that|without|not|which)\b/i);
  });

  it("counts chances of 100 and of 1000, each with its number once", () => {
    const { chance } = pack.messages;
    expect(chance.map((one) => one.split("{n}").length - 1)).toEqual([1, 1, 0, 0]);
    expect(new Set(chance).size).toBe(4);
  });

  it("tells apart what English tells apart: kinds of condition, action, chemistry, support and so on", () => {
    const { condition, action, chemistry, support, cause, standard, question, severity } = pack.messages;
    const titles = [condition, action].map((part) => Object.values(part).map(([title]) => title));
    const names = [chemistry, support, cause, standard, question, severity].map((part) =>
      Object.values(part),
    );
    const letters = Object.entries(pack.pictures).filter(([key]) => key.startsWith("letter."));
    names.push(letters.map(([, letter]) => letter));
    for (const part of [...titles, ...names]) expect(new Set(part).size, part.join()).toBe(part.length);
  });

  it("marks a stretch of a log by one character", () => {
    for (const [key, text] of Object.entries(pack.pictures))
      if (key.startsWith("letter.")) expect([...text], key).toHaveLength(1);
  });

  it("words a decision as what it is and what to do, never as a school mark", () => {
    for (const [path, text] of own)
      expect(text, path).not.toMatch(/\b(PASS|FAIL|GOOD|BAD|REPLACE|OK|SOH)\b|state of health/);
  });
});
