import { describe, expect, it } from "vitest";
import { codeBlocks, filesBelow, runBlock } from "./code-blocks.js";

// `npm run docs:check` runs every block against the build that is published, `npm test` against the sources.
const built = process.env.AGAINST_BUILD === "1";
const root = new URL("../../", import.meta.url).href;
const load = (specifier: string) =>
  built
    ? import(/* @vite-ignore */ `${root}dist/${specifier.replace(/^crankworthy\/?/, "") || "index"}.js`)
    : import(/* @vite-ignore */ specifier);

/** Numbers agree when they round to what is printed; everything else must be equal. */
function agree(actual: unknown, expected: unknown, printed: string): void {
  if (typeof expected === "number" && typeof actual === "number" && Number.isFinite(expected)) {
    const decimals = /^-?\d+\.(\d+)$/.exec(printed.trim())?.[1]?.length ?? 0;
    if (/^-?\d+(\.\d+)?$/.test(printed.trim()) && decimals < 13) {
      expect(actual.toFixed(decimals)).toBe(expected.toFixed(decimals));
      return;
    }
  }
  expect(actual).toEqual(expected);
}

// docs/api is made by `npm run docs` and holds copies.
const written = filesBelow("docs", ".md").filter((file) => !file.startsWith("docs/api/"));
const files = [...filesBelow("src", ".ts"), ...written, "README.md", "DEVELOPERS.md"];

/** Pages that have nothing to run, each with the reason. */
const NOTHING_TO_RUN: Readonly<Record<string, string>> = {
  "docs/architecture.md": "a map of the house",
  "docs/decisions.md": "prose about limits and probabilities; the rules are in docs/rules.md",
  "docs/dependencies.md": "packages and why",
  "docs/glossary.md": "held against the types by its own test",
  "docs/limits.md": "what the method cannot do",
  "docs/rules.md": "generated from the rules",
  "docs/sources.md": "generated from the bibliography",
  "docs/validation.md": "generated from the outside checks",
  "docs/worked-examples/README.md": "an index",
  "docs/faq/README.md": "an index",
};

describe("pages", () => {
  const pages = files.filter((file) => file.endsWith(".md") && file !== "DEVELOPERS.md");

  it.each(pages)("%s has an example that is executed and checked, or is listed with a reason", (page) => {
    const checks = codeBlocks(page).filter(({ code }) => /\/\/ =>/.test(code)).length;
    if (page in NOTHING_TO_RUN) expect(checks).toBe(0);
    else expect(checks).toBeGreaterThan(0);
  });

  it("every listed page exists", () => {
    for (const page of Object.keys(NOTHING_TO_RUN)) expect(files).toContain(page);
  });
});

describe("examples in documentation", () => {
  for (const file of files) {
    for (const block of codeBlocks(file)) {
      it(`${block.file}:${block.line}`, async () => {
        await runBlock(block, load, agree);
      });
    }
  }
});
