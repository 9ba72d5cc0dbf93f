import { english as catalogue } from "crankworthy/report";
import { describe, expect, it } from "vitest";
import { asPrinted, fillTemplate, fixed, quantity, range, shareRange } from "../../src/report/format.js";
import { voiceOf } from "../../src/report/voice.js";

const english = voiceOf(catalogue);

/** No-break spaces shown as blanks. */
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const show = (value: number, unit: string) => plain(quantity(value, unit, english));

describe("numbers", () => {
  it("have the decimals of their unit", () => {
    expect(show(12.6249, "V")).toBe("12.62 V");
    expect(show(587.67, "A")).toBe("588 A");
    expect(show(0.975, "%")).toBe("98 %");
    expect(show(-18.4, "°C")).toBe("-18 °C");
    expect(show(7.54, "h")).toBe("7.5 h");
    expect(show(8, "h")).toBe("8 h");
    expect(show(1.2649, "g")).toBe("1.265");
    expect(show(-0.7, "-V")).toBe("0.70 V");
  });

  it("never show a minus zero, an exponent of a small number, or what is no number", () => {
    expect(fixed(-0.004, 2, english)).toBe("0.00");
    expect(fixed(-0.4, 0, english)).toBe("0");
    expect(fixed(1e-9, 2, english)).toBe("0.00");
    expect(fixed(Number.NaN, 0, english)).toBe("?");
    expect(show(Number.POSITIVE_INFINITY, "V")).toBe("?");
  });

  it("as printed keep the digits of the label", () => {
    expect(plain(asPrinted(44.5, "Ah", english))).toBe("44.5 Ah");
  });

  it("follow the decimal mark of the language", () => {
    const comma = voiceOf({ ...catalogue, language: "de" });
    expect(plain(quantity(12.5, "V", comma))).toBe("12,50 V");
    expect(plain(asPrinted(44.5, "Ah", comma))).toBe("44,5 Ah");
  });
});

describe("languages", () => {
  const template = "{n:n} {n#one=day|two=two of them|few=few|other=days}";
  const counted = (language: string, n: number) =>
    plain(fillTemplate(voiceOf({ ...catalogue, language }), template, { n }));

  it("pick the plural by the rule of the language, and the last form where a rule names none", () => {
    expect([1, 2, 5].map((n) => counted("en-GB", n))).toEqual(["1 day", "2 days", "5 days"]);
    expect([0, 1, 2].map((n) => counted("fr", n))).toEqual(["0 day", "1 day", "2 days"]);
    expect([1, 2, 3, 11].map((n) => counted("ar", n))).toEqual([
      "1 day",
      "2 two of them",
      "3 few",
      "11 days",
    ]);
    expect(counted("ja", 1)).toBe("1 days");
  });

  it("write a day their way, whatever the machine's zone, and leave alone what is no day", () => {
    const day = (language: string, iso: string) =>
      fillTemplate(voiceOf({ ...catalogue, language }), "{day:date}", { day: iso });
    expect(day("en-GB", "2026-03-01")).toBe("1 Mar 2026");
    expect(day("de", "2026-03-01")).toBe("1. März 2026");
    expect(day("ja", "2026-03-01")).toBe("2026年3月1日");
    expect(day("ar", "2026-03-01")).toMatch(/^1 \S+ 2026$/);
    expect(day("de", "2026-02-29")).toBe("2026-02-29");
  });

  it("keep the digits 0 to 9 and the unit's symbol", () => {
    expect(plain(quantity(-12.5, "V", voiceOf({ ...catalogue, language: "ar-EG" })))).toMatch(/-12\D50 V$/);
  });
});

describe("how sure", () => {
  it("counts in 100, near certainty in 1000, and never claims certainty", () => {
    expect([0.5, 0.97, 0.99, 0.01].map((p) => show(p, "p"))).toEqual([
      "50 in 100",
      "97 in 100",
      "99 in 100",
      "1 in 100",
    ]);
    expect([0.995, 0.004].map((p) => show(p, "p"))).toEqual(["995 in 1000", "4 in 1000"]);
    expect([1, 0.9999].map((p) => show(p, "p"))).toEqual(Array(2).fill("more than 999 in 1000"));
    expect([0, 0.0004].map((p) => show(p, "p"))).toEqual(Array(2).fill("less than 1 in 1000"));
    expect(show(1.2, "p")).toBe("?");
  });
});

describe("intervals", () => {
  it("carry the unit once, and one number when both ends read the same", () => {
    expect(plain(range({ lower: 314.6, upper: 480.9 }, "A", english))).toBe("from 315 to 481 A");
    expect(plain(range({ lower: 12.001, upper: 12.004 }, "V", english))).toBe("12.00 V");
  });

  it("of a share say what lies outside the possible instead of showing it", () => {
    const charge = (lower: number, upper: number) => plain(shareRange({ lower, upper }, 1, english));
    expect(charge(0.57, 0.93)).toBe("from 57 to 93 %");
    expect(charge(0.81, 1.17)).toBe("at least 81 %");
    expect(charge(-0.1, 0.2)).toBe("at most 20 %");
    expect(charge(-0.1, 1.1)).toBe("anything from empty to full");
    expect(charge(-0.3, -0.1)).toBe("at most 0 %");
    expect(charge(1.02, 1.3)).toBe("at least 100 %");
  });

  it("of an ability may exceed the rating", () => {
    expect(plain(shareRange({ lower: 0.95, upper: 1.2 }, Number.POSITIVE_INFINITY, english))).toBe(
      "from 95 to 120 %",
    );
  });
});

describe("templates", () => {
  const fill = (template: string, parameters: Record<string, number | string>) =>
    plain(fillTemplate(english, template, parameters));

  it("leave out a part in brackets when a value in it is missing, the inner one alone if that suffices", () => {
    expect(fill("A[ b {x:n}[ c {y:n}]].", { x: 1, y: 2 })).toBe("A b 1 c 2.");
    expect(fill("A[ b {x:n}[ c {y:n}]].", { x: 1 })).toBe("A b 1.");
    expect(fill("A[ b {x:n}[ c {y:n}]].", { y: 2 })).toBe("A.");
    expect(fill("A[ b {x}].", { x: "" })).toBe("A.");
  });

  it("show a missing value outside brackets as ?", () => {
    expect(fill("{x:V}", {})).toBe("?");
  });

  it("never take a value for a template, nor an inherited name for a value", () => {
    expect(fill("{x}[ {y}]", { x: "{y} [z]", y: "$& {x}" })).toBe("{y} [z] $& {x}");
    expect(fill("[{constructor}]", {})).toBe("");
  });

  it("put codes into words, unknown ones with blanks", () => {
    expect(fill("{x:w}", { x: "loose-post, not-a-code" })).toBe("loose post, not a code");
    expect(fill("{x:w}", { x: "constructor" })).toBe("constructor");
  });
});
