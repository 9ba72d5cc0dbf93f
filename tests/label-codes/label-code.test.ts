import { decodeLabelCode, type LabelScheme, ratingOfLabel } from "crankworthy/label-codes";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";
import { bibliography } from "../../src/sources/index.js";
import type { Derivation } from "../../src/sources/source.js";

const EXAMPLES: Record<LabelScheme, string> = {
  etn: "574 013 068",
  "din-72310": "57412",
  "jis-d-5301": "80D26L",
  "jis-d-5306": "S-95L",
  "en-50342-2": "L3",
  bci: "48",
};

describe("decodeLabelCode", () => {
  it.each(Object.entries(EXAMPLES) as [LabelScheme, string][])("reads %s %s", (scheme, text) => {
    const reading = decodeLabelCode({ scheme, text });
    if (isRefusal(reading)) throw new Error(reading.code);
    expect(reading).toMatchObject({ scheme, text });
    // Each part with provenance names a source that exists; no fact is both said and not said.
    const parts = [reading, reading.capacity, reading.rating, reading.caseMillimetres, reading.terminals];
    for (const part of parts) if (part) expect(bibliography).toHaveProperty(part.source);
    expect(reading.cannotSay.includes("capacity")).toBe(reading.capacity === undefined);
    expect(reading.cannotSay.includes("case-size")).toBe(reading.caseMillimetres === undefined);
  });

  it("reads one text differently by scheme: the scheme is never guessed", () => {
    expect(decodeLabelCode({ scheme: "bci", text: "57412" })).toHaveProperty("code");
    expect(decodeLabelCode({ scheme: "etn", text: "57412" })).toHaveProperty("code");
    expect(decodeLabelCode({ scheme: "din-72310", text: "57412" })).not.toHaveProperty("code");
  });

  it("derives the numbers it read", () => {
    const derivation: Derivation = [];
    decodeLabelCode({ scheme: "etn", text: "574 013 068" }, derivation);
    decodeLabelCode({ scheme: "jis-d-5301", text: "80D23L" }, derivation);
    expect(derivation.map(({ result, unit }) => `${result} ${unit}`)).toEqual([
      ...["12 V", "74 Ah", "680 A"],
      ...["80 1", "230 mm", "173 mm", "204 mm", "500 A", "425 A", "650 A"],
    ]);
    decodeLabelCode({ scheme: "etn", text: "x" }, derivation);
    expect(derivation).toHaveLength(10);
  });
});

describe("ratingOfLabel", () => {
  const rating = (scheme: LabelScheme) => {
    const reading = decodeLabelCode({ scheme, text: EXAMPLES[scheme] });
    return isRefusal(reading) ? reading : ratingOfLabel(reading);
  };

  it("is the EN current of a European number and refused for all else, a JIS rank by its own name", () => {
    expect(rating("etn")).toEqual({ amperes: 680, standard: "en-50342-1:unstated" });
    expect(rating("jis-d-5301")).toMatchObject({ code: "jis-rank-no-rating" });
    expect(rating("din-72310")).toMatchObject({ code: "no-rating-in-code" });
    expect(rating("bci")).toMatchObject({ code: "no-rating-in-code" });
  });
});
