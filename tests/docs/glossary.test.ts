import { readFileSync } from "node:fs";
import { evaluate, type InputIssue, recordSchema } from "crankworthy";
import { chargeStopCriteria, chargingForbidden } from "crankworthy/bench";
import { dateSchemes } from "crankworthy/date-codes";
import type { LogQuantityMeasured, SegmentKind } from "crankworthy/logs";
import { ratingStandards } from "crankworthy/ratings";
import { english } from "crankworthy/report";
import type { Standing } from "crankworthy/sources";
import { causeRules, cautionCodes, defaultPolicy, findingCodes, rules } from "crankworthy/verdict";
import { policyConventions } from "crankworthy/warranty";
import { describe, expect, it } from "vitest";
import { ranges } from "../../src/evaluate/ranges.data.js";
import { DEFECT_CODES } from "../../src/logs/check/quality.js";

/** Cells of every table row, by the nearest heading above it; the rows of a heading's own parts are not among them. */
const rowsByHeading = new Map<string, string[][]>();
const glossary = readFileSync("docs/glossary.md", "utf8");
const decisions = readFileSync("docs/decisions.md", "utf8");
let heading = "";
for (const line of glossary.split("\n")) {
  if (/^##+ /.test(line)) heading = line.replace(/^#+ /, "");
  else if (line.startsWith("| ")) {
    const cells = line.slice(2, -2).split(" | ");
    rowsByHeading.set(heading, [...(rowsByHeading.get(heading) ?? []), cells]);
  }
}

const codesIn = (text: string): string[] => [...text.matchAll(/`([^`\n]+)`/g)].map(([, code]) => code!);
const explained = new Set(codesIn(glossary));
/** Codes that the tables under a heading explain: those of their first column. */
const explainedUnder = (...headings: readonly string[]): string[] =>
  headings.flatMap((one) => rowsByHeading.get(one)!.flatMap(([first]) => codesIn(first!)));
const rowOf = (name: string, under: string): string[] =>
  rowsByHeading.get(under)!.find(([first]) => first === `\`${name}\``)!;

const distinct = (names: readonly string[]): string[] => [...new Set(names)].sort();
const missing = (names: readonly string[], among: Iterable<string> = explained): string[] => {
  const known = new Set(among);
  return distinct(names).filter((name) => !known.has(name));
};
/** Names of a union type; the compiler refuses a list with a missing or a foreign one. */
const every = <Name extends string>(names: Record<Name, true>): Name[] => Object.keys(names) as Name[];

describe("record", () => {
  const keys: string[] = [];
  const choices: string[] = [];
  walk(recordSchema, "");

  /** Collects keys and enumerated values, through everything that only wraps a value. */
  function walk(schema: unknown, path: string): void {
    const { shape, def } = schema as { shape?: object; def: Record<string, unknown> };
    switch (def.type) {
      case "object":
        for (const [key, inner] of Object.entries(shape!)) {
          // Lengths by use class are the words of the terms.
          const name = (path === "" ? key : `${path}.${key}`).replace(/useClasses\.NAME\.(?!excluded)/, "");
          keys.push(name);
          walk(inner, name);
        }
        return;
      case "optional":
        walk(def.innerType, path);
        return;
      case "array":
        walk(def.element, path);
        return;
      case "union":
        for (const option of def.options as unknown[]) walk(option, path);
        return;
      case "record":
        walk(def.valueType, `${path}.NAME`);
        return;
      case "enum":
        choices.push(...Object.values(def.entries as Record<string, string>));
        return;
      case "literal":
        for (const one of def.values as unknown[]) if (typeof one === "string") choices.push(one);
        return;
      case "string":
      case "number":
      case "boolean":
        return;
      default:
        throw new Error(`${path}: the walk does not know a schema of type ${String(def.type)}`);
    }
  }

  const parts = [...rowsByHeading.keys()].filter((one) => one.startsWith("Record: "));

  it("explains every key, in its tables and under its whole path", () => {
    expect(keys.length).toBeGreaterThan(80);
    expect(missing(keys, explainedUnder(...parts))).toEqual([]);
  });

  it("explains no key that does not exist", () => {
    expect(missing(explainedUnder(...parts), keys)).toEqual([]);
  });

  it("explains every value of a list", () => {
    expect(choices.length).toBeGreaterThan(50);
    expect(missing(choices)).toEqual([]);
  });

  it.each(Object.entries(ranges))("prints the range of %s", (path, { min, max }) => {
    const printed = (bound: number): string =>
      (bound !== 0 && Math.abs(bound) < 1e-4 ? bound.toFixed(5) : String(bound)).replace("-", "−");
    const [, , range] = parts.map((part) => rowOf(path, part)).find((row) => row)!;
    expect(range).toMatch(new RegExp(`(^|, )${printed(min)} to ${printed(max)}$`));
  });
});

const day = readFileSync("examples/counter-day/records.jsonl", "utf8")
  .split("\n")
  .filter((line) => line !== "")
  .concat(readFileSync("examples/no-start/records.jsonl", "utf8").split("\n"))
  .filter((line) => line !== "")
  .map((line) => evaluate(JSON.parse(line), { explain: true }));

describe("evaluation", () => {
  it("explains the first two levels of every evaluation of the day", () => {
    const keys: string[] = [];
    const addTo = (path: string, value: unknown): void => {
      if (typeof value !== "object" || value === null) return;
      for (const key of Object.keys(value)) keys.push(`${path}.${key}`);
    };
    for (const evaluation of day)
      for (const [key, value] of Object.entries(evaluation)) {
        keys.push(key);
        if (Array.isArray(value)) for (const one of value) addTo(`${key}[]`, one);
        else addTo(key, value);
      }
    expect(distinct(keys).length).toBeGreaterThan(70);
    expect(missing(keys, explainedUnder("The evaluation"))).toEqual([]);
  });

  it("prints the severity that each finding of the day has", () => {
    for (const { code, severity } of day.flatMap(({ findings }) => findings))
      expect(rowOf(code, "Findings")[1], code).toBe(`\`${severity}\``);
  });
});

