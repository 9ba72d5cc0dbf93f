import { clean } from "./text.js";

/** Text as HTML, between tags and inside quoted attributes; cleaned of control and format characters first. */
export function escapeHtml(text: string): string {
  return entities(clean(text));
}

// A number with its unit, where it stands alone: not the end of `W-17`.
const QUANTITY =
  /(?<![\p{L}\p{N}_-])[-−+]?\d[\d.,–:/-]*(?<=\d)(?:\u00a0[\p{Script=Latin}\p{Script=Greek}%°²³/]+)?/gu;

/**
 * Text of a sentence as HTML. In a language that runs from right to left every quantity and the word given are set apart, so
 * that sign, number and unit keep their order, and the word does not reorder its neighbours.
 */
export function sentenceHtml(text: string, direction: "ltr" | "rtl", word = ""): string {
  if (direction === "ltr") return escapeHtml(text);
  // What the record says is clean already; the mark that keeps an order stays.
  const safe = text.replace(/(?![\u200e\s])[\p{Cf}\p{Cs}\p{Co}\p{Cc}]/gu, "").trim();
  const apart = clean(word);
  const at = apart === "" ? -1 : safe.indexOf(apart);
  if (at >= 0)
    return `${quantities(safe.slice(0, at))}<bdi>${entities(apart)}</bdi>${quantities(safe.slice(at + apart.length))}`;
  return quantities(safe);
}

function quantities(text: string): string {
  let html = "";
  let end = 0;
  for (const match of text.matchAll(QUANTITY)) {
    html += `${entities(text.slice(end, match.index))}<bdi dir="ltr">${entities(match[0])}</bdi>`;
    end = match.index + match[0].length;
  }
  return html + entities(text.slice(end));
}

function entities(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}
