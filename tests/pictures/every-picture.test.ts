import { describe, expect, it } from "vitest";
import { type BatteryRecord, evaluate } from "../../src/evaluate/index.js";
import {
  abilityPicture,
  chargePicture,
  coldStartPicture,
  englishPictureWords,
  logTracePicture,
  type PictureOptions,
  type PictureWords,
  pictureWordArguments,
  warrantyPicture,
} from "../../src/pictures/index.js";
import { checkedSvg } from "../../src/report/check-svg.js";
import { worn } from "./evaluations.js";
import { all, expectSoundPicture, readSvg } from "./read-svg.js";
import { segment } from "./segments.js";

const series = {
  seconds: Float64Array.of(0, 60, 120, 180),
  volts: Float64Array.of(12.7, 12.6, 11.9, 12.4),
  amperes: Float64Array.of(0, 0, -25, 0),
};

function pictures(id: string, options: PictureOptions): Record<string, unknown> {
  const record: BatteryRecord = { ...worn, id };
  const evaluation = evaluate(record);
  const segments = [segment("rest", 0, 60), segment("discharge", 60, 180)];
  return {
    trace: logTracePicture({ trace: series, segments, name: id }, options),
    charge: chargePicture(evaluation, options),
    ability: abilityPicture(evaluation, options),
    "cold start": coldStartPicture({ evaluation, record }, options),
    warranty: warrantyPicture({ evaluation, record }, options),
  };
}

describe.each(Object.keys(pictures("x", {})))("the picture of %s", (name) => {
  const draw = (options: PictureOptions = {}, id = "B-17") => pictures(id, options)[name] as string;

  it.each([280, 360, 520, 800, 2000])("is sound at %i px", (width) => {
    expectSoundPicture(draw({ width }));
  });

  it("keeps its text within its edges on a phone, as far as the width of letters is known", () => {
    for (const { attributes, text } of all(readSvg(draw({ width: 360 })), "text")) {
      // Half an em a letter: less than the estimate in use, so this fails only where text truly leaves.
      const wide = [...text].length * Number(attributes["font-size"]) * 0.45;
      const [x, anchor] = [Number(attributes.x), attributes["text-anchor"] ?? "start"];
      const left = anchor === "start" ? x : anchor === "end" ? x - wide : x - wide / 2;
      expect(left, text).toBeGreaterThanOrEqual(0);
      expect(left + wide, text).toBeLessThanOrEqual(360);
    }
  });

  it.each(["auto", "light", "dark"] as const)("may stand in a report, in the %s scheme", (scheme) => {
    for (const options of [{ scheme }, { scheme, id: "mine", width: 320 }])
      expect(checkedSvg(draw(options), name)).toBe(draw(options));
    expect(checkedSvg(draw({ scheme }, `position: url(x) & "`), name)).toContain("position: url(x) &amp;");
  });

  it("lets no name become markup or a template", () => {
    const hostile = `"><script>alert(1)</script>&{id}'`;
    const svg = draw({}, hostile);
    expect(svg).not.toContain("<script");
    expect(readSvg(svg).name).toBe("svg");
    expect(svg).toContain("&lt;script&gt;alert(1)&lt;/script&gt;&amp;{id}&#39;");
  });

  it("escapes words and numbers of a caller too", () => {
    const words = Object.fromEntries(
      Object.entries(englishPictureWords).map(([key, text]) => [key, key === "lang" ? text : `<b>&${text}`]),
    ) as Record<keyof PictureWords, string>;
    const svg = draw({ words, formatNumber: (value) => `<i>${value.toFixed(0)}</i>` });
    readSvg(svg);
    expect(svg).not.toMatch(/<[bi]>/);
  });

  it("carries its colours twice: for the reader's scheme and for what reads no style sheet", () => {
    const svg = draw();
    expect(svg).toContain("@media (prefers-color-scheme:dark)");
    expect(svg).toContain("@media (forced-colors:active)");
    for (const { attributes } of [...all(readSvg(svg), "text"), ...all(readSvg(svg), "line")])
      expect(attributes.fill ?? attributes.stroke).toMatch(/^(#|none)/);
    expect(draw({ scheme: "dark" })).not.toContain("prefers-color-scheme");
  });

  it("is one text for one input, with the caller's id in front of every id", () => {
    expect(draw({ id: "mine" })).toBe(draw({ id: "mine" }));
    for (const [, id] of draw({ id: "mine" }).matchAll(/ id="([^"]+)"/g)) expect(id).toMatch(/^mine(-|$)/);
  });

  it("keeps its geometry in a language that runs from right to left", () => {
    const words = Object.fromEntries(
      Object.entries(englishPictureWords).map(([key, text]) => [key, key === "lang" ? "ar" : `نص ${text}`]),
    ) as Record<keyof PictureWords, string>;
    const root = readSvg(draw({ words }));
    for (const { attributes, text } of all(root, "text"))
      expect(attributes.direction === "rtl").toBe(text.includes("نص"));
    expect(root.attributes.direction).toBe("ltr");
    // A Latin name between right-to-left marks pulls no digit behind it to its side.
    if (name !== "trace") expect(all(root, "desc")[0]!.text).toContain("\u200fB-17\u200f");
  });
});

describe("englishPictureWords", () => {
  it("names in braces just what each sentence is given", () => {
    for (const [word, names] of Object.entries(pictureWordArguments)) {
      const text = englishPictureWords[word as keyof PictureWords];
      expect([...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort(), word).toEqual(
        [...names].sort(),
      );
    }
  });
});
