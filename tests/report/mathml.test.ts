import { evaluate } from "crankworthy/evaluate";
import { renderFormula } from "crankworthy/report";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { elements, type HtmlNode, parseFragment } from "./parse-html.js";
import { records } from "./records.js";

/** Formulas of rooms that no evaluation passes through. */
const OTHERS = [
  "minutes / 2 + 15.5",
  "0.1 × capacity",
  "3 × capacity",
  "rating / 2",
  "limit − highest",
  "straight line between the rows before and after",
  "emissivity·surface⁴ + (1 − emissivity)·surroundings⁴ = set·reading⁴ + (1 − set)·surroundings⁴ in K",
];
const formulas = [
  ...new Set([
    ...OTHERS,
    ...Object.values(records).flatMap((record) =>
      evaluate(record, { explain: true }).derivation!.map((step) => step.formula),
    ),
  ]),
];

const plain = (text: string): string => text.replace(/\s/g, "").replaceAll("-", "−").replaceAll("*", "·");

/** Reads presentation MathML back, by the rules of arithmetic alone. */
function readBack(node: HtmlNode): string {
  const children = (node.childNodes ?? []).filter((one) => one.nodeName !== "#text" || one.value !== "");
  const [first, second] = children;
  const signs = (one: HtmlNode): string[] =>
    (one.childNodes ?? []).filter((inner) => inner.nodeName === "mo").map((inner) => readBack(inner));
  const isSum = (one: HtmlNode): boolean =>
    signs(one).some((sign) => /^[+−]$/.test(sign)) && !signs(one).includes("(");
  const isProduct = (one: HtmlNode): boolean => signs(one).includes("·") || signs(one).includes("×");
  const within = (one: HtmlNode, when: boolean): string => (when ? `(${readBack(one)})` : readBack(one));
  switch (node.nodeName) {
    case "#text":
      return node.value!;
    case "mfrac":
      return `${within(first!, isSum(first!))}/${within(second!, isSum(second!) || isProduct(second!) || second!.nodeName === "mfrac")}`;
    case "msqrt":
      return `√${within(first!, isSum(first!) || isProduct(first!) || first!.nodeName === "mfrac")}`;
    case "msup": {
      const exponent = readBack(second!);
      return readBack(first!) + (/^\d$/.test(exponent) ? "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(exponent)] : `^${exponent}`);
    }
    default:
      return children.map(readBack).join("");
  }
}

describe("renderFormula", () => {
  it("there are formulas of many kinds", () => {
    expect(formulas.length).toBeGreaterThan(70);
    const drawn = formulas.filter((one) => renderFormula(one).includes("<math"));
    expect(drawn.length).toBeGreaterThan(40);
  });

  it.each(formulas)("%s: says exactly this, read back from the markup", (formula) => {
    expect(plain(readBack(parseFragment(renderFormula(formula))))).toBe(plain(formula));
    for (const one of elements(parseFragment(renderFormula(formula))))
      expect(one.nodeName).toMatch(/^(math|mrow|mi|mn|mo|mtext|mfrac|msup|msqrt)$/);
  });

  it.each([
    [
      "(gravity - empty)/(full - empty)",
      "<mfrac><mrow><mi>gravity</mi><mo>−</mo><mi>empty</mi></mrow><mrow><mi>full</mi><mo>−</mo><mi>empty</mi></mrow></mfrac>",
    ],
    ["189.99 × 40 / 100", "<mfrac><mrow><mn>189.99</mn><mo>×</mo><mn>40</mn></mrow><mn>100</mn></mfrac>"],
    [
      "x × a(T)/a(−18)",
      "<mrow><mi>x</mi><mo>×</mo><mfrac><mrow><mi>a</mi><mo>(</mo><mi>T</mi><mo>)</mo></mrow><mrow><mi>a</mi><mo>(</mo><mn>−18</mn><mo>)</mo></mrow></mfrac></mrow>",
    ],
    ["√(a² + b)", "<msqrt><mrow><msup><mi>a</mi><mn>2</mn></msup><mo>+</mo><mi>b</mi></mrow></msqrt>"],
    ["voltage under load − limit", "<mrow><mtext>voltage under load</mtext><mo>−</mo><mi>limit</mi></mrow>"],
  ])("%s becomes its own structure", (formula, markup) => {
    expect(renderFormula(formula)).toBe(`<math alttext="${formula}">${markup}</math>`);
  });

  it.each([
    "MMYY, MM/YY, MM-YY, MM.YY",
    "YYYY-MM, YYYY/MM, YYYY.MM",
    "price-paid",
    "-30/+0 %",
    "EMF polynomial in log10(molality) solved",
    "u widened by 0.0037/K away from 25 °C",
    "a / b·c",
    "least of share × capacity and the most allowed",
    "a (b",
    "2 (n = 1: x)",
    "",
  ])("%s stays text", (formula) => {
    expect(renderFormula(formula)).toBe(formula);
  });

  it("whatever comes, it says the same and is nothing but formula markup", () => {
    const piece = fc.constantFrom(
      "a",
      "b c",
      "1",
      "2.5",
      "−18",
      "(",
      ")",
      "/",
      " / ",
      "*",
      " × ",
      "·",
      " + ",
      " - ",
      " = ",
      "√",
      "²",
      "^",
      ", ",
      "f(",
      "<b>",
      "&",
      '"',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
        const formula = pieces.join("");
        const tree = parseFragment(renderFormula(formula));
        expect(plain(readBack(tree)).replaceAll("^2", "²").replaceAll("^1", "¹")).toBe(
          plain(formula).replaceAll("^2", "²").replaceAll("^1", "¹"),
        );
        for (const one of elements(tree)) expect(one.nodeName).toMatch(/^m/);
      }),
    );
  });
});
