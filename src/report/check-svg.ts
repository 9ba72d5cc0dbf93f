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
const NAMED: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };
const NAME = /^[A-Za-z][\w-]*$/;

/**
 * Lets a picture of the pictures room into a page, and nothing that does more than draw.
 *
 * A gate against mistakes and against markup from elsewhere, not a cleaner: one `svg` element of well-formed tags from a list
 * of drawing elements; no event attribute, no reference outside the picture, no id and no style rule that is not its own.
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
  let own: string | undefined;
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
      const pairs = attributesOf(attributes, name);
      if (at === 0) own = pairs.find(([key]) => key === "id")?.[1];
      for (const [key, value] of pairs) checkAttribute(key, value, own, name);
      if (empty === "") open.push(opening);
    } else if (open.length === 0) wrongArgument(name, piece.slice(0, 40), "nothing beside the svg element");
    else if (open.at(-1) === "style") checkRules(piece.trim(), own, name);
  }
  if (open.length > 0) wrongArgument(name, `<${open.at(-1)}>`, "each element closed");
  return text;
}

// An entity could spell a forbidden word in another way: the common ones are read, a page's many others are not taken.
function attributesOf(attributes: string, name: string): [key: string, value: string][] {
  return [...attributes.matchAll(ATTRIBUTE)].map(([, key, double, single]) => {
    const value = (double ?? single ?? "").replace(
      /&(?:(amp|lt|gt|quot|apos);|#(?:x([\da-f]{1,6})|(\d{1,7}));)?/gi,
      (entity, named: string | undefined, hex: string | undefined, decimal: string | undefined) => {
        if (named) return NAMED[named] ?? wrongArgument(name, entity, "entities of XML only");
        const code = hex ? Number.parseInt(hex, 16) : Number(decimal ?? Number.NaN);
        if (!(code > 0 && code <= 0x10ffff))
          wrongArgument(name, value40(double ?? single), "entities of XML only");
        return String.fromCodePoint(code);
      },
    );
    return [key!, value];
  });
}

function value40(text = ""): string {
  return text.slice(0, 40);
}

function checkAttribute(key: string, value: string, own: string | undefined, name: string): void {
  if (/^on/i.test(key)) wrongArgument(name, key, "no event attribute");
  if (/(?:^|:)(?:href|src|base)$/i.test(key) && !value.startsWith("#"))
    wrongArgument(name, `${key}="${value40(value)}"`, "references inside the picture only");
  if (
    /^(?:xml:)?id$/i.test(key) &&
    !(own && NAME.test(value) && (value === own || value.startsWith(`${own}-`)))
  )
    wrongArgument(name, `${key}="${value40(value)}"`, "ids that begin with the id of the svg element");
  if (/^style$/i.test(key)) checkDeclarations(value, name);
  checkStyle(value, name);
}

// One rule, or the head or the end of a condition around rules.
const RULE = /(?:@media\s([\w\s():.,-]*)\{|([^{}@;&]*)\{([^{}]*)\}|(\}))\s*/y;
// What a selector may add to the id of the picture: the end of an id of its parts, elements and classes within it.
const WITHIN = /^(?:-[\w-]+)?(?:\.[\w-]+)*(?:(?:\s+|\s*>\s*)(?:[.#]?[A-Za-z][\w-]*)(?:\.[\w-]+)*)*$/;

// A rule that stands in a page holds for all of the page, unless its selector keeps to the picture.
function checkRules(text: string, own: string | undefined, name: string): void {
  checkStyle(text, name);
  let inside = false;
  RULE.lastIndex = 0;
  while (RULE.lastIndex < text.length) {
    const at = RULE.lastIndex;
    const match = RULE.exec(text);
    const [, media, selectors, declarations, end] = match ?? [];
    if (!match || (media !== undefined && inside) || (end !== undefined && !inside))
      wrongArgument(name, value40(text.slice(at)), "style rules, inside @media or not");
    if (media !== undefined) inside = true;
    else if (end !== undefined) inside = false;
    else {
      for (const one of selectors!.split(",").map((part) => part.trim()))
        if (!own || !NAME.test(own) || !one.startsWith(`#${own}`) || !WITHIN.test(one.slice(own.length + 1)))
          wrongArgument(name, value40(one), "selectors that begin with the id of the svg element");
      checkDeclarations(declarations!, name);
    }
  }
  if (inside) wrongArgument(name, value40(text), "each rule closed");
}

function checkDeclarations(text: string, name: string): void {
  if (/[{}&@]|(?<![\w-])(?:position|content)\s*:/i.test(text))
    wrongArgument(name, text.slice(0, 60), "styles that only draw");
}

// A backslash could spell a forbidden word in another way.
function checkStyle(text: string, name: string): void {
  if (
    /@import|@font-face|expression\(|javascript:|image-set|(?<![\w-])(?:image|src)\(|\\|\/\*/i.test(text) ||
    /url\(\s*(?!#)/i.test(text.replace(/["']/g, ""))
  )
    wrongArgument(name, text.slice(0, 60), "styles that load nothing");
}
