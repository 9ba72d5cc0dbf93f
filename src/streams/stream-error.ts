/**
 * What stopped the reading of a text.
 *
 * - `cannot-open`: no such file, no right to read it, or a platform that opens none by path
 * - `source-failed`: the stream or disk broke; the error is the `cause`
 * - `not-text`: an archive or spreadsheet by its first bytes
 * - `other-encoding`: a byte order mark or NUL bytes of an encoding that was not asked for
 * - `invalid-encoding`: a byte or unit that the encoding does not have there
 * - `nul-byte`: no text has one
 * - `line-too-long`, `too-many-bytes`: beyond `mostLineBytes`, `mostBytes`
 * - `quote-not-closed`: text or longest line ends inside quotes; the place is that of the opening one
 * - `mixed-line-ends`: a `\n` where the first line ended with `\r` alone
 * - `corrupt-gzip`, `truncated-gzip`, `cannot-decompress`: altered, cut off, or no decompressor on this platform
 */
export type StreamErrorCode =
  | "cannot-open"
  | "source-failed"
  | "not-text"
  | "other-encoding"
  | "invalid-encoding"
  | "nul-byte"
  | "line-too-long"
  | "too-many-bytes"
  | "quote-not-closed"
  | "mixed-line-ends"
  | "corrupt-gzip"
  | "truncated-gzip"
  | "cannot-decompress";

/** Thrown while a text is read; says where and why. Test for it with {@link isStreamError}. */
export class StreamError extends Error {
  override readonly name = "StreamError";
  readonly code: StreamErrorCode;
  /**
   * Where it happened, bytes from the start of the decompressed bytes; for `cannot-open`, `source-failed` and the three
   * about gzip: bytes taken from the source so far, still compressed.
   */
  readonly byteOffset: number;
  /** What came, in words. */
  readonly received: string;
  readonly expected: string;

  constructor(
    code: StreamErrorCode,
    byteOffset: number,
    received: string,
    expected: string,
    options?: { readonly cause: unknown },
  ) {
    super(`byte ${byteOffset}: received ${received}, expected ${expected}`, options);
    this.code = code;
    this.byteOffset = byteOffset;
    this.received = received;
    this.expected = expected;
  }
}

/** True for a {@link StreamError}, also one from another copy of this package. */
export function isStreamError(error: unknown): error is StreamError {
  return error instanceof Error && error.name === "StreamError" && "byteOffset" in error;
}
