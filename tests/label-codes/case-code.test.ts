import { decodeCaseCode, formatCaseCode } from "crankworthy/label-codes";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";

describe("decodeCaseCode", () => {
  const known = ["L", "LN", "LB", "LBN"].flatMap((series) =>
    [..."0123456789"].map((digit) => series + digit).filter((code) => !isRefusal(decodeCaseCode(code))),
  );

  it("knows six high cases and four low ones, each in two spellings", () => expect(known).toHaveLength(20));

  it("writes what it reads; within a series a higher digit is longer", () => {
    const lengths: Record<string, number> = {};
    for (const code of known) {
      const reading = decodeCaseCode(code);
      if (isRefusal(reading)) throw new Error(code);
      expect(formatCaseCode(reading)).toBe(reading.text);
      expect(reading.caseMillimetres.length).toBeGreaterThan(lengths[reading.series] ?? 0);
      lengths[reading.series] = reading.caseMillimetres.length;
    }
  });

  it("low cases are 15 mm lower and otherwise alike", () => {
    for (const digit of "1235") {
      const tall = decodeCaseCode(`LN${digit}`);
      const low = decodeCaseCode(`LB${digit}`);
      if (isRefusal(tall) || isRefusal(low)) throw new Error(digit);
      expect(low.caseMillimetres.height).toBe(tall.caseMillimetres.height - 15);
      expect(low.caseMillimetres.length).toBe(tall.caseMillimetres.length);
    }
  });

  it("takes no trade code: H and T numbers mean different lengths in different tables", () => {
    expect(decodeCaseCode("H6")).toMatchObject({ code: "malformed-code" });
    expect(decodeCaseCode("LB6")).toMatchObject({ code: "unlisted-code" });
    expect(formatCaseCode({ series: "L", sizeDigit: "9" })).toMatchObject({ code: "unlisted-code" });
  });
});
