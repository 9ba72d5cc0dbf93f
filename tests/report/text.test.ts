import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clean, columns, escapeMarkdown, wrap } from "../../src/report/text.js";

const anyText = fc.string({ unit: "binary", maxLength: 200 });

describe("clean", () => {
  it("takes out what moves a cursor, hides or turns text", () => {
    expect(clean("A\u001b[31mB\r\n\tC\u0000")).toBe("A [31mB C");
    expect(clean("abc\u202edef\u2066\u200b\ufeff")).toBe("abcdef");
    expect(clean("half\ud800 pair \u{1f50b}")).toBe("half pair \u{1f50b}");
    expect(clean("one\u2028two\u2029three\u0085four")).toBe("one two three four");
  });

  it("leaves no control or format character in any text, and is done after one go", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const cleaned = clean(text);
        expect(cleaned).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
        expect(clean(cleaned)).toBe(cleaned);
      }),
    );
  });
});

describe("wrap", () => {
  it("breaks at blanks, hangs the lines that follow and keeps number and unit together", () => {
    expect(wrap("charge it with 6\u00a0A for long", 18, "1. ")).toEqual([
      "1. charge it with",
      "   6 A for long",
    ]);
  });

  it("cuts a word that is too long, counting wide characters double", () => {
    expect(wrap("abcdefghij", 4)).toEqual(["abcd", "efgh", "ij"]);
    expect(wrap("電池電池電池", 5)).toEqual(["電池", "電池", "電池"]);
  });

  it("breaks a script without blanks anywhere, so that a number in it leaves no hole", () => {
    expect(wrap("端子間で 12.62\u00a0V です。満充電です。", 16)).toEqual([
      "端子間で 12.62 V",
      "です。満充電で",
      "す。",
    ]);
  });

  it("begins no line with a closing mark and ends none with an opening one", () => {
    expect(wrap("充電してください。次に", 16)).toEqual(["充電してくださ", "い。次に"]);
    expect(wrap("ここは「満充電」です", 8)).toEqual(["ここは", "「満充", "電」です"]);
    expect(wrap("あいうバッテリー", 14)).toEqual(["あいうバッテ", "リー"]);
    const japanese = fc.array(fc.constantFrom(..."電池のー、。「」（）っょ1A "), { maxLength: 80 });
    fc.assert(
      fc.property(japanese, fc.integer({ min: 20, max: 60 }), (characters, width) => {
        // What cannot be kept together must be cut.
        const text = characters
          .join("")
          .replace(/[ー、。「」（）っょ]{3,}/g, "。")
          .trim();
        const lines = wrap(text, width);
        for (const line of lines.slice(1)) expect(line).not.toMatch(/^[、。」）ーっょ]/);
        for (const line of lines.slice(0, -1)) expect(line).not.toMatch(/[「（]$/);
      }),
    );
  });

  it("keeps a number with its counter, and a range of numbers, in one line", () => {
    expect(wrap("製造 2022年3月1日", 14)).toEqual(["製造 2022年3月", "1日"]);
    expect(wrap("容量は 50～60\u00a0Ah", 14)).toEqual(["容量は", "50～60 Ah"]);
    expect(wrap("2022年3月～2024年3月", 14)).toEqual(["2022年3月～", "2024年3月"]);
  });

  it("leaves a word of Hangul, emoji or Latin letters whole", () => {
    expect(wrap("배터리 시험", 8)).toEqual(["배터리", "시험"]);
    expect(wrap("ab cdefg", 6)).toEqual(["ab", "cdefg"]);
  });

  it("keeps the width and loses no character", () => {
    fc.assert(
      fc.property(anyText.map(clean), fc.integer({ min: 10, max: 60 }), (text, width) => {
        const lines = wrap(text, width, "  - ");
        for (const line of lines) expect(columns(line)).toBeLessThanOrEqual(width);
        const bare = (one: string) => one.replace(/\s/g, "");
        expect(bare(lines.map((one) => one.slice(4)).join(""))).toBe(bare(text));
      }),
    );
  });
});

describe("escapeMarkdown", () => {
  it("leaves nothing that Markdown, HTML or an automatic link could take up", () => {
    expect(escapeMarkdown("*a* _b_ `c` [d](e) ![f](g) <i> &amp; a|b ~~x~~")).toBe(
      "\\*a\\* \\_b\\_ \\`c\\` \\[d\\](e) \\!\\[f\\](g) &lt;i&gt; &amp;amp; a\\|b \\~\\~x\\~\\~",
    );
    expect(escapeMarkdown("see https://x.example or www.x.example")).toBe(
      "see https\\://x.example or www\\.x.example",
    );
  });

  it("disarms the start of a line", () => {
    expect(["- a", "+ a", "1. a", "2) a", "# a", "> a", "---"].map(escapeMarkdown)).toEqual([
      "\\- a",
      "\\+ a",
      "1\\. a",
      "2\\) a",
      "\\# a",
      "&gt; a",
      "\\---",
    ]);
  });
});
