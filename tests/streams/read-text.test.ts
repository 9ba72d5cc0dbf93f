import { isStreamError, readText, StreamError, type TextChunk, type TextInput } from "crankworthy/streams";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bytesOf, collect, cutAt, failure, utf16 } from "./collect.js";

const SMALL = "t_s,T_°C\n0,25€\n\n1,🔋\r\nlast";

describe("pieces of whole lines", () => {
  it("at every two places where chunks may end", async () => {
    const bytes = bytesOf(SMALL);
    const whole = await collect(bytes, { pieceBytes: 8, mostLineBytes: 20 });
    expect(whole.map(({ text }) => text)).toEqual(["t_s,T_°C\n", "0,25€\n", "\n", "1,🔋\r\n", "last"]);
    expect(whole.map(({ byteOffset }) => byteOffset)).toEqual([0, 10, 18, 19, 27]);
    expect(whole.map(({ firstLine }) => firstLine)).toEqual([1, 2, 3, 4, 5]);
    for (let a = 0; a <= bytes.length; a++)
      for (let b = a; b <= bytes.length; b++)
        expect(await collect(cutAt(bytes, a, b), { pieceBytes: 8, mostLineBytes: 20 })).toEqual(whole);
  });

  it("hold the text and tell the place, whatever text, encoding, chunking and sizes", async () => {
    const unit = fc.constantFrom("a", ",", "°", "€", "🔋", "\n", "\n", "\r\n");
    await fc.assert(
      fc.asyncProperty(
        fc.array(unit, { maxLength: 60 }),
        fc.array(fc.nat(200), { maxLength: 6 }),
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom("utf-8" as const, "utf-16le" as const, "utf-16be" as const),
        fc.boolean(),
        async (units, places, pieceBytes, encoding, mark) => {
          const text = units.join("");
          const all = (mark ? "\ufeff" : "") + text;
          const bytes = encoding === "utf-8" ? bytesOf(all) : utf16(all, encoding === "utf-16le");
          const cuts = places.map((place) => Math.min(place, bytes.length)).sort((x, y) => x - y);
          const pieces = await collect(cutAt(bytes, ...cuts), { pieceBytes, encoding });
          expect(pieces.map((piece) => piece.text).join("")).toBe(text);
          let before = "";
          for (const piece of pieces) {
            const from = piece.byteOffset;
            const there = bytes.slice(from, from + bytes.length);
            const decoded = new TextDecoder(encoding, { ignoreBOM: true }).decode(there);
            expect(decoded.startsWith(piece.text)).toBe(true);
            expect(decoded).toBe(text.slice(before.length));
            expect(piece.firstLine).toBe(before.split("\n").length);
            before += piece.text;
            expect(piece.text.endsWith("\n") || before === text).toBe(true);
          }
          expect(await collect([bytes], { pieceBytes, encoding })).toEqual(pieces);
        },
      ),
    );
  });

  it("of characters as of their bytes, halves of a character in two chunks included", async () => {
    const whole = await collect(bytesOf(SMALL), { pieceBytes: 8 });
    for (let at = 0; at <= SMALL.length; at++)
      expect(await collect([SMALL.slice(0, at), SMALL.slice(at)], { pieceBytes: 8 })).toEqual(whole);
    expect(await collect(SMALL, { pieceBytes: 8 })).toEqual(whole);
  });

  it("of a text beyond one buffer of the encoder", async () => {
    const text = "0123456789°🔋\n".repeat(60_000);
    const pieces = await collect(text);
    expect(pieces.map((piece) => piece.text).join("") === text).toBe(true);
    expect(Math.max(...pieces.map((piece) => bytesOf(piece.text).length))).toBeLessThanOrEqual(65_536);
  });

  it("none for nothing, one for a text without any line end", async () => {
    for (const nothing of ["", new Uint8Array(0), [], "\ufeff", bytesOf("\ufeff")] as TextInput[])
      expect(await collect(nothing)).toEqual([]);
    expect(await collect("x".repeat(300_000), { pieceBytes: 16 })).toHaveLength(1);
  });

  it("keep a byte order mark that is not at the start", async () => {
    const [first, second] = await collect("a\n\ufeffb", { pieceBytes: 2 });
    expect([first?.text, second?.text]).toEqual(["a\n", "\ufeffb"]);
  });
});

