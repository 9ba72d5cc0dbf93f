import { readFileSync } from "node:fs";
import { causeRules, rules } from "crankworthy/verdict";
import { expect, it } from "vitest";
import { decisionTable } from "./decision-table.js";

it("docs/rules.md is what the rules say (npm run rules writes it)", () => {
  expect(readFileSync("docs/rules.md", "utf8")).toBe(decisionTable());
  expect(
    decisionTable()
      .split("\n")
      .filter((line) => /^\| \d/.test(line)),
  ).toHaveLength(rules.length);
  for (const { code } of causeRules) expect(decisionTable()).toContain(`\n| \`${code}\` |`);
});
