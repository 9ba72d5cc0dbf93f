import { readFileSync } from "node:fs";
import { languages } from "crankworthy/languages";
import { describe, expect, it } from "vitest";
import tsup from "../../tsup.config.js";
import { tags } from "./packs.js";

const { exports } = JSON.parse(readFileSync("package.json", "utf8")) as {
  exports: Record<string, Record<string, Record<string, string>>>;
};

describe("the list of languages", () => {
  it("knows every folder, in the order of the tags, and how the language calls itself", () => {
    const listed: readonly string[] = languages.map((one) => one.tag);
    expect([...listed].sort()).toEqual(listed);
    for (const tag of tags) expect(listed).toContain(tag);
    for (const { tag, ownName } of languages)
      expect(new Intl.DisplayNames(tag, { type: "language" }).of(tag)).toBe(ownName);
  });
});

describe("a language in the package", () => {
  it.each(languages.map((one) => one.tag))("%s has a subpath, ESM and CJS, with declarations", (tag) => {
    const files = Object.values(exports[`./languages/${tag}`]!).flatMap((one) => Object.values(one));
    const name = `./dist/languages/${tag}`;
    expect(files).toEqual([`${name}.d.ts`, `${name}.js`, `${name}.d.cts`, `${name}.cjs`]);
  });

  it.each(tags)("%s is an entry of the build, named as its subpath", (tag) => {
    const { entry } = tsup as { entry: Record<string, string> };
    expect(entry[`languages/${tag}`]).toBe(`src/languages/${tag}/index.ts`);
  });
});
