import { createRequire } from "node:module";
import { type Evaluation, tryEvaluate } from "crankworthy/evaluate";
import {
  csvHeader,
  csvRow,
  csvText,
  english,
  englishGuidance,
  renderCaution,
  renderDaySummary,
  renderDerivation,
  renderEnd,
  renderFormula,
  renderHtml,
  renderJson,
  renderMarkdown,
  renderStep,
  renderTicket,
  renderWide,
} from "crankworthy/report";
import { parse } from "csv-parse/sync";
import papa from "papaparse";
import { describe, expect, it } from "vitest";
import { clean, columns } from "../../src/report/text.js";
import { attribute, elements, type HtmlNode, parseFragment, parsePage, textOf } from "./parse-html.js";
import { changed, evaluations, records } from "./records.js";

const markdown = (
  createRequire(import.meta.url)("markdown-it") as (options: object) => { render(text: string): string }
)({ html: true, linkify: true });

const HOSTILE: Readonly<Record<string, string>> = {
  script: "<script>alert(1)</script>",
  "end of style and title": "</style></title></p></main><script src=//example.org></script>",
  "event attribute": '<img src=x onerror="alert(1)">',
  "attribute breakout": `" onmouseover="alert(1)" x='`,
  svg: "<svg onload=alert(1)><foreignObject><iframe src=javascript:alert(1)></iframe></foreignObject></svg>",
  mathml:
    '</math><math href="javascript:alert(1)"><mtext><style><img src onerror=alert(1)></style></mtext></math>',
  comment: "<!-- --!> <![CDATA[ ]]> <?php ?> <!doctype html>",
  entities: "&lt;script&gt; &#60;b&#62; &amp; &nbsp;",
  markdown: "# h\n- [a](javascript:alert(1)) ![b](https://example.org/c) `d` **e** ~~f~~ | g\n***\n> q",
  "links by themselves": "https://example.org www.example.org a@example.org <https://example.org>",
  "reference link": "[a]: https://example.org\n\n[a]",
  "formula of a sheet": '=HYPERLINK("https://example.org","a")',
  "formula behind quotes": '"=1+1',
  "other formulas": "@SUM(A1)\t+1\t-1",
  "cell and row ends": 'a","=1+1"\r\n=2+2;=3+3',
  "bidi controls": "a\u202eb\u2066c\u2069\u200f\u200ed\u061c",
  "control characters": "a\u0000b\u0007\u001b[2J\u001b]8;;https://example.org\u0007c\u0085\u2028\u2029\u007f",
  "lone surrogates": "a\ud800b\udc00",
  "invisible letters": "a\u200b\u2060\ufeff\u00adb\ue000",
  template: "{id} {constructor} {__proto__:V} [{x}] $& $1",
  "inherited name": "__proto__",
  long: "x".repeat(10_000),
  "long with markup": "<b>*=".repeat(2_000),
  "wide letters": "電池".repeat(5_000),
  "combining marks": `e${"\u0301".repeat(500)}`,
};

/** An evaluation that carries a text wherever a text of a record, of terms or of a hand-made part can stand. */
function poisoned(text: string): Evaluation {
  const base = evaluations.claimCash!;
  const [step] = [...derivationOf()];
  const { settlement, eligibility } = base.warranty!;
  return {
    ...base,
    id: text,
    identity: {
      ...base.identity,
      label: { scheme: "etn", text } as unknown as NonNullable<Evaluation["identity"]["label"]>,
    },
    age: { ...evaluations.dateCode!.age!, dateCode: { ...evaluations.dateCode!.age!.dateCode, text } },
    verdict: { ...base.verdict, decidedBy: text },
    findings: [
      { code: "label-refused", severity: "hazard", evidence: { text, scheme: text } },
      { code: "date-code-ambiguous", severity: "warning", evidence: { text, readings: 2, settledBy: text } },
      { code: "case-damaged", severity: "note", evidence: { signs: text } },
    ],
    cautions: [{ ...base.cautions[0]!, code: "return-and-transport", parameters: { unNumber: text } }],
    nextSteps: [{ code: "settle-cause", parameters: { cause: text, settleBy: text } }],
    refusals: [{ refused: true, about: text, code: text, reason: text, wouldHelp: text }],
    warranty: {
      eligibility,
      settlement: {
        ...settlement!,
        currency: text,
        lines: settlement!.lines.map((one) => ({
          ...one,
          explanation: { ...one.explanation, code: text, formula: text, parameters: { citation: text } },
        })),
      },
    },
    derivation: [
      { ...step!, quantity: text, formula: text, source: text, inputs: { [text]: text, x: 1 } },
      { ...step!, quantity: text, formula: text, unit: text, result: text, source: text },
    ],
  };
}

