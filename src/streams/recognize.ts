import type { TextEncodingName } from "./options.js";
import type { Source } from "./source.js";
import { StreamError } from "./stream-error.js";
import { utf16Pattern } from "./utf8.js";

/** What of the first bytes tells what they are. */
const HEAD_BYTES = 6;

/** @internal Reads far enough to have the first bytes in one chunk. */
export async function readHead(source: Source<Uint8Array>): Promise<Uint8Array> {
  let head = (await source.next()) ?? new Uint8Array(0);
  while (head.length < HEAD_BYTES) {
    const chunk = await source.next();
    if (!chunk) break;
    const longer = new Uint8Array(head.length + chunk.length);
    longer.set(head);
    longer.set(chunk, head.length);
    head = longer;
  }
  return head;
}

/** @internal The same source with its head put back. */
export function withHead(head: Uint8Array, source: Source<Uint8Array>): Source<Uint8Array> {
  let first: Uint8Array | undefined = head;
  return {
    ...source,
    next: () => {
      const chunk = first;
      first = undefined;
      return chunk?.length ? Promise.resolve(chunk) : source.next();
    },
  };
}

const starts = (bytes: Uint8Array, ...magic: readonly number[]): boolean =>
  bytes.length >= magic.length && magic.every((byte, i) => bytes[i] === byte);

/** @internal RFC 1952: two magic bytes and the only method there is. */
export const isGzip = (head: Uint8Array): boolean => starts(head, 0x1f, 0x8b, 8);

// What people hand over by mistake, by its first bytes.
const NOT_TEXT: readonly (readonly [string, readonly number[]])[] = [
  ["a ZIP archive (a spreadsheet may be one)", [0x50, 0x4b, 3, 4]],
  ["Zstandard data", [0x28, 0xb5, 0x2f, 0xfd]],
  ["XZ data", [0xfd, 0x37, 0x7a, 0x58, 0x5a, 0]],
  ["an OLE file (an old spreadsheet may be one)", [0xd0, 0xcf, 0x11, 0xe0]],
  ["gzip data inside gzip", [0x1f, 0x8b, 8]],
];

// UTF-32LE before UTF-16LE, which begins alike.
const MARKS: readonly (readonly [string, readonly number[]])[] = [
  ["UTF-32LE", [0xff, 0xfe, 0, 0]],
  ["UTF-32BE", [0, 0, 0xfe, 0xff]],
  ["UTF-16LE", [0xff, 0xfe]],
  ["UTF-16BE", [0xfe, 0xff]],
  ["UTF-8", [0xef, 0xbb, 0xbf]],
];

/** @internal Length of the byte order mark; throws where the first bytes say that this is another encoding or no text. */
export function byteOrderMark(head: Uint8Array, encoding: TextEncodingName): number {
  const asked = encoding.toUpperCase();
  const mark = MARKS.find(([, bytes]) => starts(head, ...bytes));
  if (mark) {
    const [name, bytes] = mark;
    if (name === asked) return bytes.length;
    throw new StreamError("other-encoding", 0, `a byte order mark of ${name}`, asked);
  }
  if (encoding === "utf-16le" || encoding === "utf-16be") return 0;
  const utf16 = utf16Pattern(head);
  if (utf16) throw new StreamError("other-encoding", 0, `NUL bytes as in ${utf16}`, asked);
  const other = NOT_TEXT.find(([, bytes]) => starts(head, ...bytes));
  if (other) throw new StreamError("not-text", 0, other[0], "text, or text compressed with gzip");
  return 0;
}
