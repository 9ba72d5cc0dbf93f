import { wrongArgument } from "../numeric/index.js";

// What a drawing consists of; everything that runs, loads or embeds is missing.
const ELEMENTS = new Set(
  (
    "svg g defs title desc style rect circle ellipse line polyline polygon path text tspan clipPath mask pattern marker " +
    "symbol use linearGradient radialGradient stop"
  ).split(" "),
);

// One tag, one text or one comment-free piece of it, from where the last ended.
const TAG =
  /<(?:\/([A-Za-z]+)\s*|([A-Za-z]+)((?:\s+[A-Za-z_][\w:.-]*\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?))>|[^<]+/y;
const ATTRIBUTE = /([A-Za-z_][\w:.-]*)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

/**
 * Lets a picture of the pictures room into a page, and nothing that does more than draw.
 *
 * A gate against mistakes and against markup from elsewhere, not a cleaner: one `svg` element of well-formed tags from a list
 * of drawing elements; no event attribute, no reference outside the picture.
 *
 * @param svg what `crankworthy/pictures` returns
 * @param name how the caller knows it
 * @returns the picture as it came, white space around it removed
 * @throws RangeError naming what is not allowed
 */
export function checkedSvg(svg: string, name: string): string {
  const text = svg.trim();
  if (!/^<svg[\s>]/.test(text)) wrongArgument(name, text.slice(0, 40), "a picture that begins with <svg");
  const open: string[] = [];
  TAG.lastIndex = 0;
  while (TAG.lastIndex < text.length) {
    const at = TAG.lastIndex;
    const match = TAG.exec(text);
    if (!match) wrongArgument(name, text.slice(at, at + 40), "well-formed elements of a drawing");
    const [piece, closing, opening, attributes = "", empty] = match;
    if (closing !== undefined) {
      if (open.pop() !== closing) wrongArgument(name, piece, "each element closed in its place");
    } else if (opening !== undefined) {
      if (!ELEMENTS.has(opening)) wrongArgument(name, piece.slice(0, 40), "elements of a drawing only");
      if (at > 0 && open.length === 0) wrongArgument(name, piece.slice(0, 40), "one svg element");
      checkAttributes(attributes, name);
      if (empty === "") open.push(opening);
    } else if (open.length === 0) wrongArgument(name, piece.slice(0, 40), "nothing beside the svg element");
    else if (open.at(-1) === "style") checkStyle(piece, name);
  }
  if (open.length > 0) wrongArgument(name, `<${open.at(-1)}>`, "each element closed");
  return text;
}

function checkAttributes(attributes: string, name: string): void {
  for (const [, key, double, single] of attributes.matchAll(ATTRIBUTE)) {
    const value = double ?? single ?? "";
    if (/^on/i.test(key!)) wrongArgument(name, key, "no event attribute");
    if (/(?:^|:)(?:href|src|base)$/i.test(key!) && !value.startsWith("#"))
      wrongArgument(name, `${key}="${value.slice(0, 40)}"`, "references inside the picture only");
    checkStyle(value, name);
  }
}

// A backslash or an entity could spell a forbidden word in another way.
function checkStyle(text: string, name: string): void {
  if (
    /@import|@font-face|expression\(|javascript:|\\|\/\*/i.test(text) ||
    /url\(\s*(?!#)/i.test(text.replace(/&[^;]*;|["']/g, ""))
  )
    wrongArgument(name, text.slice(0, 60), "styles that load nothing");
}