describe("line ends", () => {
  it.each([
    ["a\rb\rc", "a\nb\nc"],
    ["a\r", "a\n"],
    ["a\r\rb", "a\n\nb"],
    ["a\r\nb\r\n", "a\r\nb\r\n"],
    ["a\r\r\nb\r\r\n", "a\r\r\nb\r\r\n"],
    ["a\nb\rc\n", "a\nb\rc\n"],
  ])("%j becomes %j however it is cut", async (text, expected) => {
    for (let at = 0; at <= text.length; at++)
      for (const pieceBytes of [1, 2, 3, 100]) {
        const pieces = await collect([text.slice(0, at), text.slice(at)], { pieceBytes });
        expect(pieces.map((piece) => piece.text).join("")).toBe(expected);
        const lines = expected.split("\n").length - (expected.endsWith("\n") ? 1 : 0);
        if (pieceBytes === 1) expect(pieces).toHaveLength(lines);
      }
  });

  it("mixed in one text are an error at the first that differs", async () => {
    expect(await failure("t,V\r0,12.6\r1,12.5\n")).toMatchObject({ code: "mixed-line-ends", byteOffset: 17 });
    expect(await failure("t,V\r0,12.6\r1,12.5\n", { pieceBytes: 4 })).toMatchObject({ byteOffset: 17 });
  });
});

describe("quotes", () => {
  it("enclose line ends, however the text is cut", async () => {
    const text = 'a,"x\ny"\nb,"""\n"\n\nc\n';
    const whole = await collect(text, { quote: '"', pieceBytes: 1 });
    expect(whole.map((piece) => piece.text)).toEqual(['a,"x\ny"\n', 'b,"""\n"\n', "\n", "c\n"]);
    expect(whole.map((piece) => piece.firstLine)).toEqual([1, 3, 5, 6]);
    for (let at = 0; at <= text.length; at++)
      expect(await collect([text.slice(0, at), text.slice(at)], { quote: '"', pieceBytes: 1 })).toEqual(
        whole,
      );
  });

  it("that never close are an error at the opening one, before memory grows", async () => {
    expect(await failure('a\nb,"c\n', { quote: '"' })).toMatchObject({
      code: "quote-not-closed",
      byteOffset: 4,
    });
    let pulled = 0;
    const endless = function* (): Generator<string> {
      yield 'a\nb,"';
      for (;;) {
        pulled++;
        yield "line\n".repeat(1000);
      }
    };
    const error = await failure(endless(), { quote: '"', mostLineBytes: 50_000 });
    expect(error).toMatchObject({ code: "quote-not-closed", byteOffset: 4 });
    expect(pulled).toBeLessThan(15);
  });
});

