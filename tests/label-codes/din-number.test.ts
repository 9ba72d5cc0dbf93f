import { decodeDinNumber, formatDinNumber } from "crankworthy/label-codes";
import { isRefusal } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("decodeDinNumber", () => {
  it("writes what it reads, and refuses only series 8, 0 Ah and semi-traction series 8 and 9", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99999 }), (number) => {
        const text = String(number).padStart(5, "0");
        const reading = decodeDinNumber(text);
        if (isRefusal(reading)) expect(text).toMatch(/^(8|000|500|9[89]|9000|9500)/);
        else expect(formatDinNumber(reading)).toBe(text);
      }),
    );
  });

  it("holds no cold current", () => {
    expect(decodeDinNumber("57412")).toMatchObject({
      cannotSay: ["cold-cranking-amperes", "case-size", "terminal-layout"],
    });
  });

  it("a leading 9 is a 5 h capacity", () => {
    expect(decodeDinNumber("96803")).toMatchObject({
      nominalVolts: 12,
      capacity: { ampereHours: 180, rateHours: 5 },
      serial: "3",
    });
  });

  it.each(["5741", "574123", "5741A", "DIN66", ""])("refuses %j", (text) =>
    expect(decodeDinNumber(text)).toMatchObject({ code: "malformed-code" }),
  );

  it("cannot write another rate or voltage", () => {
    const capacity = { ampereHours: 74, rateHours: 20 };
    expect(formatDinNumber({ nominalVolts: 24, capacity, serial: "12" })).toHaveProperty("code");
    expect(
      formatDinNumber({ nominalVolts: 12, capacity: { ...capacity, rateHours: 10 }, serial: "12" }),
    ).toHaveProperty("code");
    expect(formatDinNumber({ nominalVolts: 12, capacity, serial: "1" })).toHaveProperty("code");
  });
});
