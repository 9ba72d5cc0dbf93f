import { readFileSync } from "node:fs";
import type { LoadTestFault as BenchFault } from "crankworthy/bench";
import { english, renderTicket } from "crankworthy/report";
import { findingCodes, rules } from "crankworthy/verdict";
import { describe, expect, it } from "vitest";
import type { LoadTestFault } from "../../src/report/messages.js";
import { evaluations, foundByHand } from "./records.js";

// Both directions: a fault that bench adds or drops is a compile error here.
const sameFaults: [
  LoadTestFault extends BenchFault ? true : false,
  BenchFault extends LoadTestFault ? true : false,
] = [true, true];

const names = (template: string): string[] => [...template.matchAll(/\{([\w-]+)/g)].map(([, name]) => name!);
const outsideBrackets = (template: string): string => template.replace(/\[[^\]]*\]/g, "");

/** Every text of the catalogue with its path. */
function texts(value: unknown, path = ""): [path: string, text: string][] {
  return typeof value === "string"
    ? [[path, value]]
    : Object.entries(value as object).flatMap(([key, inner]) => texts(inner, `${path}/${key}`));
}

const findings = [
  ...Object.values(evaluations).flatMap((one) => one.findings),
  ...foundByHand({ frozen: "possible" }),
  ...foundByHand({ system: "other" }),
];

describe("the English catalogue", () => {
  it("knows the faults of the load test", () => {
    expect(sameFaults).toEqual([true, true]);
  });

  it("knows every rule that decides", () => {
    const deciding = rules.map((one) => one.code).filter((code) => code !== "requirement");
    expect(Object.keys(english.decidedBy).sort()).toEqual(deciding.sort());
  });

  it("knows every explanation that the ledger gives", () => {
    const ledger = readFileSync("src/warranty/ledger.ts", "utf8");
    const table = /const RULES = \{([\s\S]*?)\} as const/.exec(ledger)![1]!;
    const codes = [...table.matchAll(/^ {2}"?([a-z-]+)"?: \[/gm)].map(([, code]) => code!);
    expect(codes.length).toBeGreaterThan(10);
    expect(Object.keys(english.explanation).sort()).toEqual(codes.sort());
  });

  it("the records make every finding whose sentence has a placeholder", () => {
    const made = new Set<string>(findings.map((one) => one.code));
    const missing = findingCodes.filter(
      (code) => !made.has(code) && names(english.finding[code][1] ?? "").length > 0,
    );
    expect(missing).toEqual([]);
  });

  it("every placeholder of a finding is supplied by whoever makes the finding", () => {
    const unfilled = findings.flatMap(({ code, evidence, limit }) => {
      const meaning = english.finding[code][1] ?? "";
      return names(outsideBrackets(meaning))
        .filter((name) => !(name in evidence || (name === "limit" && limit)))
        .map((name) => `${code}: ${name}`);
    });
    expect([...new Set(unfilled)]).toEqual([]);
  });

  it("titles stand alone, without placeholders and full stop; other sentences are closed", () => {
    for (const part of [english.finding, english.condition, english.action]) {
      for (const [title, meaning] of Object.values(part)) {
        expect(title).toMatch(/^[A-Z][^{}[\].]*$/);
        if (meaning) expect(meaning).toMatch(/[.\]]$/);
      }
    }
    const whole = ["caution", "nextStep", "eligibility", "outcome", "settlement"] as const;
    for (const part of whole) for (const text of Object.values(english[part])) expect(text).toMatch(/\.$/);
  });

  it("brackets and braces are paired, units are known", () => {
    for (const [path, text] of texts(english)) {
      expect(
        text.replace(
          /\{[\w-]+(:(V|-V|A|mA|mV|mΩ|min|h|m|m³|m³\/h|cm²|°C|%|%1|c|g|n|d|p|w|s|date)|#[^{}]+)?\}/g,
          "",
        ),
        path,
      ).not.toMatch(/[{}]/);
      expect(text.split("[").length, path).toBe(text.split("]").length);
    }
  });

  it("words a decision as what it is and what to do, never as a school mark", () => {
    for (const [path, text] of texts(english)) {
      expect(text, path).not.toMatch(
        /\b(PASS|FAIL|GOOD|BAD|REPLACE)\b|replace (the )?battery|state of health/,
      );
    }
  });
});

describe("no report of any record", () => {
  it.each(Object.entries(evaluations))("%s leaves a hole", (_, evaluation) => {
    const text = renderTicket(evaluation, { width: 10_000 });
    expect(text).not.toMatch(/undefined|NaN|Infinity|null|\[object|[{}[\]]/);
    // A question mark ends a question; anywhere else it stands for a missing value.
    for (const one of text.split("\n").filter((one) => one.startsWith("  ")))
      expect(one.replace('"??" was not read', "")).not.toContain("?");
  });
});
