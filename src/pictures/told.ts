import type { Interval } from "../numeric/index.js";
import { type Hatch, type Hatches, hatchedBox } from "./hatch.js";
import { MARGIN } from "./page.js";
import { paragraph } from "./paint.js";
import type { Sheet } from "./sheet.js";
import type { Ink } from "./style.data.js";

/** A sentence under a picture, with a sample of the hatch it speaks of. */
export interface Told {
  readonly text: string;
  readonly hatch?: Hatch;
  readonly hatchInk?: Ink;
  readonly bold?: boolean;
  readonly soft?: boolean;
}

/** Width of a sample of a hatch with the space behind it [px]. */
const SAMPLE = 38;

/** Sentences one below the other; tells where the last one ends. */
export function tell(
  sheet: Sheet,
  hatches: Hatches,
  top: number,
  sentences: readonly Told[],
): { readonly markup: string; readonly bottom: number } {
  const indent = sentences.some(({ hatch }) => hatch) ? SAMPLE : 0;
  const width = sheet.width - 2 * MARGIN - indent;
  let markup = "";
  let y = top;
  for (const { text, hatch, hatchInk, bold = false, soft } of sentences) {
    // Right-to-left text begins on the right, and so does its sample.
    const x = sheet.rightToLeft ? sheet.width - MARGIN - 30 : MARGIN;
    if (hatch) markup += hatchedBox(sheet, hatches, { x, y: y + 2, width: 30, height: 15 }, hatch, hatchInk);
    const at = { x: sheet.rightToLeft ? MARGIN : MARGIN + indent, y: y + 14, width };
    const written = paragraph(sheet, at, text, { bold, ink: soft ? "soft" : "ink" });
    markup += written.markup;
    y = written.nextY - 10;
  }
  return { markup, bottom: y };
}

/** An interval in words; an end outside the possible is not named. */
export function intervalText(
  sheet: Sheet,
  { lower, upper }: Partial<Interval>,
  decimals: number,
  unit: string,
): string {
  const ends = {
    lower: lower === undefined ? "" : sheet.quantity(lower, decimals, unit),
    upper: upper === undefined ? "" : sheet.quantity(upper, decimals, unit),
  };
  if (lower === undefined) return sheet.say("interval.most", { upper: ends.upper });
  return upper === undefined ? sheet.say("interval.least", ends) : sheet.say("interval.two", ends);
}
