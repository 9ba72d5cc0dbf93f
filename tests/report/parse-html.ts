import { createRequire } from "node:module";

/** What parse5 makes of a page, as far as the tests look. */
export interface HtmlNode {
  readonly nodeName: string;
  readonly value?: string;
  readonly attrs?: readonly { readonly name: string; readonly value: string }[];
  readonly childNodes?: readonly HtmlNode[];
}

// In the tree of the development dependencies, without types.
const parse5 = createRequire(import.meta.url)("parse5") as {
  parse(html: string, options?: object): HtmlNode;
  parseFragment(html: string): HtmlNode;
};

/** The tree of a document and the errors that a browser would have had to mend. */
export function parsePage(html: string): { readonly root: HtmlNode; readonly errors: readonly string[] } {
  const errors: string[] = [];
  const onParseError = ({ code }: { readonly code: string }): number => errors.push(code);
  return { root: parse5.parse(html, { onParseError }), errors };
}

export const parseFragment = (html: string): HtmlNode => parse5.parseFragment(html);

/** Every element below a node, itself included. */
export function elements(node: HtmlNode): HtmlNode[] {
  return [...(node.attrs ? [node] : []), ...(node.childNodes ?? []).flatMap(elements)];
}

export const attribute = (node: HtmlNode, name: string): string | undefined =>
  node.attrs?.find((one) => one.name === name)?.value;

/** What a reader sees of a node. */
export function textOf(node: HtmlNode): string {
  if (node.nodeName === "style") return "";
  return node.value ?? (node.childNodes ?? []).map(textOf).join("");
}
