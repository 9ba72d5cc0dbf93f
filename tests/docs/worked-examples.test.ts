import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { normalCdf } from "../../src/numeric/index.js";

const FOLDER = "docs/worked-examples";

/** Numbers that were given out. They are cited, so none is ever renamed, renumbered or taken away; new ones go to the end. */
const GIVEN_OUT = [
  "WE-01-rating-conversion",
  "WE-02-charge-from-rest-voltage",
  "WE-03-charge-from-gravity",
  "WE-04-voltage-and-gravity-combined",
  "WE-05-cold-start-margin",
  "WE-06-load-test-in-the-cold",
  "WE-07-guard-banded-decision",
  "WE-08-ambiguous-date-code",
  "WE-09-proration-two-conventions",
  "WE-10-lagged-resistance",
  "WE-11-short-relaxation",
  "WE-12-parasitic-draw",
  "WE-13-weibull-warranty-cost",
  "WE-14-charge-time",
  "WE-15-freezing",
  "WE-16-no-defect-share",
  "WE-17-peukert-not-identifiable",
  "WE-18-uncertainty-budget",
] as const;

const SECTIONS = ["Problem", "Data", "By hand", "By the library", "Compared", "Exercises"] as const;
/** What a source is worth; every page says it of its data. */
const STANDING = /\((?:read|secondary|from memory|common practice|computed|our choice|invented)\b/;

const files = readdirSync(FOLDER).filter((name) => /^WE-.*\.md$/.test(name));
const index = readFileSync(`${FOLDER}/README.md`, "utf8");

function sectionsOf(text: string): Map<string, string> {
  const parts = text.split(/^## (.+)$/m);
  const found = new Map<string, string>();
  for (let i = 1; i < parts.length; i += 2) found.set(parts[i]!, parts[i + 1]!);
  return found;
}

const blocksOf = (text: string): string[] =>
  [...text.matchAll(/^```ts\n([\s\S]*?)^```$/gm)].map((m) => m[1]!);
const stringsChecked = (code: string): string[] => [...code.matchAll(/\/\/ => "(.*)"$/gm)].map((m) => m[1]!);

interface Arithmetic {
  readonly written: string;
  readonly left: number;
  readonly printed: number;
  readonly decimals: number;
}

/** The lines that a reader keys into a calculator: code spans `expression = number unit` without any symbol on the left. */
function arithmeticOf(text: string): Arithmetic[] {
  const found: Arithmetic[] = [];
  for (const [, written] of text.replace(/^```[\s\S]*?^```$/gm, "").matchAll(/`([^`\n]+)`/g)) {
    const [expression, result, ...rest] = written!.split(" = ");
    const printed = /^−?\d+(?:\.(\d+))?/.exec(result ?? "");
    if (!expression || !printed || rest.length > 0) continue;
    const script = expression
      .replaceAll("−", "-")
      .replaceAll("×", "*")
      .replaceAll("√(", "Math.sqrt(")
      .replaceAll("²", "**2")
      .replaceAll("³", "**3")
      .replaceAll("⁴", "**4")
      .replace(/\bexp\(/g, "Math.exp(")
      .replace(/\bln\(/g, "Math.log(")
      .replace(/\blog10\(/g, "Math.log10(")
      .replaceAll("Φ(", "phi(");
    if (/[a-zA-ZΦ_]/.test(script.replace(/Math\.\w+\(|phi\(/g, ""))) continue;
    found.push({
      written: written!,
      left: new Function("phi", `return ${script}`)(normalCdf) as number,
      printed: Number(printed[0].replace("−", "-")),
      decimals: printed[1]?.length ?? 0,
    });
  }
  return found;
}

it("keeps every number that was given out, in order, and at least twelve", () => {
  expect(files.map((file) => file.replace(/\.md$/, ""))).toEqual([...GIVEN_OUT]);
  expect(files.length).toBeGreaterThanOrEqual(12);
});

describe.each(files)("%s", (file) => {
  const text = readFileSync(`${FOLDER}/${file}`, "utf8");
  const id = file.slice(0, 5);
  const sections = sectionsOf(text);
  const section = (name: (typeof SECTIONS)[number]): string => sections.get(name) ?? "";

  it("has its number, its parts in order, and a line in the index", () => {
    const title = /^# (WE-\d\d) · (.+)\n/.exec(text);
    expect(title?.[1]).toBe(id);
    expect([...sections.keys()]).toEqual([...SECTIONS]);
    for (const body of sections.values()) expect(body.trim().length).toBeGreaterThan(80);
    expect(index).toContain(`| [${id}](${file}) | ${title?.[2]} |`);
  });

  it("names the source of its data and what that is worth, and no path of a machine", () => {
    expect(section("Data")).toMatch(/Sources?:/);
    expect(section("Data")).toMatch(STANDING);
    expect(text).not.toMatch(/\/work\/|\/tmp\/|reference\/\w+\.md/);
  });

  it("has arithmetic by hand that is right to the digits printed", () => {
    const lines = arithmeticOf(text);
    // None is passed over: whatever has an equals sign in a code span is worked out again.
    const written = text.replace(/^```[\s\S]*?^```$/gm, "").match(/`[^`\n]+ = [^`\n]+`/g) ?? [];
    expect(lines.length).toBe(written.length);
    expect(arithmeticOf(section("By hand")).length).toBeGreaterThanOrEqual(3);
    for (const { written, left, printed, decimals } of lines)
      expect(Math.abs(left - printed), written).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-6));
  });

  it("has one result by hand, which the library's block ends with", () => {
    const results = [...text.matchAll(/^Result: \*\*(.+)\*\*$/gm)].map((m) => m[1]!);
    expect(results.length).toBe(1);
    expect(section("By hand")).toContain(`Result: **${results[0]}**`);
    const blocks = blocksOf(section("By the library"));
    expect(blocks.length).toBe(1);
    const last = blocks[0]!.trimEnd().split("\n").at(-1)!;
    expect(stringsChecked(last)).toEqual(results);
  });

  it("compares with what is published, or says that nothing is", () => {
    expect(section("Compared")).toMatch(/\*\*Difference:\*\*|\*\*Nothing published:\*\*/);
  });

  it("has two exercises, with folded answers that an executed block ends with", () => {
    const [asked, folded = ""] = section("Exercises").split("<details>");
    expect([...asked!.matchAll(/^(\d)\. /gm)].map((m) => m[1])).toEqual(["1", "2"]);
    const answers = [...folded.matchAll(/Answer: \*\*(.+?)\*\*/g)].map((m) => m[1]!);
    expect(answers.length).toBe(2);
    expect(folded).toContain("</details>");
    expect(
      blocksOf(folded)
        .flatMap(stringsChecked)
        .filter((one) => answers.includes(one)),
    ).toEqual(answers);
  });
});

it("is cited as the version that is published", () => {
  const citation = readFileSync("CITATION.cff", "utf8");
  const { name, version, license } = JSON.parse(readFileSync("package.json", "utf8")) as Record<
    string,
    string
  >;
  const field = (key: string) => new RegExp(`^${key}: "?([^"\\n]+)"?$`, "m").exec(citation)?.[1];
  expect(field("cff-version")).toBe("1.2.0");
  expect(field("version")).toBe(version);
  expect(field("license")).toBe(license);
  expect(field("title")).toContain(name);
  expect(index).toContain(`version ${version}`);
});
