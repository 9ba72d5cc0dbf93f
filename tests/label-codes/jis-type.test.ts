import {
  decodeJisStartStop,
  decodeJisType,
  formatJisStartStop,
  formatJisType,
} from "crankworthy/label-codes";
import { isRefusal } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const designation = fc
  .tuple(
    fc.constantFrom("", "S"),
    fc.integer({ min: 10, max: 300 }),
    fc.constantFrom(..."ABCDEFGH"),
    fc.integer({ min: 10, max: 59 }),
    fc.constantFrom("", "L", "R"),
    fc.constantFrom("", "S"),
  )
  .map((parts) => parts.join(""));

describe("decodeJisType", () => {
  it("writes what it reads", () => {
    fc.assert(
      fc.property(designation, (text) => {
        const reading = decodeJisType(text);
        expect(!isRefusal(reading) && formatJisType(reading)).toBe(text);
      }),
    );
  });

  it("normalises brackets, blanks and case", () => {
    for (const text of ["55B24L(S)", "55b24ls", " 55 B 24 L (S) "]) {
      expect(decodeJisType(text)).toMatchObject({ text: "55B24LS", thickPosts: true });
    }
  });

  it("sees L and R with the posts towards you: L = positive right = EN layout 0", () => {
    expect(decodeJisType("55B24L")).toMatchObject({ terminals: { positivePost: "right", enLayout: 0 } });
    expect(decodeJisType("55B24R")).toMatchObject({ terminals: { positivePost: "left", enLayout: 1 } });
    const none = decodeJisType("55B24");
    expect(none).not.toHaveProperty("terminals");
    expect(none).toMatchObject({ cannotSay: expect.arrayContaining(["terminal-layout", "capacity"]) });
  });

  it("reads the prefix S as valve-regulated and then estimates nothing from flooded types", () => {
    const reading = decodeJisType("S34B20R");
    expect(reading).toMatchObject({ valveRegulated: true, performanceRank: 34 });
    expect(reading).not.toHaveProperty("estimatedRating");
    expect(decodeJisType("S55B24R")).not.toHaveProperty("estimatedRating");
  });

  it("takes the rank neither for ampere hours nor for a rating", () => {
    const reading = decodeJisType("55B24L");
    expect(reading).not.toHaveProperty("capacity");
    expect(reading).not.toHaveProperty("rating");
    expect(reading).toMatchObject({
      estimatedRating: { basis: "list", amperes: { value: 370 }, standard: "jis-d-5301:2006" },
      cannotSay: expect.arrayContaining(["cold-cranking-amperes"]),
    });
  });

  it("gives no size for class F, which the sources leave out", () => {
    expect(decodeJisType("150F51")).not.toHaveProperty("caseMillimetres");
  });

  it.each(["", "NS60", "55B2", "55I24L", "5B24", "055B24", "55B24X", "55B24LL"])("refuses %j", (text) =>
    expect(decodeJisType(text)).toMatchObject({ code: "malformed-code" }),
  );

  it("cannot write a rank or class that does not exist", () => {
    const parts = { caseClass: "B", lengthDigits: "24", thickPosts: false, valveRegulated: false };
    expect(formatJisType({ ...parts, performanceRank: 5 })).toHaveProperty("code");
    expect(formatJisType({ ...parts, performanceRank: 54.96 })).toHaveProperty("code");
    expect(formatJisType({ ...parts, performanceRank: 55, caseClass: "Z" })).toHaveProperty("code");
  });
});

describe("decodeJisStartStop", () => {
  it("writes what it reads", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(..."KMNPQSTU"),
        fc.integer({ min: 10, max: 200 }),
        fc.constantFrom("", "L", "R"),
        fc.constantFrom("", "S", "B"),
        (outline, rank, polarity, post) => {
          const reading = decodeJisStartStop(`${outline}${rank}${polarity}${post}`);
          const text = `${outline}-${rank}${polarity}${post}`;
          expect(!isRefusal(reading) && [reading.text, formatJisStartStop(reading)]).toEqual([text, text]);
        },
      ),
    );
  });

  it("places the outlines known from the trade and estimates no current", () => {
    const reading = decodeJisStartStop("q-85");
    expect(reading).toMatchObject({
      text: "Q-85",
      caseMillimetres: { length: 230, width: 173, height: 204, source: "jis-trade-names" },
    });
    expect(reading).not.toHaveProperty("estimatedRating");
    expect(decodeJisStartStop("K-42R")).not.toHaveProperty("caseMillimetres");
  });

  it.each(["", "Q85LLL", "55B24L", "Q-5", "85Q"])("refuses %j", (text) =>
    expect(decodeJisStartStop(text)).toMatchObject({ code: "malformed-code" }),
  );
});
