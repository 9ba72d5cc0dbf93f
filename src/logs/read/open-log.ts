import { requireFinite, wrongArgument } from "../../numeric/index.js";
import { type ReadTextOptions, readText, type TextInput, type TextPiece } from "../../streams/index.js";
import type { LogChunk } from "../chunk.js";
import type { ReadTally } from "./bad-cells.js";
import { createHeadReader } from "./delimited-head.js";
import type { RowReader } from "./delimited-rows.js";
import { type LogFormat, planDelimited, requireJsonLines } from "./format.js";
import type { HeaderReading } from "./header.js";
import { createJsonRows } from "./json-lines.js";
import { LogInputError, problem } from "./log-input-error.js";

/** How a log is read: the options of reading text, and the size of a chunk. */
export interface OpenLogOptions extends Omit<ReadTextOptions, "quote"> {
  /** Rows of a chunk; the last one may have fewer. Default 8192 (our choice: the columns of a chunk stay in the cache). */
  readonly chunkRows?: number;
}

/** A log whose head has been read. */
export interface OpenedLog {
  readonly header: HeaderReading;
  /** The rows, once. Leaving the loop closes the source. */
  readonly chunks: AsyncIterable<LogChunk>;
  /** What has been read so far, and what could not be. Complete after the last chunk. */
  tally(): ReadTally;
  /** Closes the source of a log whose chunks are not wanted. */
  close(): Promise<void>;
}

/**
 * Opens a table of logged rows: reads its head and hands the rows on in chunks of typed columns.
 *
 * Scope: any length in bounded memory. Rows come in the order of the file, unsorted and unrepaired; blank lines and
 * comments are no rows. A table without rows gives no chunk.
 *
 * @param input text, bytes, `{ path }`, a `file:` URL, a Node or Web stream, an iterable of chunks
 * @param format how the table is written; `bdf` for the Battery Data Format
 * @param options signal, progress, sizes, encoding, `chunkRows` (1..1 000 000)
 * @returns header, chunks, and a tally of what could not be read
 * @throws LogInputError for a table that is not as the format says, with line and byte offset; StreamError for a text
 * that cannot be read; RangeError for a format that cannot be; the signal's reason
 * @example
 * ```ts
 * import { openLog } from "crankworthy/logs";
 * const text = "Test Time / s,Voltage / V,Current / A\n0,12.61,0\n1,12.42,-5\n";
 * const log = await openLog(text, "bdf");
 * log.header.timeFrom; // => "elapsed"
 * const rows = [];
 * for await (const { volts, amperes } of log.chunks) rows.push(...volts, ...amperes);
 * rows; // => [12.61, 12.42, 0, -5]
 * log.tally().rows; // => 2
 * ```
 */
export async function openLog(
  input: TextInput,
  format: LogFormat,
  options: OpenLogOptions = {},
): Promise<OpenedLog> {
  const { chunkRows = 8192, ...textOptions } = options;
  requireFinite("options.chunkRows", chunkRows, 1, 1_000_000);
  if (!Number.isInteger(chunkRows)) wrongArgument("options.chunkRows", chunkRows, "a whole number");
  const given = format === "bdf" ? ({ columns: "bdf" } as const) : format;
  if (given.jsonLines) {
    requireJsonLines(given);
    const pieces = readText(input, textOptions)[Symbol.asyncIterator]();
    const first = await pieces.next();
    if (first.done) throw emptyInput();
    return opened(createJsonRows(given, chunkRows), pieces, { piece: first.value, from: 0 });
  }
  const plan = planDelimited(given);
  const quote = plan.quoteChar === null ? {} : { quote: plan.quoteChar };
  const pieces = readText(input, { ...textOptions, ...quote })[Symbol.asyncIterator]();
  const head = createHeadReader(plan);
  try {
    for (;;) {
      const next = await pieces.next();
      if (next.done) return head.end();
      const from = head.feed(next.value);
      if (from !== undefined) return opened(head.rows(chunkRows), pieces, { piece: next.value, from });
    }
  } catch (error) {
    await pieces.return?.(undefined);
    throw error;
  }
}

function opened(
  reader: RowReader,
  pieces: AsyncIterator<TextPiece>,
  first: { readonly piece: TextPiece; readonly from: number },
): OpenedLog {
  const { sink, bad, header } = reader;
  const close = async (): Promise<void> => void (await pieces.return?.(undefined));
  async function* read(): AsyncGenerator<LogChunk, void, undefined> {
    try {
      let next: { readonly piece: TextPiece; readonly from: number } | undefined = first;
      while (next) {
        reader.feed(next.piece, next.from);
        yield* sink.take(false);
        const more = await pieces.next();
        next = more.done ? undefined : { piece: more.value, from: 0 };
      }
      reader.end();
      yield* sink.take(true);
    } finally {
      await close();
    }
  }
  const rows = read();
  return {
    header,
    chunks: {
      [Symbol.asyncIterator]: () => ({
        next: () => rows.next(),
        // A generator that has not begun ends without its `finally`.
        return: async () => {
          await close();
          return rows.return();
        },
      }),
    },
    tally: () => {
      const timeZero = sink.timeZero();
      return {
        rows: sink.rowsBefore() + sink.rows(),
        ...bad.counts(),
        ...(timeZero === undefined ? {} : { timeZero }),
      };
    },
    close,
  };
}

function emptyInput(): LogInputError {
  return new LogInputError(
    problem({ code: "empty-input", line: 1, byteOffset: 0, received: "nothing", expected: "a table" }),
  );
}
