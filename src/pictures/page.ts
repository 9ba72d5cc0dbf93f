import { type Hatches, hatchesFor } from "./hatch.js";
import { fill, paragraph } from "./paint.js";
import type { Sheet } from "./sheet.js";
import { type Ink, type Palette, palettes, systemColours } from "./style.data.js";
import { element, escapeXml } from "./svg.js";

/** What a picture consists of. */
export interface Page {
  /** Names the picture; part of the default id. */
  readonly kind: string;
  readonly title: string;
  /** Says in words everything the picture shows, numbers included. */
  readonly description: string;
  /** Stands under the title. */
  readonly subtitles?: readonly string[];
  /** Draws from a height on and tells how far it came. */
  readonly draw: (top: number, hatches: Hatches) => { readonly markup: string; readonly bottom: number };
}

/** Space on the left and right of everything [px]. */
export const MARGIN = 14;

/** The finished picture: one `svg` element that stands alone or inside HTML. */
export function page(sheet: Sheet, { kind, title, description, subtitles = [], draw }: Page): string {
  const { width } = sheet;
  const id =
    sheet.id ?? `crankworthy-${kind}-${checksum(`${width} ${sheet.scheme} ${title} ${description}`)}`;
  const hatches = hatchesFor(sheet, id);
  const column = { x: MARGIN, width: width - 2 * MARGIN };
  const head = paragraph(sheet, { ...column, y: 24 }, title, { size: 16, bold: true });
  let y = head.nextY - 2;
  let markup = head.markup;
  for (const subtitle of subtitles) {
    const next = paragraph(sheet, { ...column, y }, subtitle, { ink: "soft" });
    markup += next.markup;
    y = next.nextY;
  }
  const drawn = draw(y, hatches);
  const height = Math.ceil(drawn.bottom + MARGIN);
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      id,
      lang: sheet.lang,
      // The layout stays whatever way the page runs; texts say their own direction.
      direction: "ltr",
      role: "img",
      "aria-labelledby": `${id}-title ${id}-desc`,
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      "font-family": "system-ui, 'Helvetica Neue', Arial, sans-serif",
    },
    element("title", { id: `${id}-title` }, escapeXml(title)),
    element("desc", { id: `${id}-desc` }, escapeXml(description)),
    element("style", {}, style(id, sheet.scheme)),
    hatches.definitions(),
    element("rect", { width, height, ...fill(sheet, "paper") }),
    markup,
    drawn.markup,
  );
}

function style(id: string, scheme: Sheet["scheme"]): string {
  const variables = (palette: Palette, open: boolean): string =>
    `#${id}{${Object.entries(palette)
      .map(([ink, colour]) => `--${ink}:${open ? `var(--crankworthy-${ink},${colour})` : colour}`)
      .join(";")}}`;
  const inks = Object.keys(palettes.light) as Ink[];
  let css = variables(scheme === "dark" ? palettes.dark : palettes.light, true);
  if (scheme === "auto") {
    css += `@media (prefers-color-scheme:dark){${variables(palettes.dark, true)}}`;
    css += `@media print{${variables(palettes.light, false)}}`;
  }
  css += `@media (forced-colors:active){${variables(systemColours, false)}}`;
  // A rim is part of its letter, so it follows the paper.
  for (const ink of inks) css += `#${id} .s-${ink}{stroke:var(--${ink})}#${id} .f-${ink}{fill:var(--${ink})}`;
  return css;
}

/** FNV-1a, 32 bits: tells two pictures on one page apart, nothing more. */
function checksum(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, "0");
}
