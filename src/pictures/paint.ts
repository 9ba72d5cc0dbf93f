import { textWidth, wrapText } from "./measure.js";
import type { Sheet } from "./sheet.js";
import type { Ink } from "./style.data.js";
import { type Attributes, element, escapeXml } from "./svg.js";

// Class and plain attribute say the same: the style sheet follows the reader's scheme, the attribute serves whatever reads none.

/** Font size of running text [px]. */
export const TEXT = 13;

export function stroke(sheet: Sheet, ink: Ink, width = 1, dash?: string): Attributes {
  return {
    class: `s-${ink}`,
    fill: "none",
    stroke: sheet.palette[ink],
    "stroke-width": width,
    "stroke-dasharray": dash,
  };
}

export function fill(sheet: Sheet, ink: Ink): Attributes {
  return { class: `f-${ink}`, fill: sheet.palette[ink] };
}

/** How a label stands. */
export interface LabelStyle {
  readonly ink?: Ink;
  readonly size?: number;
  readonly anchor?: "start" | "middle" | "end";
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** A rim in the colour of the paper, for text that crosses lines. */
  readonly rim?: boolean;
  /** `tick` for numbers of a scale: the description names only the ends of an axis. */
  readonly role?: "tick";
}

const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;
const TURNED = { start: "end", middle: "middle", end: "start" } as const;

/** A text at a place. `anchor` means the left or right end on paper, whatever way the text runs. */
export function label(sheet: Sheet, x: number, y: number, text: string, style: LabelStyle = {}): string {
  const { ink = "ink", size = TEXT, anchor = "start", bold, italic, rim, role } = style;
  const turned = sheet.rightToLeft && RIGHT_TO_LEFT.test(text);
  const end = turned ? TURNED[anchor] : anchor;
  const rimmed = rim && {
    stroke: sheet.palette.paper,
    "stroke-width": 4,
    "stroke-linejoin": "round",
    "paint-order": "stroke",
  };
  return element(
    "text",
    {
      x,
      y,
      "font-size": size,
      direction: turned ? "rtl" : undefined,
      "text-anchor": end === "start" ? undefined : end,
      "font-weight": bold ? "bold" : undefined,
      "font-style": italic ? "italic" : undefined,
      ...fill(sheet, ink),
      class: `f-${ink}${rim ? " s-paper" : ""}${role ? ` ${role}` : ""}`,
      ...rimmed,
    },
    escapeXml(text),
  );
}

/** Lines of text from a first base line on; tells where the next one would stand. */
export function paragraph(
  sheet: Sheet,
  at: { readonly x: number; readonly y: number; readonly width: number },
  text: string,
  style: LabelStyle = {},
): { readonly markup: string; readonly nextY: number } {
  const size = style.size ?? TEXT;
  let { y } = at;
  let markup = "";
  const place = sheet.rightToLeft ? ({ x: at.x + at.width, anchor: "end" } as const) : { x: at.x };
  for (const line of wrapText(text, at.width, size * (style.bold ? 1.08 : 1))) {
    markup += label(sheet, place.x, y, line, { ...style, ...place });
    y += size * 1.35;
  }
  return { markup, nextY: y };
}

export function line(
  sheet: Sheet,
  [x1, y1, x2, y2]: readonly [number, number, number, number],
  ink: Ink,
  width = 1,
  dash?: string,
): string {
  return element("line", { x1, y1, x2, y2, ...stroke(sheet, ink, width, dash) });
}

/** A label that stays between two edges, wherever its place lies. */
export function labelInside(
  sheet: Sheet,
  x: number,
  y: number,
  text: string,
  edges: { readonly left: number; readonly right: number },
  style: LabelStyle = {},
): string {
  const half = textWidth(text, style.size ?? TEXT) / 2;
  if (x - half < edges.left) return label(sheet, edges.left, y, text, { ...style, anchor: "start" });
  if (x + half > edges.right) return label(sheet, edges.right, y, text, { ...style, anchor: "end" });
  return label(sheet, x, y, text, { ...style, anchor: "middle" });
}
