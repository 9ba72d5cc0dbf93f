import { watchAbort } from "./abort.js";
import { toBytes } from "./byte-source.js";
import { gunzip } from "./gunzip.js";
import { createLineCutter } from "./line-cutter.js";
import { openSource } from "./open-source.js";
import { type ReadTextOptions, type Settings, settle, type TextEncodingName } from "./options.js";
import { byteOrderMark, isGzip, readHead, withHead } from "./recognize.js";
import type { Source } from "./source.js";
import { StreamError } from "./stream-error.js";
import type { TextInput } from "./text-input.js";
import { transcode, UNIT_BYTES } from "./transcode.js";
import { createTurns } from "./turn.js";

/** Whole lines of a text, with their line ends (the last line of a text may have none). */
export interface TextPiece {
  readonly text: string;
  /** Of the first byte of `text`, from the start of the decompressed bytes. */
  readonly byteOffset: number;
  /** Number of the first line of `text`, from 1; counts every line end, also those inside quotes. */
  readonly firstLine: number;
  /** In which `byteOffset` counts. */
  readonly encoding: TextEncodingName;
}

/**
 * Reads a text in pieces of whole lines, in bounded memory whatever its length.
 *
 * Takes gzip as it comes (one member; Node reads several), removes a byte order mark, and passes nothing over that is not
 * text: bytes that are no UTF-8, a NUL, another encoding than the one asked for, a truncated or altered gzip file and a
 * line beyond the limit all throw, with the place. A line ends with `\n` or `\r\n`; where the first one ends with `\r` alone, all do, and pieces
 * have `\n` in its place. Where pieces end depends on the text and the options only, not on the chunks it arrives in.
 * Text that is there already is handed out with pauses, so that timers and the signal get their turn every 10 ms or so.
 * A source is opened by the first `next()` and closed by the end, an error, the signal, or a consumer that stops early.
 *
 * @param input the text, its bytes, `{ path }`, a `file:` URL, a Node or Web stream, an iterable of chunks
 * @param options signal, progress, sizes, encoding, quote
 * @returns the pieces in order; none for an empty text
 * @throws StreamError where the text cannot be read on; RangeError for an input or option that is none; the signal's reason
 * @example
 * ```ts
 * import { readText } from "crankworthy/streams";
 * const places = [];
 * for await (const { text, byteOffset, firstLine } of readText("s,V\n0,12.61\n1,12.60", { pieceBytes: 8 }))
 *   places.push([text, byteOffset, firstLine]);
 * places; // => [["s,V\n", 0, 1], ["0,12.61\n", 4, 2], ["1,12.60", 12, 3]]
 * ```
 */
export function readText(
  input: TextInput,
  options: ReadTextOptions = {},
): AsyncGenerator<TextPiece, void, undefined> {
  return pieces(input, settle(options), options);
}

async function* pieces(
  input: TextInput,
  settings: Settings,
  { signal, onProgress }: ReadTextOptions,
): AsyncGenerator<TextPiece, void, undefined> {
  let opened: Source<unknown> | undefined;
  const watch = watchAbort(signal, () => void opened?.close());
  try {
    const opening = Promise.resolve(openSource(input)).then((source) => {
      opened = source;
      if (signal?.aborted) void source.close();
      return source;
    });
    const raw = toBytes(await watch.wait(opening), settings.encoding === "utf-8");
    const report = (): void =>
      onProgress?.({
        bytesRead: raw.bytesRead(),
        ...(raw.bytesTotal === undefined ? {} : { bytesTotal: raw.bytesTotal }),
      });

    let source: Source<Uint8Array> = raw;
    let head = await watch.wait(readHead(source));
    if (isGzip(head)) {
      source = gunzip(withHead(head, source), raw.bytesRead);
      opened = source;
      head = await watch.wait(readHead(source));
    }
    const mark = byteOrderMark(head, settings.encoding);
    source = withHead(head.subarray(mark), source);
    const { encoding } = settings;
    if (encoding !== "utf-8") source = transcode(source, encoding, mark);

    const cutter = createLineCutter(settings, mark, UNIT_BYTES[encoding]);
    const turns = createTurns();
    for (;;) {
      if (turns.due()) await watch.wait(turns.take());
      const chunk = await watch.wait(source.next());
      let from = 0;
      do {
        if (chunk) from += cutter.fill(chunk, from);
        for (;;) {
          const piece = cutter.cut(chunk === undefined);
          if (!piece) break;
          if (piece.nextByteOffset > settings.mostBytes) throw tooManyBytes(settings.mostBytes);
          report();
          const { text, byteOffset, firstLine } = piece;
          yield { text, byteOffset, firstLine, encoding };
          signal?.throwIfAborted();
          if (turns.due()) await watch.wait(turns.take());
        }
      } while (chunk && from < chunk.length);
      if (!chunk) break;
    }
    report();
  } finally {
    watch.dispose();
    // A source that is stuck may never be done with closing; who aborts does not wait for it.
    const closed = opened?.close();
    if (!signal?.aborted) await closed;
  }
}

function tooManyBytes(mostBytes: number): StreamError {
  return new StreamError(
    "too-many-bytes",
    mostBytes,
    `more than ${mostBytes} bytes`,
    `at most ${mostBytes} bytes`,
  );
}
