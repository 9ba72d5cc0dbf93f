import type { Source } from "./source.js";
import { StreamError } from "./stream-error.js";

/**
 * @internal Decompresses with the platform's own decompressor. Compressed bytes are fed only while somebody reads, so a
 * small file that unfolds to an enormous one fills no memory.
 */
export function gunzip(source: Source<Uint8Array>, bytesRead: () => number): Source<Uint8Array> {
  if (typeof DecompressionStream !== "function")
    throw new StreamError(
      "cannot-decompress",
      0,
      "gzip data, where nothing decompresses it",
      "decompressed data",
    );
  const { readable, writable } = new DecompressionStream("gzip");
  const reader: ReadableStreamDefaultReader<Uint8Array> = readable.getReader();
  const writer = writable.getWriter();
  let fedAll = false;
  let sourceFailure: { readonly error: unknown } | undefined;

  const feed = async (): Promise<void> => {
    try {
      for (;;) {
        const chunk = await source.next();
        if (!chunk) break;
        // A copy, because some platforms call a chunk written before they have looked at it.
        await writer.write(chunk.slice());
      }
      fedAll = true;
      await writer.close();
    } catch (error) {
      if (isOurs(error)) sourceFailure = { error };
      await writer.abort(error).catch(() => {});
    }
  };
  let feeding = false;

  return {
    next: async () => {
      if (!feeding) {
        feeding = true;
        void feed();
      }
      try {
        const { done, value } = await reader.read();
        return done ? undefined : value;
      } catch (cause) {
        if (sourceFailure) throw sourceFailure.error;
        const { code } = cause as { readonly code?: unknown };
        const truncated = code === "Z_BUF_ERROR" || (code === undefined && fedAll);
        throw truncated
          ? new StreamError(
              "truncated-gzip",
              bytesRead(),
              "the end of the gzip data too soon",
              "its trailer",
              { cause },
            )
          : new StreamError(
              "corrupt-gzip",
              bytesRead(),
              "gzip data that do not decompress",
              "gzip data as written",
              { cause },
            );
      }
    },
    close: async () => {
      await source.close();
      writer.abort().catch(() => {});
      await reader.cancel().catch(() => {});
    },
  };
}

// Errors of the source and wrong arguments; everything else comes from the decompressor.
function isOurs(error: unknown): boolean {
  return error instanceof StreamError || error instanceof RangeError;
}