function derivationOf(): NonNullable<Evaluation["derivation"]> {
  const done = tryEvaluate(records.good!, { explain: true });
  if (!done.ok) throw new Error("good is not good");
  return done.evaluation.derivation!;
}

const HTML_ELEMENTS =
  /^(?:html|head|meta|title|style|body|header|main|section|div|h[1-3]|p|ul|ol|li|strong|span|bdi|a|math|mrow|mi|mn|mo|mtext|mfrac|msup|msqrt)$/;

function expectHarmless(root: HtmlNode): void {
  for (const one of elements(root)) {
    expect(one.nodeName).toMatch(HTML_ELEMENTS);
    for (const { name, value } of one.attrs!) {
      expect(name).toMatch(
        /^(?:lang|dir|charset|http-equiv|content|name|id|class|href|rel|aria-label|alttext)$/,
      );
      if (name === "href") expect(value).toMatch(/^(?:#step-\d+|https:\/\/)/);
      if (name === "id") expect(value).toMatch(/^(?:step-\d+|[a-z]+)$/);
    }
  }
}

/** Nothing in it moves a cursor, turns the direction or hides. */
function expectPlain(text: string, width?: number): void {
  expect(text).not.toMatch(/(?!\n)[\p{Cc}\p{Cf}\p{Cs}\p{Co}\u2028\u2029]/u);
  if (width !== undefined)
    for (const one of text.split("\n")) expect(columns(one)).toBeLessThanOrEqual(width);
}

describe.each(Object.entries(HOSTILE))("%s", (_, text) => {
  const evaluation = poisoned(text);

  it("plain text: no control, no line too wide", () => {
    for (const width of [20, 42, 80]) {
      expectPlain(renderTicket(evaluation, { width }), width);
      expectPlain(renderWide(evaluation, { width }), width);
      expectPlain(renderDerivation(evaluation, { width }), width);
    }
  });

  it("Markdown: read by a Markdown reader it is headings, lists and the text itself", () => {
    const page = renderMarkdown(evaluation);
    expectPlain(page);
    const root = parseFragment(markdown.render(page));
    for (const one of elements(root)) {
      expect(one.nodeName).toMatch(/^(?:h1|h2|p|ul|ol|li|strong|br)$/);
      expect(one.attrs).toEqual([]);
    }
    const words = (one: string): string => one.replace(/\s/g, "");
    expect(words(textOf(root))).toContain(words(clean(text)));
  });

  it.each(["ltr", "rtl"] as const)(
    "HTML, %s: a well-formed page in which nothing is active, and the text is shown",
    (direction) => {
      const messages = { ...english, direction };
      const { root, errors } = parsePage(renderHtml(evaluation, { messages }));
      expect(errors).toEqual([]);
      expectHarmless(root);
      expect(elements(root).filter((one) => one.nodeName === "style")).toHaveLength(1);
      const [header] = elements(root).filter((one) => one.nodeName === "header");
      // Our own mark before a sign keeps an order and turns nothing.
      expect(textOf(header!).replaceAll("\u200e", "")).toContain(clean(text));
      const [title] = elements(root).filter((one) => one.nodeName === "title");
      expect(textOf(title!)).toContain(clean(text));
      const quantities = elements(root).filter((one) => attribute(one, "class") === "quantity");
      expect(quantities.map(textOf)).toEqual([clean(text), clean(text)]);
    },
  );

  it("a picture of it is no picture", () => {
    expect(() => renderHtml(evaluation, { pictures: [text] })).toThrow(RangeError);
    expect(() => renderHtml(evaluation, { pictures: [`<svg>${text}<`] })).toThrow(RangeError);
  });

  it("a formula of it is text or formula markup", () => {
    for (const one of elements(parseFragment(renderFormula(text))))
      expect(one.nodeName).toMatch(/^m(?:ath|row|[ino]|text|frac|sup|sqrt)$/);
  });

  it("JSON: comes back unchanged, and holds no markup", () => {
    const json = renderJson(evaluation);
    expect(json).not.toContain("<");
    expect((JSON.parse(json) as Evaluation).id).toBe(text);
    expect((JSON.parse(json) as Evaluation).derivation![0]!.quantity).toBe(text);
  });

  it("CSV: one row with as many cells as the header, no formula, the text comes back", () => {
    for (const [delimiter, mark] of [
      ["comma", ","],
      ["semicolon", ";"],
      ["tab", "\t"],
    ] as const) {
      const sheet = csvHeader({ delimiter }) + csvRow(evaluation, { delimiter });
      const [names, cells, ...more] = parse(sheet, { delimiter: mark }) as string[][];
      expect(papa.parse(sheet, { delimiter: mark, skipEmptyLines: true }).data).toEqual([names, cells]);
      expect(more).toEqual([]);
      expect(cells).toHaveLength(names!.length);
      const cell = (name: string): string => cells![names!.indexOf(name)]!;
      for (const name of ["id", "labelText", "dateCodeText", "decidedBy", "currency"])
        expect(csvText(cell(name))).toBe(clean(text));
      for (const one of cells!) if (!/^-?\d/.test(one)) expect(one).not.toMatch(/^[\s"]*[=+\-@]/);
      expectPlain(sheet.replace(/[\r\t]/g, ""));
    }
  });

  it("guidance and summary", () => {
    const step = {
      code: "measure-cranking-current",
      parameters: { standard: "sae-j537", text },
      why: { code: "ability-not-known" },
      riskNow: 0.3,
      expectedRiskDrop: 0.1,
    } as unknown as Parameters<typeof renderStep>[0];
    const guidance = {
      ...englishGuidance,
      step: Object.fromEntries(
        Object.keys(englishGuidance.step).map((key) => [key, "{text} {standard}"]),
      ) as typeof englishGuidance.step,
    };
    for (const options of [{}, { guidance }])
      for (const code of Object.keys(englishGuidance.step))
        expectPlain(renderStep({ ...step, code } as typeof step, { ...options, width: 40 }), 40);
    expectPlain(renderCaution(evaluation.cautions[0]!, { width: 40 }), 40);
    expectPlain(renderEnd({ because: "settled", riskNow: 0.1 }, { width: 40 }), 40);
    const counts = JSON.parse(`{${JSON.stringify(text)}: 3}`) as Record<string, number>;
    const summary = {
      count: 3,
      refused: 0,
      byCondition: counts,
      byAction: counts,
      byChemistry: counts,
      byRatingStandard: counts,
      byFinding: counts,
    };
    expectPlain(renderDaySummary(summary, { width: 40 }), 40);
  });

  it("through the front door: refused there, or harmless in the end", () => {
    const record = changed({
      id: text,
      identity: { dateCode: { text }, rating: undefined, labelCode: { scheme: "etn", text } },
    });
    const done = tryEvaluate(record, { explain: true });
    if (!done.ok) {
      expect(done.issues.length).toBeGreaterThan(0);
      return;
    }
    const { root, errors } = parsePage(renderHtml(done.evaluation));
    expect(errors).toEqual([]);
    expectHarmless(root);
    expectPlain(renderTicket(done.evaluation), 42);
  });
});
