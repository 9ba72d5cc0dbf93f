import { wrongArgument } from "../numeric/index.js";

/** Attributes of an element; numbers are written with one decimal, `undefined` is left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Text made safe for XML, between tags and inside quoted attributes; characters XML does not allow are left out. */
export function escapeXml(text: string): string {
  return (
    text
      // Lone surrogates, control characters, the two that are none, and marks that turn the direction of what follows.
      .replace(/[\p{Cs}\p{Cc}\ufffe\uffff\u202a-\u202e\u2066-\u2069]/gu, " ")
      .replaceAll("&", "&amp;")
      .replaceAll("<", "&lt;")
      .replaceAll(">", "&gt;")
      .replaceAll('"', "&quot;")
      .replaceAll("'", "&#39;")
  );
}

/** A length or place in the picture, a tenth of a pixel fine: the same text on every machine. */
export function coordinate(value: number): string {
  // 1e7: no page is that large, and toFixed never writes an exponent below it.
  if (!(Math.abs(value) <= 1e7)) wrongArgument("coordinate", value, "a place on the page");
  return value.toFixed(1).replace(/\.0$/, "").replace(/^-0$/, "0");
}

/** One element; children are finished markup, see {@link escapeXml} for text. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  let head = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value === undefined) continue;
    head += ` ${key}="${typeof value === "number" ? coordinate(value) : escapeXml(value)}"`;
  }
  return children.length === 0 ? `${head}/>` : `${head}>${children.join("")}</${name}>`;
}
