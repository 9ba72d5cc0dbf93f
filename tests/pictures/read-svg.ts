import { expect } from "vitest";

/** An element as a strict reader of XML sees it. */
export interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Node[];
  text: string;
}

const ENTITY = /&(?:amp|lt|gt|quot|#39);/g;
const NAME = "[A-Za-z_][\\w:.-]*";
const PIECE = new RegExp(`<(/?)(${NAME})((?:\\s+${NAME}="[^"<]*")*)\\s*(/?)>|([^<]+)`, "gy");

/** Reads one element with everything in it; fails on anything a strict XML parser would not take. */
export function readSvg(markup: unknown): Node {
  if (typeof markup !== "string") throw new Error(`no picture but ${JSON.stringify(markup)}`);
  const bare = markup.replace(ENTITY, "");
  if (bare.includes("&")) throw new Error("an ampersand that begins no entity");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: exactly those that XML does not allow
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/u.test(markup))
    throw new Error("not a character");
  const root: Node = { name: "", attributes: {}, children: [], text: "" };
  const open = [root];
  const ids = new Set<string>();
  PIECE.lastIndex = 0;
  let end = 0;
  for (let found = PIECE.exec(markup); found; found = PIECE.exec(markup)) {
    end = PIECE.lastIndex;
    const [, closing, name, rest, single, text] = found;
    const here = open.at(-1)!;
    if (text !== undefined) here.text += plain(text);
    else if (closing) {
      if (here.name !== name) throw new Error(`</${name}> closes <${here.name}>`);
      open.pop();
    } else {
      const attributes: Record<string, string> = {};
      for (const [, key, value] of rest!.matchAll(new RegExp(`(${NAME})="([^"]*)"`, "g"))) {
        if (key! in attributes) throw new Error(`${key} twice`);
        attributes[key!] = plain(value!);
      }
      if (attributes.id !== undefined && ids.has(attributes.id)) throw new Error(`id ${attributes.id} twice`);
      ids.add(attributes.id ?? "");
      const node: Node = { name: name!, attributes, children: [], text: "" };
      here.children.push(node);
      if (!single) open.push(node);
    }
  }
  if (end !== markup.length) throw new Error(`not XML from "${markup.slice(end, end + 40)}" on`);
  if (open.length !== 1 || root.children.length !== 1) throw new Error("not one closed element");
  return root.children[0]!;
}

function plain(text: string): string {
  const meant: Record<string, string> = {
    "&amp;": "&",
    "&lt;": "<",
    "&gt;": ">",
    "&quot;": '"',
    "&#39;": "'",
  };
  return text.replace(ENTITY, (one) => meant[one]!);
}

export function all(node: Node, name: string): Node[] {
  return [...(node.name === name ? [node] : []), ...node.children.flatMap((child) => all(child, name))];
}

export function descriptionOf(root: Node): string {
  return all(root, "desc")[0]!.text;
}

/** What a reader sees, numbers of the scales apart. */
export function shownTexts(root: Node): string[] {
  return all(root, "text")
    .filter(({ attributes }) => !attributes.class!.split(" ").includes("tick"))
    .map(({ text }) => text);
}

/** What every picture has to keep: names for a screen reader, finite geometry, one meaning of every reference, numbers told. */
export function expectSoundPicture(markup: unknown): Node {
  const root = readSvg(markup);
  const { attributes } = root;
  expect(root.name).toBe("svg");
  expect(attributes.role).toBe("img");
  const labels = attributes["aria-labelledby"]!.split(" ");
  expect([all(root, "title")[0]!.attributes.id, all(root, "desc")[0]!.attributes.id]).toEqual(labels);
  expect(markup).not.toMatch(/NaN|Infinity|undefined|\{\w+\}/);
  const ids = new Set([...String(markup).matchAll(/ id="([^"]+)"/g)].map(([, id]) => id));
  for (const [, id] of String(markup).matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(id);
  for (const id of ids) expect(id!.startsWith(attributes.id!)).toBe(true);
  for (const path of all(root, "path")) expect(path.attributes.d).toMatch(/^[MLZAHVC\d.,\s-]+$/);
  const [width, height] = attributes.viewBox!.split(" ").slice(2).map(Number) as [number, number];
  for (const { attributes: at } of all(root, "text")) {
    expect(Number(at.x)).toBeGreaterThanOrEqual(0);
    expect(Number(at.x)).toBeLessThanOrEqual(width);
    expect(Number(at.y)).toBeGreaterThan(0);
    expect(Number(at.y)).toBeLessThanOrEqual(height);
  }
  expectNumbersTold(root);
  return root;
}

/** Every number in the picture is also in what is read aloud; scales are told by their ends. */
function expectNumbersTold(root: Node): void {
  const told = new Set(numbersIn(`${descriptionOf(root)} ${all(root, "title")[0]!.text}`));
  for (const text of shownTexts(root))
    for (const number of numbersIn(text)) expect(told, `${number} of "${text}"`).toContain(number);
}

function numbersIn(text: string): string[] {
  return text.match(/−?\d+(?:[.,]\d+)*/g) ?? [];
}
