import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  createTraceThinner,
  englishPictureWords,
  type LogTrace,
  logTracePicture,
} from "../../src/pictures/index.js";
import { all, descriptionOf, expectSoundPicture, readSvg, shownTexts } from "./read-svg.js";
import { segment } from "./segments.js";

/** A series from rows of time, volts and amperes. */
function series(rows: readonly (readonly [number, number, number])[]): LogTrace["trace"] {
  const column = (index: 0 | 1 | 2) => Float64Array.from(rows, (row) => row[index]);
  return { seconds: column(0), volts: column(1), amperes: column(2) };
}

const minute = series(Array.from({ length: 61 }, (_, i) => [i, 12.6 - 0.01 * i, i === 30 ? -185 : -2]));
const curves = (svg: unknown) => all(readSvg(svg), "path").map(({ attributes }) => attributes.d!);
const pieces = (path: string) => path.split("M").length - 1;

describe("logTracePicture", () => {
  it("shows both quantities, labels their extremes and tells them aloud", () => {
    const root = expectSoundPicture(logTracePicture({ trace: minute, name: "van 7" }));
    expect(shownTexts(root)).toEqual(
      expect.arrayContaining(["van 7", "12.60\u00a0V", "12.00\u00a0V", "−185\u00a0A"]),
    );
    expect(descriptionOf(root)).toContain("Current between −185\u00a0A and −2\u00a0A; positive charges.");
  });

  it("tells segments by letter, word and hatch, and aloud in order", () => {
    const segments = [segment("rest", 0, 20), segment("discharge", 20, 59.9), segment("crank", 59.9, 60)];
    const root = expectSoundPicture(logTracePicture({ trace: minute, segments }));
    expect(shownTexts(root)).toEqual(
      expect.arrayContaining([
        "R",
        "D",
        "S",
        "rest: 1×, 20.0\u00a0s in all",
        "engine start: 1×, 0.100\u00a0s in all",
      ]),
    );
    expect(descriptionOf(root)).toContain(
      "rest from 0.0\u00a0s to 20.0\u00a0s; discharge from 20.0\u00a0s to 59.9\u00a0s; engine start from 59.9\u00a0s to 60.0\u00a0s.",
    );
    // A tenth of a second is less than a pixel here: a stroke, and the picture says what strokes are.
    expect(shownTexts(root).join(" ")).toContain(englishPictureWords["trace.narrow"]);
    expect(all(root, "pattern")).toHaveLength(2);
  });

  it("leaves a gap a gap", () => {
    const rows = Array.from({ length: 200 }, (_, i) => [i < 100 ? i : i + 479, 12.5, -1] as const);
    const svg = logTracePicture({ trace: series(rows) });
    expect(curves(svg).map(pieces)).toEqual([2, 2]);
    expect(descriptionOf(expectSoundPicture(svg))).toContain("the longest lasts 8.0\u00a0min");
    expect(curves(logTracePicture({ trace: series(rows) }, { gapSeconds: Infinity })).map(pieces)).toEqual([
      1, 1,
    ]);
  });

  it("says which quantity was not recorded", () => {
    const trace = series([
      [0, 12.6, Number.NaN],
      [10, 12.5, Number.NaN],
    ]);
    const root = expectSoundPicture(logTracePicture({ trace }));
    expect(shownTexts(root)).toContain("Current was not recorded.");
    expect(descriptionOf(root)).toContain("Current was not recorded.");
    expect(curves(logTracePicture({ trace }))).toHaveLength(1);
  });

  it("refuses a log without a reading", () => {
    expect(logTracePicture({ trace: series([]) })).toMatchObject({ refused: true, code: "no-rows" });
    expect(logTracePicture({ trace: series([[Number.NaN, 12, 1]]) })).toMatchObject({ code: "no-rows" });
    expect(logTracePicture({ trace: series([[1, Number.NaN, Number.NaN]]) })).toMatchObject({
      code: "no-rows",
    });
  });

  it("draws a million rows in a bounded picture, with every peak", () => {
    const thinner = createTraceThinner();
    const rows = 50_000;
    for (let k = 0; k < 20; k++) {
      const at = (i: number) => k * rows + i;
      thinner.push({
        firstRow: at(0) + 1,
        rows,
        seconds: Float64Array.from({ length: rows }, (_, i) => at(i) / 100),
        volts: Float64Array.from({ length: rows }, (_, i) =>
          at(i) === 654_321 ? 8.88 : 12.6 + (i % 7) / 100,
        ),
        amperes: Float64Array.from({ length: rows }, (_, i) => (at(i) === 654_322 ? -317 : (i % 11) - 5)),
      });
    }
    const svg = logTracePicture({ trace: thinner.finish() }, { width: 800 });
    const root = expectSoundPicture(svg);
    expect(String(svg).length).toBeLessThan(100_000);
    expect(shownTexts(root)).toEqual(expect.arrayContaining(["8.88\u00a0V", "−317\u00a0A"]));
  });

  it("is sound for whatever numbers a log holds", () => {
    const wild = fc.oneof(
      fc.double(),
      fc.double({ min: -20, max: 20 }),
      fc.constantFrom(0, 1e300, -1e300, Number.NaN),
    );
    const row = fc.tuple(fc.oneof(fc.double(), fc.integer({ min: 0, max: 1e6 })), wild, wild);
    fc.assert(
      fc.property(fc.array(row, { maxLength: 40 }), fc.integer({ min: 280, max: 2000 }), (rows, width) => {
        const svg = logTracePicture({ trace: series(rows) }, { width });
        if (typeof svg === "string") expectSoundPicture(svg);
        else expect(svg.code).toBe("no-rows");
      }),
      { numRuns: 150 },
    );
  });

  it("lets no name become markup", () => {
    const name = `<script>alert("1")</script> & ' ]]> \u0000\u202e\ud800 {rows}`;
    const svg = String(logTracePicture({ trace: minute, name }));
    const root = readSvg(svg);
    for (const bad of ["<script", "\u202e", "\u0000"]) expect(svg).not.toContain(bad);
    expect(shownTexts(root).join(" ")).toContain(`<script>alert("1")</script> & ' ]]>`);
    expect(descriptionOf(root)).toContain("{rows}");
  });

  it("says when an axis leaves values out, and never draws outside it", () => {
    const options = { voltsAxis: { lower: 12.2, upper: 13 } };
    const root = expectSoundPicture(logTracePicture({ trace: minute }, options));
    expect(descriptionOf(root)).toContain(
      "values outside 12.2\u00a0V to 13.0\u00a0V lie outside the picture",
    );
    expect(all(root, "path")[0]!.attributes["clip-path"]).toMatch(/^url\(#.*clip-V\)$/);
    expect(shownTexts(root)).not.toContain("12.00\u00a0V");
  });

  it("throws for arguments that mean nothing", () => {
    expect(() => logTracePicture({ trace: minute }, { gapSeconds: 0 })).toThrow(RangeError);
    expect(() => logTracePicture({ trace: minute }, { width: 100 })).toThrow(RangeError);
    expect(() => logTracePicture({ trace: minute }, { id: 'a"b' })).toThrow(RangeError);
    expect(() => logTracePicture({ trace: minute }, { voltsAxis: { lower: 2, upper: 1 } })).toThrow(
      RangeError,
    );
  });

  it("is the same text every time, and two logs on one page share no id", () => {
    const svg = logTracePicture({ trace: minute });
    expect(logTracePicture({ trace: minute })).toBe(svg);
    const other = logTracePicture({ trace: minute, name: "another" });
    expect(readSvg(other).attributes.id).not.toBe(readSvg(svg).attributes.id);
    expect(readSvg(logTracePicture({ trace: minute }, { id: "morning" })).attributes.id).toBe("morning");
  });

  it("runs sentences of a right-to-left language from the right, and keeps the axes", () => {
    const words = {
      ...englishPictureWords,
      lang: "ar",
      "trace.title": "ما سجله المسجل",
      "trace.voltage": "الجهد بوحدة V",
    };
    const root = readSvg(logTracePicture({ trace: minute }, { words }));
    expect(root.attributes.direction).toBe("ltr");
    const title = all(root, "text").find(({ text }) => text === words["trace.title"])!;
    expect(title.attributes).toMatchObject({ direction: "rtl", x: "706" });
    expect(title.attributes["text-anchor"]).toBeUndefined();
    const plain = readSvg(logTracePicture({ trace: minute }));
    expect(all(root, "path").map((one) => one.attributes.d)).toEqual(
      all(plain, "path").map((one) => one.attributes.d),
    );
  });

  it("writes numbers as the language of its words does", () => {
    const words = { ...englishPictureWords, lang: "de" };
    expect(shownTexts(readSvg(logTracePicture({ trace: minute }, { words })))).toContain("12,60\u00a0V");
  });
});
