import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const readme = readFileSync("README.md", "utf8");
const code = readFileSync("examples/first-evaluation/run.mjs", "utf8");
const built = existsSync("dist/index.js");

describe("README", () => {
  it("shows the example that stands in examples/, at most 25 lines", () => {
    expect(readme).toContain(code.trim());
    expect(code.trim().split("\n").length).toBeLessThanOrEqual(25);
  });

  it.skipIf(!built)(`shows what the example prints${built ? "" : " — SKIPPED: dist is not built"}`, () => {
    const printed = execFileSync(process.execPath, ["examples/run-example.mjs", "first-evaluation"], {
      encoding: "utf8",
    });
    expect(readme).toContain(printed.trim());
  });

  it("links to files that exist", () => {
    for (const [, target] of readme.matchAll(/\]\((?!https?:)([^)#]+)\)/g))
      expect(existsSync(target!), target).toBe(true);
  });
});
