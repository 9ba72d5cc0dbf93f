import { decodeEtn, formatEtn } from "crankworthy/label-codes";
import { isRefusal } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const digits = (length: number) =>
  fc.array(fc.integer({ min: 0, max: 9 }), { minLength: length, maxLength: length }).map((d) => d.join(""));

describe("decodeEtn", () => {
  it("writes what it reads", () => {
    fc.assert(
      fc.property(digits(9), fc.constantFrom("", " ", "-"), (text, gap) => {
        const printed = [text.slice(0, 3), text.slice(3, 6), text.slice(6)].join(gap);
        const reading = decodeEtn(printed);
        if (isRefusal(reading)) expect(reading.code).toBe("zero-capacity");
        else {
          expect(reading.text.replaceAll(" ", "")).toBe(text);
          expect(formatEtn(reading)).toBe(reading.text);
        }
      }),
    );
  });

  it("writes special series from their digits, everything else from its meaning", () => {
    const meaning = {
      nominalVolts: 12,
      capacity: { ampereHours: 74 },
      register: "013",
      rating: { amperes: 680 },
    };
    expect(formatEtn({ ...meaning, series: "999" })).toBe("574 013 068");
    expect(formatEtn({ series: "812", register: "013" })).toBe("812 013 000");
  });

  it("600 is 100 Ah, a first digit 0-4 is 6 V, 8 and 9 say nothing of volts", () => {
    expect(decodeEtn("600123060")).toMatchObject({ nominalVolts: 12, capacity: { ampereHours: 100 } });
    expect(decodeEtn("077 015 036")).toMatchObject({ nominalVolts: 6, capacity: { ampereHours: 77 } });
    expect(decodeEtn("499 015 036")).toMatchObject({ nominalVolts: 6, capacity: { ampereHours: 499 } });
    expect(decodeEtn("799 015 036")).toMatchObject({ nominalVolts: 12, capacity: { ampereHours: 299 } });
    const special = decodeEtn("812 071 000");
    expect(special).not.toHaveProperty("nominalVolts");
    expect(special).toMatchObject({
      cannotSay: ["nominal-volts", "capacity", "cold-cranking-amperes", "case-size", "terminal-layout"],
    });
  });

  it("never tells the EN level", () => {
    expect(decodeEtn("536046030")).toMatchObject({
      rating: { standard: "en-50342-1:unstated" },
      cannotSay: ["case-size", "terminal-layout", "cold-cranking-level"],
    });
  });

  it("reads the origin of the register number", () => {
    expect(decodeEtn("536046030")).toMatchObject({ registration: "from-din-number" });
    expect(decodeEtn("536901030")).toMatchObject({ registration: "immobilised-electrolyte" });
    expect(decodeEtn("536546030")).not.toHaveProperty("registration");
  });

  it.each(["", "53604603", "5360460300", "536 046 O30", "536.046.030"])("refuses %j", (text) =>
    expect(decodeEtn(text)).toMatchObject({ code: "malformed-code" }),
  );

  it.each([
    { nominalVolts: 24, capacity: { ampereHours: 100 }, register: "001" },
    { nominalVolts: 12, capacity: { ampereHours: 300 }, register: "001" },
    { nominalVolts: 6, capacity: { ampereHours: 500 }, register: "001" },
    { nominalVolts: 12, capacity: { ampereHours: 70.5 }, register: "001" },
    { nominalVolts: 12, register: "001" },
    { nominalVolts: 12, capacity: { ampereHours: 70 }, register: "1" },
    { nominalVolts: 12, capacity: { ampereHours: 70 }, register: "001", rating: { amperes: 645 } },
    { nominalVolts: 12, capacity: { ampereHours: 70 }, register: "001", rating: { amperes: 10000 } },
    { register: "001" },
  ])("cannot write %j", (parts) => expect(formatEtn(parts)).toMatchObject({ code: "malformed-code" }));
});
