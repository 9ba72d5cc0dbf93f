import { arabic } from "crankworthy/languages/ar";
import { german } from "crankworthy/languages/de";
import { english, type Messages, reportSections } from "crankworthy/report";
import { describe, expect, it } from "vitest";
import { evaluations } from "./records.js";

describe("the answer to whether it starts", () => {
  const { coldStart, ...rest } = evaluations.engineUnsure!;
  const told = (intervalCelsius: { lower?: number; upper?: number }, messages: Messages = english) =>
    reportSections({ ...rest, coldStart: { ...coldStart!, intervalCelsius } }, messages).find(
      ({ question }) => question === "start",
    )!.lines[0]!.text;

  it.each([
    [{ lower: -24, upper: -12 }, "down to -19\u00a0°C (from -24 to -12\u00a0°C)."],
    [{ upper: -12 }, "down to -19\u00a0°C (at most -12\u00a0°C)."],
    [{ lower: -24 }, "down to -19\u00a0°C (at least -24\u00a0°C)."],
    [{}, "down to -19\u00a0°C."],
  ])("names the ends of the interval that are known: %o", (interval, text) => {
    expect(told(interval)).toContain(text);
  });

  it("does so in other languages", () => {
    expect(told({ lower: -24 }, german.messages)).toContain("(mindestens -24\u00a0°C)");
    expect(told({ upper: -12 }, arabic.messages)).toContain("على الأكثر");
  });
});
