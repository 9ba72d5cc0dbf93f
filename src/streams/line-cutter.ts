import type { Settings } from "./options.js";
import { StreamError, type StreamErrorCode } from "./stream-error.js";
import { decodeUtf8, firstNul } from "./utf8.js";

const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;

/** @internal */
export interface CutPiece {
  readonly text: string;
  readonly byteOffset: number;
  /** Where the next piece begins. */
  readonly nextByteOffset: number;
  readonly firstLine: number;
}

/** @internal */
export interface LineCutter {
  /** Takes what fits of a chunk, from `from` on; returns how many bytes that was. */
  fill(chunk: Uint8Array, from: number): number;
  /** The next piece, if there is enough for one; at the end of the text, whatever is left. */
  cut(atEnd: boolean): CutPiece | undefined;
}

/**
 * @internal Cuts UTF-8 bytes at line ends. Where it cuts depends on the bytes alone, not on how they arrive. It holds
 * one piece, or one line where that is longer.
 *
 * The first line end decides which kind the text has. `\n` and `\r\n` stay as they are. Where it is a lone `\r`, each
 * becomes `\n` (as long, so offsets hold), and a `\n` among them is an error.
 *
 * @param start where the text begins, after a byte order mark
 * @param unitBytes of the encoding it was transcoded from, whose bytes offsets count; none for UTF-8
 */
export function createLineCutter(
  { pieceBytes, mostLineBytes, quote }: Settings,
  start: number,
  unitBytes: number | undefined,
): LineCutter {
  // No line in a window can be too long, so only one that fills a window has to be measured.
  const window = Math.min(pieceBytes, mostLineBytes);
  // A line, its end, and one byte more that tells "\r\r\n" from "\r".
  const mostHeld = mostLineBytes + 3;
  let buffer = new Uint8Array(window);
  let held = 0;
  let offset = start;
  let line = 1;
  let lineEnd: number | undefined;
  // Of the bytes held: looked at for line ends so far; end of the last whole line; opening quote, if one is open.
  let seen = 0;
  let end = 0;
  let opened = -1;

  const startLooking = (): void => {
    seen = 0;
    end = 0;
    opened = -1;
  };

  const place = (at: number): number =>
    offset + (unitBytes ? new TextDecoder().decode(buffer.subarray(0, at)).length * unitBytes : at);

  const fail = (code: StreamErrorCode, at: number, received: string, expected: string): never => {
    // Binary data have lines of any length; that they are binary is the better message.
    const bytes = buffer.subarray(0, held);
    if (bytes.indexOf(0) >= 0) throw firstNul(bytes, place);
    throw new StreamError(code, place(at), received, expected);
  };

  const tooLong = (): never =>
    opened >= 0
      ? fail(
          "quote-not-closed",
          opened,
          `more than ${mostLineBytes} bytes without a closing quote`,
          "a quote that is closed",
        )
      : fail(
          "line-too-long",
          0,
          `a line of more than ${mostLineBytes} bytes`,
          `lines of at most ${mostLineBytes} bytes`,
        );

  // Which kind of line ends; undefined as long as none is complete.
  const findKind = (final: boolean): void => {
    const bytes = buffer.subarray(0, held);
    const feed = bytes.indexOf(LINE_FEED);
    const first = (feed < 0 ? bytes : bytes.subarray(0, feed)).indexOf(CARRIAGE_RETURN);
    if (first < 0) lineEnd = feed < 0 ? undefined : LINE_FEED;
    else if (feed >= 0 && feed - first <= 2 && bytes[feed - 1] === CARRIAGE_RETURN) lineEnd = LINE_FEED;
    else if (final || held - first > 2 || feed >= 0 || bytes[held - 1] !== CARRIAGE_RETURN) {
      lineEnd = CARRIAGE_RETURN;
      turnReturns(0);
      startLooking();
    }
  };

  const turnReturns = (from: number): void => {
    for (let i = from; i < held; i++) {
      if (buffer[i] === LINE_FEED)
        fail(
          "mixed-line-ends",
          i,
          "\\n in a text whose first line ends with \\r alone",
          "one kind of line end",
        );
      if (buffer[i] === CARRIAGE_RETURN) buffer[i] = LINE_FEED;
    }
  };

  // Looks on from `seen` for the last line end before `until`, or for the first one.
  const look = (until: number, first: boolean): void => {
    if (seen >= until) return;
    const bytes = buffer.subarray(seen, until);
    if (opened < 0 && (quote === undefined || bytes.indexOf(quote) < 0)) {
      const found = first ? bytes.indexOf(LINE_FEED) : bytes.lastIndexOf(LINE_FEED);
      if (found >= 0) end = seen + found + 1;
      seen = until;
      return;
    }
    for (; seen < until; seen++) {
      const byte = buffer[seen];
      if (byte === quote) opened = opened < 0 ? seen : -1;
      else if (byte === LINE_FEED && opened < 0) {
        end = seen + 1;
        if (first) return;
      }
    }
  };

  const take = (length: number): CutPiece => {
    const text = decodeUtf8(buffer.subarray(0, length), place);
    const nextByteOffset = offset + (unitBytes ? text.length * unitBytes : length);
    const piece = { text, byteOffset: offset, nextByteOffset, firstLine: line };
    for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) line++;
    buffer.copyWithin(0, length, held);
    held -= length;
    offset = nextByteOffset;
    startLooking();
    return piece;
  };

  return {
    fill: (chunk, from) => {
      if (held === buffer.length) {
        const larger = new Uint8Array(Math.min(mostHeld, buffer.length * 2));
        larger.set(buffer);
        buffer = larger;
      }
      // Never more than a window, unless a line asks for it: what is left behind a piece has to be moved.
      const room = held < window ? window - held : buffer.length - held;
      const taken = Math.min(room, chunk.length - from);
      buffer.set(chunk.subarray(from, from + taken), held);
      held += taken;
      if (lineEnd === CARRIAGE_RETURN) turnReturns(held - taken);
      return taken;
    },
    cut: (atEnd) => {
      if (held === 0 || (held < window && !atEnd)) return undefined;
      if (lineEnd === undefined) findKind(atEnd || held >= mostHeld);
      if (seen < window) look(Math.min(held, window), false);
      if (end === 0) look(held, true);
      if (end > 0) {
        let content = end - 1;
        while (content > 0 && buffer[content - 1] === CARRIAGE_RETURN) content--;
        if (content > mostLineBytes && end > window) tooLong();
        return take(end);
      }
      if (atEnd) {
        if (opened >= 0)
          fail("quote-not-closed", opened, "the end of the text inside quotes", "a quote that is closed");
        if (held > mostLineBytes) tooLong();
        return take(held);
      }
      if (held >= mostHeld) tooLong();
      return undefined;
    },
  };
}
