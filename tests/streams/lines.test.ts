import { byteOffsetAt, lines, readText, type TextLine } from "crankworthy/streams";
import fc from "fast-check";
import { expect, it } from "vitest";
import { bytesOf, utf16 } from "./collect.js";

it("lines are what splitting gives, with their numbers and places", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.constantFrom("a", "°", "€", "🔋", "\n", "\n"), { maxLength: 50 }),
      fc.integer({ min: 1, max: 30 }),
      fc.boolean(),
      async (units, pieceBytes, wide) => {
        const text = units.join("");
        const encode = wide ? (part: string) => utf16(part, true) : bytesOf;
        const found: TextLine[] = [];
        const encoding = wide ? "utf-16le" : "utf-8";
        for await (const line of lines([encode(text)], { pieceBytes, encoding })) found.push(line);
        const expected = text.split("\n");
        if (expected.at(-1) === "") expected.pop();
        expect(found.map((line) => line.text)).toEqual(expected);
        expect(found.map(({ line }) => line)).toEqual(expected.map((_, i) => i + 1));
        const places = expected.map(
          (_, i) =>
            encode(
              expected
                .slice(0, i)
                .map((l) => `${l}\n`)
                .join(""),
            ).length,
        );
        expect(found.map(({ byteOffset }) => byteOffset)).toEqual(places);
      },
    ),
  );
});

it("carriage returns belong to the line end", async () => {
  const found: string[] = [];
  for await (const { text } of lines("a\r\nb\r\r\n\r\nc\r")) found.push(text);
  expect(found).toEqual(["a", "b", "", "c"]);
});

it("a character's place", async () => {
  for await (const piece of readText("\ufeffs,°C\n🔋,€")) {
    const index = piece.text.indexOf("€");
    if (index >= 0) expect(byteOffsetAt(piece, index)).toBe(3 + bytesOf("s,°C\n🔋,").length);
  }
});
