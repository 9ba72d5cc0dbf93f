import { describe, expect, it } from "vitest";
import { codeBlocks, filesBelow, runBlock } from "./code-blocks.js";

const load = (specifier: string) => import(/* @vite-ignore */ specifier);

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

const files = [...filesBelow("src", ".ts"), ...filesBelow("docs", ".md"), "README.md", "DEVELOPERS.md"];

describe("examples in documentation", () => {
  for (const file of files) {
    for (const block of codeBlocks(file)) {
      it(`${block.file}:${block.line}`, async () => {
        await runBlock(block, load, agree);
      });
    }
  }
});
