import type { CellDelimiter } from "./format.js";

/** @internal One line cut into cells; reused from line to line. */
export interface SplitLine {
  /** The cells; empty where there are more than `most`. */
  cells: string[];
  /** How many cells the line has, counted on beyond `most` without keeping them. */
  count: number;
  /** After the line's end. */
  next: number;
  /** Text after a closing quote, or a quote that is never closed. */
  malformed: boolean;
}

/** @internal */
export const splitLine = (): SplitLine => ({ cells: [], count: 0, next: 0, malformed: false });

/**
 * @internal Cuts the line that begins at `from`, with every check that a fast splitter leaves out. A line feed inside
 * quotes does not end it.
 */
export function cutLine(
  line: SplitLine,
  text: string,
  from: number,
  delimiter: CellDelimiter,
  quoteChar: string | null,
  most: number,
): void {
  line.cells = [];
  line.count = 0;
  line.malformed = false;
  const feed = text.indexOf("\n", from);
  const lineEnd = feed < 0 ? text.length : feed;
  line.next = Math.min(text.length, lineEnd + 1);
  const quoted = quoteChar !== null && text.slice(from, lineEnd).includes(quoteChar);
  if (delimiter === "spaces" && !quoted) cutSpaces(line, text.slice(from, lineEnd), most);
  else if (!quoted) cutPlain(line, text, from, withoutReturn(text, from, lineEnd), delimiter, most);
  else cutQuoted(line, text, from, delimiter, quoteChar, most);
}

const withoutReturn = (text: string, from: number, end: number): number =>
  end > from && text.charCodeAt(end - 1) === 13 ? end - 1 : end;

const add = (line: SplitLine, cell: string, most: number): void => {
  line.count++;
  if (line.count <= most) line.cells.push(cell);
  else line.cells = [];
};

function cutPlain(
  line: SplitLine,
  text: string,
  from: number,
  end: number,
  delimiter: string,
  most: number,
): void {
  let at = from;
  for (;;) {
    const found = text.indexOf(delimiter, at);
    const to = found < 0 || found > end ? end : found;
    add(line, text.slice(at, to), most);
    if (to === end) return;
    at = to + 1;
  }
}

function cutSpaces(line: SplitLine, text: string, most: number): void {
  for (const [cell] of text.matchAll(/[^ \t\r]+/g)) add(line, cell, most);
}

const isSpace = (code: number): boolean => code === 32 || code === 9;

function cutQuoted(
  line: SplitLine,
  text: string,
  from: number,
  delimiter: CellDelimiter,
  quoteChar: string,
  most: number,
): void {
  const spaces = delimiter === "spaces";
  const quote = quoteChar.charCodeAt(0);
  const separator = spaces ? 32 : delimiter.charCodeAt(0);
  const ends = (code: number): boolean =>
    code === 10 || code === separator || (spaces && (isSpace(code) || code === 13));
  let at = from;
  for (;;) {
    while (spaces && at < text.length && isSpace(text.charCodeAt(at))) at++;
    if (spaces && (at >= text.length || ends(text.charCodeAt(at)))) break;
    let cell = "";
    if (text.charCodeAt(at) === quote) {
      // A cell in quotes, up to a quote that is not doubled.
      let start = at + 1;
      for (;;) {
        const close = text.indexOf(quoteChar, start);
        if (close < 0) {
          line.malformed = true;
          line.next = text.length;
          return;
        }
        cell += text.slice(start, close);
        at = close + 1;
        if (text.charCodeAt(at) !== quote) break;
        cell += quoteChar;
        start = at + 1;
      }
      if (text.charCodeAt(at) === 13 && (at + 1 >= text.length || text.charCodeAt(at + 1) === 10)) at++;
      if (at < text.length && !ends(text.charCodeAt(at))) {
        line.malformed = true;
        const feed = text.indexOf("\n", at);
        line.next = feed < 0 ? text.length : feed + 1;
        return;
      }
    } else {
      const start = at;
      while (at < text.length && !ends(text.charCodeAt(at))) at++;
      const atLineEnd = at >= text.length || text.charCodeAt(at) === 10;
      cell = text.slice(start, atLineEnd ? withoutReturn(text, start, at) : at);
    }
    add(line, cell, most);
    if (at >= text.length || text.charCodeAt(at) === 10) break;
    at++;
  }
  if (spaces) while (at < text.length && text.charCodeAt(at) !== 10) at++;
  line.next = Math.min(text.length, at + 1);
}

/** @internal True for a line without anything in it. */
export function isBlankLine(text: string, from: number): boolean {
  for (let at = from; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10) return true;
    if (code !== 32 && code !== 9 && code !== 13) return false;
  }
  return true;
}

/** @internal Another delimiter that would cut this line into the number of cells that is expected. */
export function otherDelimiter(
  lineText: string,
  delimiter: CellDelimiter,
  expected: (count: number) => boolean,
): CellDelimiter | undefined {
  const others: readonly CellDelimiter[] = [",", ";", "\t", "|", "spaces"];
  const line = splitLine();
  return others.find((other) => {
    if (other === delimiter) return false;
    cutLine(line, lineText, 0, other, null, 1);
    return expected(line.count);
  });
}
