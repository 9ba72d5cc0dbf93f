/**
 * Text of a record made harmless for a printer or terminal: control and format characters, line breaks, surrogates
 * without a partner and private characters go, white space becomes single blanks.
 */
export function clean(text: string): string {
  return text
    .replace(/(?!\s)[\p{Cf}\p{Cs}\p{Co}]/gu, "")
    .replace(/(?:(?!\u00a0)[\p{Cc}\p{Z}\s])+/gu, " ")
    .trim();
}

// East Asian wide characters and emoji take two columns in a fixed-width font.
const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f000}-\u{1faff}\u{20000}-\u{3fffd}]/u;

/** Columns a text takes, at most: a combining mark counts as a column of its own. */
export function columns(text: string): number {
  if (/^[\x20-\x7e\u00a0]*$/.test(text)) return text.length;
  let count = 0;
  for (const character of text) count += WIDE.test(character) ? 2 : 1;
  return count;
}

/**
 * Breaks a text into lines of at most `width` columns. Breaks at blanks, not at no-break spaces, which come out as
 * blanks, and at newlines; a word that is too long is cut.
 *
 * @param first what the first line begins with, `rest` the others; same number of columns
 */
export function wrap(text: string, width: number, first = "", rest = " ".repeat(first.length)): string[] {
  const room = width - columns(first);
  const lines: string[] = [];
  let line = "";
  let used = 0;
  const flush = (): void => {
    lines.push((lines.length === 0 ? first : rest) + line);
    line = "";
    used = 0;
  };
  for (const part of text.split("\n")) {
    if (used > 0) flush();
    for (const word of part.split(" ")) place(word);
  }
  flush();
  return lines.map((one) => one.replace(/\u00a0/g, " ").trimEnd());

  function place(word: string): void {
    const size = columns(word);
    if (used > 0 && used + 1 + size > room) flush();
    if (used > 0) {
      line += " ";
      used++;
    }
    if (used + size <= room) {
      line += word;
      used += size;
      return;
    }
    for (const character of word) {
      const step = columns(character);
      if (used + step > room) flush();
      line += character;
      used += step;
    }
  }
}

/** Checks a page width given by a developer. */
export function pageWidth(width: number): number {
  if (!Number.isInteger(width) || width < 20)
    throw new RangeError(`width: received ${width}, expected a whole number of 20 or more`);
  return width;
}

/** Escapes a cleaned text so that Markdown and HTML show it as it is, also at the start of a line. */
export function escapeMarkdown(text: string): string {
  return text
    .replace(/\u00a0/g, " ")
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/[\\`*_{}[\]#|~!$@]|:(?=\/\/)/g, "\\$&")
    .replace(/(www)\./gi, "$1\\.")
    .replace(/^[-+=]/gm, "\\$&")
    .replace(/^(\d+)([.)])/gm, "$1\\$2")
    .replace(/\n/g, "\\\n   ");
}
