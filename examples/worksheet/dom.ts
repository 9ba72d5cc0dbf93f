// Elements without a framework. Children that are text become text nodes, so no text of a record is ever read as markup.

type Child = Node | string | undefined | false;
type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** Makes an element; `true` sets an attribute without a value, `false` and `undefined` leave it out. */
export function h<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes))
    if (value !== undefined && value !== false) made.setAttribute(name, value === true ? "" : String(value));
  made.append(...children.filter((child) => child !== undefined && child !== false));
  return made;
}

/** Finds what the page itself put there. */
export function at<Found extends HTMLElement = HTMLElement>(id: string): Found {
  const found = document.getElementById(id);
  if (!found) throw new Error(`no element #${id}`);
  return found as Found;
}

/**
 * Markup made by the library, which escapes all text of a record, as a node. Parsed apart from the page, where nothing loads
 * or runs; the page's policy forbids scripts other than its own besides.
 */
export function fromMarkup(markup: string, type: "image/svg+xml" | "text/html"): Node[] {
  const parsed = new DOMParser().parseFromString(markup, type);
  if (type === "text/html")
    return Array.from(parsed.body.childNodes, (node) => document.importNode(node, true));
  const root = parsed.documentElement;
  return root.nodeName === "svg" ? [document.importNode(root, true)] : [];
}

/** Puts values where a sentence has `{name}`. */
export function fill(sentence: string, values: Readonly<Record<string, string | number>>): string {
  return sentence.replace(/\{(\w+)\}/g, (whole, name: string) =>
    Object.hasOwn(values, name) ? String(values[name]) : whole,
  );
}

// Numbers, units, formulas and Latin names, with the blanks between them.
const LEFT_TO_RIGHT =
  /[-−+]?[\dA-Za-z](?:[\dA-Za-zµΩ°%³²\u00a0/±–−+×=-]|[.,:](?=[\dA-Za-z])|\s(?=[\dA-Za-z±×−=/(])|\([\dA-Za-z .−+×-]+\))*(?<![–−=\s-])/g;

/** Text of an answer; in a language that runs from right to left, what does not is held together. */
export function runs(text: string, direction: "ltr" | "rtl"): (Node | string)[] {
  if (direction === "ltr") return [text];
  const found: (Node | string)[] = [];
  let end = 0;
  for (const match of text.matchAll(LEFT_TO_RIGHT)) {
    found.push(text.slice(end, match.index), h("bdi", { dir: "ltr" }, match[0]));
    end = match.index + match[0].length;
  }
  return [...found, text.slice(end)];
}
