import { tickStep } from "d3-array";
import { type ScaleLinear, scaleLinear } from "d3-scale";
import type { Interval } from "../numeric/index.js";
import { decimalsOfStep } from "./numbers.js";
import { label, line } from "./paint.js";
import type { Sheet } from "./sheet.js";

export type Scale = ScaleLinear<number, number>;

/** A box in which values are drawn [px]. */
export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Font size of the numbers at an axis [px]. */
export const TICK = 12;

export function scaleOver({ lower, upper }: Interval, from: number, to: number): Scale {
  return scaleLinear().domain([lower, upper]).range([from, to]);
}

/** An interval with room on both sides, never empty. */
export function padded({ lower, upper }: Interval, share: number, least: number): Interval {
  const room = Math.max((upper - lower) * share, (least - (upper - lower)) / 2);
  return { lower: lower - room, upper: upper + room };
}

/** Numbers and grid lines of a vertical axis on the left. */
export function valueAxis(sheet: Sheet, scale: Scale, plot: Plot, count: number): string {
  const [lower, upper] = scale.domain() as [number, number];
  const decimals = decimalsOfStep(tickStep(lower, upper, count));
  let markup = "";
  for (const tick of scale.ticks(count)) {
    const y = scale(tick);
    markup += line(sheet, [plot.left, y, plot.right, y], "rule", 0.8);
    markup += label(sheet, plot.left - 6, y + 4, sheet.number(tick, decimals), {
      size: TICK,
      anchor: "end",
      ink: "soft",
      role: "tick",
    });
  }
  return markup;
}

/** A horizontal axis with its marks at given places, its name below; tells where the next thing may stand. */
export function bottomAxis(
  sheet: Sheet,
  scale: Scale,
  plot: Plot,
  ticks: readonly { readonly at: number; readonly text: string }[],
  name: string,
): { readonly markup: string; readonly bottom: number } {
  let markup = line(sheet, [plot.left, plot.bottom, plot.right, plot.bottom], "ink", 1);
  for (const { at, text } of ticks) {
    const x = scale(at);
    markup += line(sheet, [x, plot.bottom, x, plot.bottom + 5], "ink", 1);
    markup += label(sheet, x, plot.bottom + 18, text, {
      size: TICK,
      anchor: "middle",
      ink: "soft",
      role: "tick",
    });
  }
  markup += label(sheet, plot.right, plot.bottom + 35, name, { anchor: "end", size: TICK });
  return { markup, bottom: plot.bottom + 42 };
}

/** Round numbers along an axis with their text. */
export function numberTicks(sheet: Sheet, scale: Scale, count: number): { at: number; text: string }[] {
  const [lower, upper] = scale.domain() as [number, number];
  const decimals = decimalsOfStep(tickStep(lower, upper, count));
  return scale.ticks(count).map((at) => ({ at, text: sheet.number(at, decimals) }));
}
