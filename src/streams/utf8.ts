import { StreamError } from "./stream-error.js";

/** Where in the source a byte of what is decoded stands. */
type Place = (at: number) => number;

/** @internal Decodes whole characters; throws at the first byte that is none, and at a NUL. */
export function decodeUtf8(bytes: Uint8Array, place: Place): string {
  let text: string;
  try {
    // `ignoreBOM` keeps a byte order mark in the middle of a text instead of swallowing it.
    text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    const at = firstInvalid(bytes);
    const nul = bytes.indexOf(0);
    if (nul >= 0 && nul < at) throw firstNul(bytes, place);
    const received = `the byte 0x${bytes[at]?.toString(16).padStart(2, "0")}`;
    throw new StreamError("invalid-encoding", place(at), received, "UTF-8, or the name of the encoding");
  }
  if (text.includes("\0")) throw firstNul(bytes, place);
  return text;
}

/** @internal The error for the first NUL: a byte gone astray, or every other one and so UTF-16. */
export function firstNul(bytes: Uint8Array, place: Place): StreamError {
  const at = bytes.indexOf(0);
  const utf16 = utf16Pattern(bytes.subarray(Math.max(0, at - 1)));
  return utf16
    ? new StreamError(
        "other-encoding",
        place(at),
        `NUL bytes as in ${utf16}`,
        "UTF-8, or the name of the encoding",
      )
    : new StreamError("nul-byte", place(at), "a NUL byte", "text");
}

/** @internal Four bytes of which every other one is NUL: two characters of UTF-16. */
export function utf16Pattern(bytes: Uint8Array): "UTF-16LE" | "UTF-16BE" | undefined {
  const [a, b, c, d] = bytes;
  if (a && b === 0 && c && d === 0) return "UTF-16LE";
  if (a === 0 && b && c === 0 && d) return "UTF-16BE";
  return undefined;
}

/** Place of the first byte that cannot stand where it stands (Unicode Standard, table 3-7: well-formed UTF-8). */
function firstInvalid(bytes: Uint8Array): number {
  let at = 0;
  while (at < bytes.length) {
    const lead = bytes[at]!;
    const more =
      lead < 0x80 ? 0 : lead < 0xc2 ? -1 : lead < 0xe0 ? 1 : lead < 0xf0 ? 2 : lead < 0xf5 ? 3 : -1;
    if (more < 0) return at;
    const least = lead === 0xe0 ? 0xa0 : lead === 0xf0 ? 0x90 : 0x80;
    const most = lead === 0xed ? 0x9f : lead === 0xf4 ? 0x8f : 0xbf;
    for (let i = 1; i <= more; i++) {
      const byte = bytes[at + i];
      if (byte === undefined) return at;
      if (byte < (i === 1 ? least : 0x80) || byte > (i === 1 ? most : 0xbf)) return at;
    }
    at += more + 1;
  }
  return at;
}
