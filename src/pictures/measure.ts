// No browser measures the text, so its width is estimated, on the wide side: a sans-serif face of unknown make.
const NARROW = /[ .,:;'|!()[\]ijlt\u00a0\u2009]/;
const UNSEEN = /[\u061c\u200b-\u200f]/;
const WIDE_LATIN = /[A-Z%@mwMW×±−Ω°]/;
const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f000}-\u{1faff}\u{20000}-\u{3fffd}]/u;

/** Width a text takes at most, about [px]. */
export function textWidth(text: string, size: number): number {
  let ems = 0;
  for (const character of text)
    ems += UNSEEN.test(character)
      ? 0
      : WIDE.test(character)
        ? 1.05
        : NARROW.test(character)
          ? 0.38
          : WIDE_LATIN.test(character)
            ? 0.78
            : 0.6;
  return ems * size;
}

// What never begins a line: closing marks of scripts written without blanks.
const CLOSING = /[、。，．：；！？）」』】％]/;

/** Lines of a text no wider than `width`; breaks at blanks (not at no-break spaces) and inside words that are too long. */
export function wrapText(text: string, width: number, size: number): string[] {
  const lines: string[] = [];
  let line = "";
  const flush = (): void => {
    if (line !== "") lines.push(line);
    line = "";
  };
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (textWidth(longer, size) <= width) {
      line = longer;
      continue;
    }
    flush();
    for (const character of word) {
      if (line !== "" && !CLOSING.test(character) && textWidth(line + character, size) > width) flush();
      line += character;
    }
  }
  flush();
  return lines;
}

/** A text cut to a width, with an ellipsis where something is missing. */
export function cutText(text: string, most: number): string {
  const characters = [...text];
  return characters.length <= most ? text : `${characters.slice(0, most - 1).join("")}…`;
}