describe("hostile texts", () => {
  it("a line of 100 MB stops after the longest line there may be", async () => {
    let pulled = 0;
    const chunk = new Uint8Array(65_536).fill(0x31);
    const stream = async function* (): AsyncGenerator<TextChunk> {
      yield "t,V\n";
      for (; pulled < 1600; pulled++) yield chunk;
    };
    const error = await failure(stream());
    expect(error).toMatchObject({ code: "line-too-long", byteOffset: 4 });
    expect(pulled).toBeLessThanOrEqual(17);
  });

  it("the longest line is measured without its end, exactly", async () => {
    for (const end of ["\n", "\r\n", "\r\r\n", ""])
      for (const pieceBytes of [1, 6, 7, 100]) {
        const options = { mostLineBytes: 6, pieceBytes };
        const pieces = await collect(`ab\nabcdef${end}`, options);
        expect(pieces.map((piece) => piece.text).join("")).toBe(`ab\nabcdef${end}`);
        const error = await failure(`ab\nabcdefg${end}`, options);
        expect(error).toMatchObject({ code: "line-too-long", byteOffset: 3 });
      }
  });

  it("NUL bytes", async () => {
    expect(await failure("a\nb\0c\n")).toMatchObject({ code: "nul-byte", byteOffset: 3 });
    expect(await failure("a\nb\0c\n", { pieceBytes: 2 })).toMatchObject({ byteOffset: 3 });
    expect(await failure(Uint8Array.of(97, 0x80, 0))).toMatchObject({
      code: "invalid-encoding",
      byteOffset: 1,
    });
    expect(await failure(Uint8Array.of(97, 0, 0x80))).toMatchObject({ code: "nul-byte", byteOffset: 1 });
    const zeros = await failure(new Uint8Array(3_000_000));
    expect(zeros).toMatchObject({ code: "nul-byte", byteOffset: 0 });
    const utf16le = utf16("°C,V\n°\0", true);
    expect(await failure(utf16le, { encoding: "utf-16le" })).toMatchObject({
      code: "nul-byte",
      byteOffset: 12,
    });
  });

  it("UTF-16 that nobody asked for, with and without a byte order mark", async () => {
    for (const littleEndian of [true, false]) {
      const name = littleEndian ? "UTF-16LE" : "UTF-16BE";
      for (const text of ["\ufefft,V\n", "t,V\n0,1\n", "°t,V\n"]) {
        const error = await failure(utf16(text, littleEndian));
        expect(error).toMatchObject({ code: "other-encoding", received: expect.stringContaining(name) });
      }
      const encoding = littleEndian ? ("utf-16be" as const) : ("utf-16le" as const);
      expect(await failure(utf16("\ufeffa", littleEndian), { encoding })).toMatchObject({
        code: "other-encoding",
      });
    }
    const utf32 = Uint8Array.of(0xff, 0xfe, 0, 0, 65, 0, 0, 0);
    expect((await failure(utf32)).received).toContain("UTF-32LE");
    expect(await failure("\ufeffa", { encoding: "utf-8", mostBytes: 3 })).toMatchObject({
      code: "too-many-bytes",
    });
    expect(await failure(bytesOf("\ufeffa"), { encoding: "windows-1252" })).toMatchObject({
      code: "other-encoding",
    });
  });

  it("UTF-16 with characters of two units in chunks of one byte", async () => {
    for (const encoding of ["utf-16le", "utf-16be"] as const) {
      const bytes = utf16(SMALL, encoding === "utf-16le");
      const pieces = await collect(cutAt(bytes, ...bytes.keys()), { encoding });
      expect(pieces.map((piece) => piece.text).join("")).toBe(SMALL);
    }
  });

  it("UTF-16 with half a character or half a unit", async () => {
    const half = utf16("ab\n\ud83d\n", true);
    expect(await failure(half, { encoding: "utf-16le" })).toMatchObject({
      code: "invalid-encoding",
      byteOffset: 6,
    });
    const odd = utf16("ab\n", true).slice(0, 5);
    expect(await failure(odd, { encoding: "utf-16le" })).toMatchObject({
      code: "invalid-encoding",
      byteOffset: 4,
    });
    const error = await failure(["ab\n", "\ud83d", "x"]);
    expect(error).toMatchObject({ code: "invalid-encoding", byteOffset: 3 });
  });

  it("bytes that are no UTF-8, at the place where a decoder that reports its place puts them", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({ unit: fc.constantFrom("a", "°", "€", "🔋", "\n") }),
        fc.constantFrom(
          [0x80],
          [0xc0, 0xaf],
          [0xed, 0xa0, 0x80],
          [0xf4, 0x90, 0x80, 0x80],
          [0xe2, 0x82],
          [0xff],
        ),
        fc.string({ unit: fc.constantFrom("a", "\n") }),
        async (before, wrong, after) => {
          const bytes = Uint8Array.from([...bytesOf(before), ...wrong, ...bytesOf(after)]);
          const error = await failure(bytes, { pieceBytes: 5 });
          expect(error).toMatchObject({ code: "invalid-encoding", byteOffset: bytesOf(before).length });
        },
      ),
    );
  });

  it("every byte of windows-1252 has its character", async () => {
    const [piece] = await collect(Uint8Array.of(0xb0, 0x80, 0x9f, 0x96, 0xe9), { encoding: "windows-1252" });
    expect(piece?.text).toBe("°€Ÿ–é");
    const all = Uint8Array.from({ length: 255 }, (_, i) => i + 1);
    const text = (await collect(all, { encoding: "windows-1252" })).map((part) => part.text).join("");
    expect(text).toHaveLength(255);
    for (let byte = 1; byte < 256; byte++)
      if (byte < 0x80 || byte >= 0xa0) expect(text.charCodeAt(byte - 1)).toBe(byte);
    const two = await collect(Uint8Array.of(0xb0, 10, 0xb0), { encoding: "windows-1252", pieceBytes: 2 });
    expect(two.map(({ byteOffset }) => byteOffset)).toEqual([0, 2]);
  });

  it("archives and spreadsheets", async () => {
    const error = await failure(Uint8Array.of(0x50, 0x4b, 3, 4, 20, 1));
    expect(error).toMatchObject({
      code: "not-text",
      byteOffset: 0,
      received: expect.stringContaining("ZIP"),
    });
  });

  it("more than was asked for", async () => {
    const seen: string[] = [];
    const read = async () => {
      for await (const { text } of readText("a\nb\nc\n", { mostBytes: 5, pieceBytes: 2 })) seen.push(text);
    };
    await expect(read()).rejects.toMatchObject({ code: "too-many-bytes", byteOffset: 5 });
    expect(seen).toEqual(["a\n", "b\n"]);
  });

  it("any bytes at all are read or refused, never anything else", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uint8Array({ maxLength: 40 }),
        fc.integer({ min: 1, max: 9 }),
        async (bytes, pieceBytes) => {
          const encodings = ["utf-8", "utf-16le", "utf-16be", "windows-1252"] as const;
          for (const encoding of encodings)
            try {
              await collect(bytes, { pieceBytes, mostLineBytes: 20, encoding, quote: '"' });
            } catch (error) {
              expect(error).toBeInstanceOf(StreamError);
              expect((error as StreamError).byteOffset).toBeGreaterThanOrEqual(0);
              expect((error as StreamError).byteOffset).toBeLessThanOrEqual(bytes.length);
            }
        },
      ),
    );
  });
});

