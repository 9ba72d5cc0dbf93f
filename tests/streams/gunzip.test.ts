import { gzipSync } from "node:zlib";
import type { TextChunk } from "crankworthy/streams";
import { describe, expect, it } from "vitest";
import { collect, cutAt, failure } from "./collect.js";

const TEXT = Array.from({ length: 2000 }, (_, i) => `${i / 10},${(12 + Math.sin(i)).toFixed(4)}\n`).join("");
const packed = new Uint8Array(gzipSync(TEXT));

describe("gzip", () => {
  it("is unpacked, wherever chunks end, and offsets count unpacked bytes", async () => {
    for (const at of [0, 1, 2, 3, 9, 10, 11, 500, packed.length - 1]) {
      const pieces = await collect(cutAt(packed, at), { pieceBytes: 4096 });
      expect(pieces.map((piece) => piece.text).join("")).toBe(TEXT);
      let length = 0;
      for (const piece of pieces) {
        expect(piece.byteOffset).toBe(length);
        length += piece.text.length;
      }
    }
  });

  it("truncated at any place is an error, with the compressed bytes taken", async () => {
    for (const length of [4, 10, 11, 1000, packed.length - 9, packed.length - 8, packed.length - 1]) {
      const error = await failure(packed.slice(0, length));
      expect([length, error.code, error.byteOffset]).toEqual([length, "truncated-gzip", length]);
    }
  });

  it("altered in the data or in the check sum is an error", async () => {
    for (const at of [40, 2000, packed.length - 6]) {
      const altered = packed.slice();
      altered[at]! ^= 0x55;
      expect((await failure(altered)).code).toBe("corrupt-gzip");
    }
  });

  it("inside gzip is named", async () => {
    expect(await failure(new Uint8Array(gzipSync(packed)))).toMatchObject({ code: "not-text" });
  });

  it("that unfolds a thousandfold is fed only as it is read", async () => {
    const bomb = new Uint8Array(gzipSync("0,12.6\n".repeat(10_000_000)));
    expect(bomb.length).toBeLessThan(200_000);
    let pulled = 0;
    const source = async function* (): AsyncGenerator<TextChunk> {
      for (let at = 0; at < bomb.length; at += 1024) {
        pulled++;
        yield bomb.slice(at, at + 1024);
      }
    };
    const error = await failure(source(), { mostBytes: 3_000_000 });
    expect(error.code).toBe("too-many-bytes");
    // 3 MB are some 4 to 5 chunks of a thousandfold text; queues of the platform hold a few more.
    expect(pulled).toBeLessThan(40);
  });

  it("passes on what is wrong with its source", async () => {
    const broken = async function* (): AsyncGenerator<TextChunk> {
      yield packed.slice(0, 5000);
      throw new Error("cable pulled");
    };
    const error = await failure(broken());
    expect(error).toMatchObject({ code: "source-failed", byteOffset: 5000, received: "cable pulled" });
  });
});
