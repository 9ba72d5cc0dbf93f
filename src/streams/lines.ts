import { byteLength } from "./byte-offset-at.js";
import type { ReadTextOptions } from "./options.js";
import { readText } from "./read-text.js";
import type { TextInput } from "./text-input.js";

/** One line of a text, without its end. */
export interface TextLine {
  readonly text: string;
  /** From 1. */
  readonly line: number;
  /** Of its first byte, from the start of the decompressed bytes. */
  readonly byteOffset: number;
}

/**
 * Reads a text line by line, as {@link readText} does; for formats of one record a line. Quotes are not looked at.
 *
 * @param input as for `readText`
 * @param options as for `readText`, without `quote`
 * @returns the lines in order, empty ones too; a line end at the very end begins no further line
 * @throws as `readText`
 * @example
 * ```ts
 * import { lines } from "crankworthy/streams";
 * const found = [];
 * for await (const { text, line, byteOffset } of lines(["{}\r", "\n\n[1]"])) found.push([text, line, byteOffset]);
 * found; // => [["{}", 1, 0], ["", 2, 4], ["[1]", 3, 5]]
 * ```
 */
export async function* lines(
  input: TextInput,
  options: Omit<ReadTextOptions, "quote"> = {},
): AsyncGenerator<TextLine, void, undefined> {
  for await (const piece of readText(input, options)) {
    const { text } = piece;
    let { byteOffset, firstLine: line } = piece;
    for (let from = 0; from < text.length; line++) {
      const feed = text.indexOf("\n", from);
      const next = feed < 0 ? text.length : feed + 1;
      let end = feed < 0 ? next : feed;
      while (end > from && text.charCodeAt(end - 1) === 13) end--;
      yield { text: text.slice(from, end), line, byteOffset };
      byteOffset += byteLength(piece, from, next);
      from = next;
    }
  }
}
