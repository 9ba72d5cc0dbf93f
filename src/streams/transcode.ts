import type { TextEncodingName } from "./options.js";
import type { Source } from "./source.js";
import { StreamError } from "./stream-error.js";

/** @internal Bytes a unit of a JavaScript string has in an encoding; UTF-8 has no fixed number. */
export const UNIT_BYTES: Readonly<Record<TextEncodingName, 1 | 2 | undefined>> = {
  "utf-8": undefined,
  "utf-16le": 2,
  "utf-16be": 2,
  "windows-1252": 1,
};

// Of the Encoding Standard, index windows-1252: the characters of 0x80 to 0x9F. A decoder of the platform does not
// serve: some versions of Node read these as ISO 8859-1.
const WINDOWS_1252 =
  "\u20ac\x81\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\x8d\u017d\x8f" +
  "\x90\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\x9d\u017e\u0178";

/** @internal Turns bytes of another encoding into UTF-8. `start` is where they begin, for errors. */
export function transcode(
  source: Source<Uint8Array>,
  encoding: Exclude<TextEncodingName, "utf-8">,
  start: number,
): Source<Uint8Array> {
  if (encoding === "windows-1252")
    return {
      ...source,
      next: async () => {
        const bytes = await source.next();
        return bytes && windows1252ToUtf8(bytes);
      },
    };
  const encoder = new TextEncoder();
  const decoder = new TextDecoder("utf-16le", { ignoreBOM: true });
  const littleEndian = encoding === "utf-16le";
  let offset = start;
  let carried = new Uint8Array(0);
  return {
    ...source,
    next: async () => {
      for (;;) {
        const chunk = await source.next();
        if (!chunk && carried.length === 0) return undefined;
        const bytes = new Uint8Array(carried.length + (chunk?.length ?? 0));
        bytes.set(carried);
        if (chunk) bytes.set(chunk, carried.length);
        // Not every platform decodes big-endian. What was carried is in order up to half a unit.
        let whole = bytes.length & ~1;
        if (!littleEndian) swapPairs(bytes, carried.length & ~1, whole);
        // Half a character waits for its other half, which may be in the next chunk.
        if (chunk && whole >= 2 && isHalf(bytes[whole - 1]!, 0xd8)) whole -= 2;
        requireWellFormed(bytes.subarray(0, whole), offset);
        if (!chunk && whole < bytes.length)
          throw new StreamError(
            "invalid-encoding",
            offset + whole,
            "half a unit at the end",
            encoding.toUpperCase(),
          );
        offset += whole;
        carried = bytes.slice(whole);
        if (whole > 0) return encoder.encode(decoder.decode(bytes.subarray(0, whole)));
      }
    },
  };
}

// By the upper byte of a unit: the first half of a character from 0xD8, the second from 0xDC, four upper bytes each.
const isHalf = (upper: number, first: number): boolean => upper >= first && upper < first + 4;

/** Little-endian units; throws at the first half of a character without its other half. */
function requireWellFormed(bytes: Uint8Array, offset: number): void {
  for (let i = 0; i < bytes.length; i += 2) {
    const upper = bytes[i + 1]!;
    if (upper < 0xd8 || upper > 0xdf) continue;
    if (isHalf(upper, 0xd8) && isHalf(bytes[i + 3] ?? 0, 0xdc)) i += 2;
    else
      throw new StreamError("invalid-encoding", offset + i, "half a character (a lone surrogate)", "UTF-16");
  }
}

function swapPairs(bytes: Uint8Array, from: number, to: number): void {
  for (let i = from; i + 1 < to; i += 2) {
    const first = bytes[i]!;
    bytes[i] = bytes[i + 1]!;
    bytes[i + 1] = first;
  }
}

function windows1252ToUtf8(bytes: Uint8Array): Uint8Array {
  const out = new Uint8Array(bytes.length * 3);
  let at = 0;
  for (const byte of bytes) {
    const unit = byte >= 0x80 && byte < 0xa0 ? WINDOWS_1252.charCodeAt(byte - 0x80) : byte;
    if (unit < 0x80) out[at++] = unit;
    else {
      if (unit < 0x800) out[at++] = 0xc0 | (unit >> 6);
      else {
        out[at++] = 0xe0 | (unit >> 12);
        out[at++] = 0x80 | ((unit >> 6) & 0x3f);
      }
      out[at++] = 0x80 | (unit & 0x3f);
    }
  }
  return out.subarray(0, at);
}
