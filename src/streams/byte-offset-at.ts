import type { TextPiece } from "./read-text.js";
import { UNIT_BYTES } from "./transcode.js";

/**
 * Says where in the source a character of a piece stands, for messages about it.
 *
 * @param piece as `readText` gave it
 * @param index of the character in `piece.text`
 * @returns bytes from the start of the decompressed bytes
 * @example
 * ```ts
 * import { byteOffsetAt } from "crankworthy/streams";
 * byteOffsetAt({ text: "°C,V\n", byteOffset: 10, firstLine: 2, encoding: "utf-8" }, 3); // => 14
 * ```
 */
export function byteOffsetAt(piece: TextPiece, index: number): number {
  return piece.byteOffset + byteLength(piece, 0, index);
}

/** @internal Bytes that a part of a piece has in the source. */
export function byteLength({ text, encoding }: TextPiece, from: number, to: number): number {
  const unitBytes = UNIT_BYTES[encoding];
  if (unitBytes) return (to - from) * unitBytes;
  let bytes = to - from;
  for (let i = from; i < to; i++) {
    const unit = text.charCodeAt(i);
    // A pair of surrogates is two units and four bytes.
    if (unit >= 0x80) bytes += unit < 0x800 || (unit >= 0xd800 && unit < 0xe000) ? 1 : 2;
  }
  return bytes;
}
