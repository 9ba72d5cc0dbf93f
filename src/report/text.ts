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

// Scripts written without blanks, which may be broken between any two characters; Hangul has blanks.
const WITHOUT_BLANKS =
  /[\u2e80-\u312f\u3190-\ua4cf\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]/u;
// But closing marks, small kana and the like begin no line, and opening brackets end none.
const NOT_FIRST =
  /[、。，．・：；？！‥…）］｝〕〉》」』】％℃～〜々ーゝゞヽヾぁぃぅぇぉっゃゅょゎァィゥェォッャュョヮヵヶ),.:;?!%\]}\u00a0\p{M}]/u;
const NOT_LAST = /[（［｛〔〈《「『【([{\u00a0]/u;

/** Parts of a word that stay together: all of it, but for scripts that are written without blanks. */
function unbroken(word: string): string[] {
  if (!WITHOUT_BLANKS.test(word)) return [word];
  const parts: string[] = [];
  let before = "";
  for (const character of word) {
    const together =
      NOT_FIRST.test(character) ||
      NOT_LAST.test(before) ||
      // 2025年, 50～60 Ah
      (/\d/.test(before) && WITHOUT_BLANKS.test(character)) ||
      /\d[～〜]$/.test(parts.at(-1) ?? "") ||
      !(WITHOUT_BLANKS.test(before) || WITHOUT_BLANKS.test(character));
    if (before !== "" && together) parts[parts.length - 1] += character;
    else parts.push(character);
    before = character;
  }
  return parts;
}

/**
 * Breaks a text into lines of at most `width` columns. Breaks at blanks, not at no-break spaces, which come out as
 * blanks, at newlines, and between ideographs and kana, where no closing mark may begin a line and no opening bracket
 * end one; what is too long is cut.
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
    for (const word of part.split(" "))
      for (const [index, piece] of unbroken(word).entries()) place(piece, index === 0 ? 1 : 0);
  }
  flush();
  return lines.map((one) => one.replace(/\u00a0/g, " ").trimEnd());

  function place(word: string, blank: 0 | 1): void {
    const size = columns(word);
    if (used > 0 && used + blank + size > room) flush();
    if (used > 0 && blank === 1) {
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