describe("arguments", () => {
  it.each([
    [{ pieceBytes: 0 }, "options.pieceBytes"],
    [{ mostLineBytes: 1.5 }, "options.mostLineBytes"],
    [{ mostBytes: Number.NaN }, "options.mostBytes"],
    [{ encoding: "latin1" }, "options.encoding"],
    [{ quote: "`" }, "options.quote"],
  ])("%j is told at once", (options, name) => {
    expect(() => readText("", options as never)).toThrow(RangeError);
    expect(() => readText("", options as never)).toThrow(name);
  });

  it.each([[42], [null], [undefined], [{}], [new URL("https://example.org/log")], [[1]], [[["a"]]]])(
    "%j is no input",
    async (input) => {
      await expect(collect(input as never)).rejects.toThrow(RangeError);
    },
  );

  it("characters with an encoding of bytes", async () => {
    await expect(collect("a", { encoding: "utf-16le" })).rejects.toThrow(RangeError);
  });

  it("the guard knows an error of another copy by its name", () => {
    const error = new StreamError("nul-byte", 7, "a NUL byte", "text");
    expect(error.message).toBe("byte 7: received a NUL byte, expected text");
    expect(isStreamError(error)).toBe(true);
    expect(isStreamError(Object.assign(new Error("x"), { name: "StreamError", byteOffset: 1 }))).toBe(true);
    expect(isStreamError(new Error("x"))).toBe(false);
  });
});
