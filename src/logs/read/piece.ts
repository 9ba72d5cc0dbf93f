import type { TextPiece } from "../../streams/index.js";

/** @internal Bytes of the file before a place in a piece. Worked out for errors only. */
export function byteOffsetOf({ text, byteOffset, encoding }: TextPiece, at: number): number {
  if (encoding === "windows-1252") return byteOffset + at;
  if (encoding !== "utf-8") return byteOffset + 2 * at;
  return byteOffset + new TextEncoder().encode(text.slice(0, at)).length;
}

/** @internal Number of the line of the file in which a place of a piece lies. */
export function lineNumberOf({ text, firstLine }: TextPiece, at: number): number {
  let line = firstLine;
  for (let feed = text.indexOf("\n"); feed >= 0 && feed < at; feed = text.indexOf("\n", feed + 1)) line++;
  return line;
}

/** @internal The line that begins at a place, without its end, shortened for a message. */
export function lineAt(text: string, from: number, most = 2000): string {
  const feed = text.indexOf("\n", from);
  const line = text.slice(from, Math.min(feed < 0 ? text.length : feed, from + most));
  return line.endsWith("\r") ? line.slice(0, -1) : line;
}
