import { wrongArgument } from "../numeric/index.js";
import type { Source } from "./source.js";
import { StreamError } from "./stream-error.js";
import type { TextChunk } from "./text-input.js";

/** Characters of a long string that are encoded at a time. */
const MOST_CHARACTERS = 262_144;

/**
 * @internal Bytes of a source whose chunks may also be characters, which become UTF-8. Counts what it took, and says
 * where the source failed.
 */
export function toBytes(
  source: Source,
  allowText: boolean,
): Source<Uint8Array> & { readonly bytesRead: () => number } {
  const encoder = new TextEncoder();
  let bytesRead = 0;
  let text = "";
  let at = 0;

  const encodeNext = (): Uint8Array => {
    let end = Math.min(text.length, at + MOST_CHARACTERS);
    // A character of two units stays whole; its second half may be in the next chunk.
    if (end - at > 1 && isHighSurrogate(text.charCodeAt(end - 1))) end--;
    const part = text.slice(at, end);
    at = end;
    const bytes = encoder.encode(part);
    if (bytes.length > part.length) {
      const alone = /\p{Surrogate}/u.exec(part);
      if (alone) {
        const before = encoder.encode(part.slice(0, alone.index)).length;
        throw new StreamError(
          "invalid-encoding",
          bytesRead + before,
          "half a character (a lone surrogate)",
          "text",
        );
      }
    }
    return bytes;
  };

  const pull = async (): Promise<TextChunk | undefined> => {
    try {
      return await source.next();
    } catch (cause) {
      if (cause instanceof StreamError) throw cause;
      const received = cause instanceof Error ? cause.message : String(cause);
      throw new StreamError("source-failed", bytesRead, received, "a source that can be read to its end", {
        cause,
      });
    }
  };

  const next = async (): Promise<Uint8Array | undefined> => {
    for (;;) {
      const rest = text.length - at;
      if (rest > 1 || (rest === 1 && !isHighSurrogate(text.charCodeAt(at)))) return encodeNext();
      const chunk = await pull();
      if (chunk === undefined) {
        if (rest === 0) return undefined;
        return encodeNext();
      }
      if (typeof chunk === "string") {
        if (!allowText)
          wrongArgument("options.encoding", "an encoding of bytes", "utf-8 for text that is decoded already");
        text = rest === 0 ? chunk : text.slice(at) + chunk;
        at = 0;
        continue;
      }
      if (!(chunk instanceof Uint8Array)) wrongArgument("a chunk of input", typeof chunk, "bytes or text");
      if (rest > 0) return encodeNext();
      return chunk;
    }
  };

  return {
    next: async () => {
      const bytes = await next();
      bytesRead += bytes?.length ?? 0;
      return bytes;
    },
    close: source.close,
    ...(source.bytesTotal === undefined ? {} : { bytesTotal: source.bytesTotal }),
    bytesRead: () => bytesRead,
  };
}

function isHighSurrogate(unit: number): boolean {
  return unit >= 0xd800 && unit <= 0xdbff;
}
