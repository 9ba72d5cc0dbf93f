import { languages } from "crankworthy/languages";
import { describe, expect, it } from "vitest";
import { languageOf, pageLanguages } from "../../examples/worksheet/languages.js";

function texts(value: unknown, path = ""): [path: string, text: string][] {
  if (typeof value === "string") return [[path, value]];
  return Object.entries(value as object).flatMap(([key, inner]) => texts(inner, `${path}/${key}`));
}

const names = (text: string): string[] => [...text.matchAll(/\{\w+\}/g)].map(([name]) => name).sort();
const english = new Map(texts(languageOf("en").words));

describe("words of the page", () => {
  it("are there in every language of the library", () => {
    expect(pageLanguages.map((one) => one.tag)).toEqual(["en", ...languages.map((one) => one.tag)]);
    for (const { tag, ownName } of languages) expect(languageOf(tag).ownName).toBe(ownName);
  });

  it.each(pageLanguages.map((one) => [one.tag, one.words] as const))(
    "%s: none is empty, each has its numbers",
    (tag, words) => {
      for (const [path, text] of texts(words)) {
        expect(text.trim(), path).not.toBe("");
        const original = english.get(path);
        if (original === undefined) expect(path).toMatch(/^\/issue\//);
        else expect(names(text), path).toEqual(names(original));
      }
      expect(Object.keys(words.issue ?? {}).length).toBe(tag === "en" ? 0 : 13);
    },
  );

  it("an unknown language is answered in English", () => {
    expect(languageOf("<script>").tag).toBe("en");
    expect(languageOf(undefined).tag).toBe("en");
  });
});
