import type { Interval } from "../numeric/index.js";
import { line, stroke } from "./paint.js";
import type { Sheet } from "./sheet.js";
import { element } from "./svg.js";

/** A point with its interval along a line; an end that lies beyond the edges, or is not known, is an arrow. */
export function whisker(
  sheet: Sheet,
  y: number,
  at: number,
  { lower, upper }: Partial<Interval>,
  edges: { readonly left: number; readonly right: number },
): string {
  const from = lower === undefined || lower < edges.left ? undefined : lower;
  const to = upper === undefined || upper > edges.right ? undefined : upper;
  const left = from ?? edges.left;
  const right = to ?? edges.right;
  let markup = line(sheet, [left, y, right, y], "ink", 1.4);
  markup += end(sheet, left, y, from === undefined ? 1 : 0) + end(sheet, right, y, to === undefined ? -1 : 0);
  if (at >= edges.left && at <= edges.right)
    markup += element("circle", { cx: at, cy: y, r: 4, class: "f-ink", fill: sheet.palette.ink });
  return markup;
}

// A bar across, or the head of an arrow whose wings lie on the side of `back`.
function end(sheet: Sheet, x: number, y: number, back: -1 | 0 | 1): string {
  if (back === 0) return line(sheet, [x, y - 5, x, y + 5], "ink", 1.4);
  const d = `M${x + 6 * back},${y - 4}L${x},${y}L${x + 6 * back},${y + 4}`;
  return element("path", { d: rounded(d), ...stroke(sheet, "ink", 1.4) });
}

/** Numbers of a path with one decimal. */
export function rounded(path: string): string {
  return path.replace(/-?\d+(\.\d+)?(e-?\d+)?/g, (number) => Number(number).toFixed(1).replace(/\.0$/, ""));
}