/** Codes in the first column of the first table of docs/decisions.md whose head begins with a word. */
function decided(word: string): string[] {
  const lines = decisions.split("\n");
  const start = lines.findIndex((line) => line.startsWith(`| ${word} |`));
  const end = lines.findIndex((line, index) => index > start && !line.startsWith("|"));
  return lines.slice(start + 2, end).flatMap((line) => codesIn(line.split(" | ")[0]!));
}

describe("tables that hold exactly the codes there are", () => {
  it.each<[heading: string, codes: readonly string[]]>([
    ["Findings", findingCodes],
    ["Cautions", cautionCodes],
    ["Next steps", Object.keys(english.nextStep)],
    ["Conditions", decided("condition")],
    ["Conditions", Object.keys(english.condition)],
    ["Actions", decided("action")],
    ["Actions", Object.keys(english.action)],
    ["Severities", Object.keys(english.severity)],
    ["Trust levels", Object.keys(english.trust)],
    ["Chemistries", Object.keys(english.chemistry)],
    ["Settlement outcomes", Object.keys(english.outcome)],
    ["Settlement lines", Object.keys(english.line)],
    ["Rules", rules.map(({ code }) => code)],
    ["Causes", [...causeRules.map(({ code }) => code), ...Object.keys(english.support)]],
    ["Policy", Object.keys(defaultPolicy)],
    [
      "Standings",
      every<Standing>({
        read: true,
        secondary: true,
        "from-memory": true,
        "common-practice": true,
        computed: true,
        "our-choice": true,
      }),
    ],
    [
      "Issue codes",
      every<InputIssue["code"]>({
        missing: true,
        "missing-convention": true,
        "wrong-type": true,
        "not-finite": true,
        "out-of-range": true,
        "wrong-unit": true,
        "unknown-key": true,
        "not-a-date": true,
        "not-a-choice": true,
        "too-long": true,
        "wrong-format": true,
        contradiction: true,
        "not-json": true,
      }),
    ],
  ])("%s", (under, codes) => {
    expect(codes.length).toBeGreaterThan(2);
    expect(explainedUnder(under).sort()).toEqual(distinct(codes));
  });

  it("Warranty conventions", () => {
    const pairs = Object.entries(policyConventions).flatMap(([field, values]) =>
      values.map(([value]) => `\`${field}\` \`${value}\``),
    );
    const rows = rowsByHeading.get("Warranty conventions")!.slice(1);
    expect(rows.map(([field, value]) => `${field} ${value}`).sort()).toEqual(pairs.sort());
  });
});

describe("codes that must be explained somewhere", () => {
  it.each<[name: string, codes: readonly string[]]>([
    ["reasons of a settlement", Object.keys(english.settlement)],
    ["answers on eligibility", Object.keys(english.eligibility)],
    ["explanations of amounts", Object.keys(english.explanation)],
    ["date-code schemes", Object.keys(dateSchemes)],
    ["ends of a charge", chargeStopCriteria.map(({ code }) => code)],
    ["what forbids charging", Object.keys(chargingForbidden)],
    ["words of the report's catalogue", Object.keys(english.word)],
  ])("%s", (_, codes) => {
    expect(codes.length).toBeGreaterThan(2);
    expect(missing(codes)).toEqual([]);
  });
});

describe("rating standards", () => {
  it.each(Object.entries(ratingStandards))("%s, with its test", (id, definition) => {
    const [, , edition, test] = rowOf(id, "Rating standards");
    if (definition.edition) expect(edition).toBe(definition.edition);
    const { temperatureCelsius, firstStage, secondStage } = definition;
    if (temperatureCelsius !== undefined)
      expect(test).toContain(`${temperatureCelsius} °C`.replace("-", "−"));
    if (firstStage) expect(test).toContain(`held for ${firstStage.seconds} s, ${firstStage.endVolts} V`);
    else expect(test).not.toContain("held for");
    if (secondStage) expect(test).toContain(`${secondStage.totalSeconds} s`);
  });
});

it("links only to its own headings", () => {
  const anchors = [...glossary.matchAll(/^##+ (.+)$/gm)].map(([, title]) =>
    title!.toLowerCase().replaceAll(" ", "-").replaceAll(":", ""),
  );
  expect(
    missing(
      [...glossary.matchAll(/\]\(#([^)]+)\)/g)].map(([, anchor]) => anchor!),
      anchors,
    ),
  ).toEqual([]);
});

describe("logs", () => {
  it("every kind of segment, defect and measured quantity is explained, and nothing besides", () => {
    expect(explainedUnder("Kinds of segment").sort()).toEqual(
      every<SegmentKind>({
        rest: true,
        discharge: true,
        "charge-constant-current": true,
        "charge-constant-voltage": true,
        crank: true,
        "load-step": true,
        "engine-running": true,
        unclassified: true,
      }).sort(),
    );
    expect(explainedUnder("Defects of a log").sort()).toEqual([...DEFECT_CODES].sort());
    expect(explainedUnder("Measured in a log").sort()).toEqual(
      every<LogQuantityMeasured>({
        "last-rest-voltage": true,
        "settled-voltage": true,
        draw: true,
        crank: true,
        "charging-voltage": true,
        ripple: true,
        capacity: true,
      }).sort(),
    );
  });
});
