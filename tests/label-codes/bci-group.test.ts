import { decodeBciGroup, decodeCaseCode, formatBciGroup } from "crankworthy/label-codes";
import { isRefusal } from "crankworthy/numeric";
import { describe, expect, it } from "vitest";

describe("decodeBciGroup", () => {
  it("writes what it reads", () => {
    for (const text of ["24", "24F", "26R", "34R", "124R", "99R", "95R", "96R"]) {
      const reading = decodeBciGroup(` ${text.toLowerCase()} `);
      expect(!isRefusal(reading) && [reading.text, formatBciGroup(reading)]).toEqual([text, text]);
    }
  });

  it("keeps contradicting sizes visible", () => {
    expect(decodeBciGroup("24F")).toMatchObject({
      caseMillimetres: { length: 273 },
      otherCaseMillimetres: { length: 260, width: 173, height: 225 },
    });
    expect(decodeBciGroup("35")).not.toHaveProperty("otherCaseMillimetres");
  });

  it("agrees with the European case of the same battery, within 4 mm, in one of its sizes", () => {
    for (const code of ["L1", "L2", "L3", "L5", "L6", "LB1", "LB2", "LB3", "LB5"]) {
      const european = decodeCaseCode(code);
      if (isRefusal(european)) throw new Error(code);
      expect(european.bciGroups.length).toBeGreaterThan(0);
      for (const group of european.bciGroups) {
        const reading = decodeBciGroup(group);
        if (isRefusal(reading)) throw new Error(group);
        const sizes = [reading.caseMillimetres, reading.otherCaseMillimetres ?? reading.caseMillimetres];
        expect(
          sizes.some(
            (size) =>
              Math.abs(size.length - european.caseMillimetres.length) <= 4 &&
              Math.abs(size.height - european.caseMillimetres.height) <= 4,
          ),
        ).toBe(true);
      }
    }
  });

  it("refuses groups it does not list, without inventing a base group", () => {
    expect(decodeBciGroup("65R")).toMatchObject({ code: "unlisted-code" });
    expect(decodeBciGroup("H6")).toMatchObject({ code: "malformed-code" });
  });
});
