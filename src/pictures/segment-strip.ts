import type { LogSegment, SegmentKind } from "../logs/segments.js";
import type { Scale } from "./axes.js";
import { type Hatch, type Hatches, hatchedBox } from "./hatch.js";
import { textWidth } from "./measure.js";
import { label, line } from "./paint.js";
import type { Sheet } from "./sheet.js";

/** Order of the legend, and the hatch of each kind. */
export const kindHatches: Readonly<Record<SegmentKind, Hatch>> = {
  rest: "blank",
  discharge: "falling",
  "charge-constant-current": "rising",
  "charge-constant-voltage": "level",
  crank: "solid",
  "load-step": "upright",
  "engine-running": "dots",
  unclassified: "crosses",
};

/** Height of the strip, with room above it for strokes and their letters [px]. */
export const STRIP = { above: 18, height: 20 } as const;

/** Narrowest stretch that is drawn to scale [px]. */
const NARROWEST = 3;

interface Run {
  readonly kind: SegmentKind;
  readonly from: number;
  to: number;
}

/** The strip that tells what went on: to scale where there is room, a stroke above it for what is too short. */
export function segmentStrip(
  sheet: Sheet,
  hatches: Hatches,
  segments: readonly LogSegment[],
  scale: Scale,
  top: number,
): { readonly markup: string; readonly edges: readonly number[]; readonly strokes: number } {
  const [left, right] = scale.range() as [number, number];
  const runs: Run[] = [];
  const short = new Map<string, { kind: SegmentKind; x: number }>();
  for (const { kind, fromSeconds, toSeconds } of segments) {
    const from = Math.max(left, scale(fromSeconds));
    const to = Math.min(right, scale(toSeconds));
    if (!(to >= from)) continue;
    const before = runs.at(-1);
    // What touches and is of one kind is one stretch to the eye; this also bounds the number of boxes.
    if (before !== undefined && before.kind === kind && from - before.to < 1)
      before.to = Math.max(before.to, to);
    else if (to - from >= NARROWEST) runs.push({ kind, from, to });
    else {
      const x = Math.round((from + to) / 2);
      short.set(`${kind} ${x}`, { kind, x });
    }
  }
  let markup = "";
  const y = top + STRIP.above;
  for (const { kind, from, to } of runs) {
    const box = { x: from, y, width: to - from, height: STRIP.height };
    markup += hatchedBox(sheet, hatches, box, kindHatches[kind]);
    const letter = sheet.say(`letter.${kind}`);
    if (to - from > textWidth(letter, 12) + 6)
      markup += letterOnPaper(sheet, (from + to) / 2, y + 14.5, letter);
  }
  // Where letters would touch, an engine start keeps its own: it is what people look for.
  const lettered: { readonly from: number; readonly to: number }[] = [];
  const rank = (kind: SegmentKind): number => (kind === "crank" ? 0 : 1);
  for (const { kind, x } of [...short.values()].sort((a, b) => rank(a.kind) - rank(b.kind) || a.x - b.x)) {
    markup += line(sheet, [x, y - 5, x, y + STRIP.height], "ink", kind === "crank" ? 2 : 1);
    const letter = sheet.say(`letter.${kind}`);
    const half = textWidth(letter, 11) / 2 + 1;
    if (lettered.some(({ from, to }) => x - half < to && x + half > from)) continue;
    lettered.push({ from: x - half, to: x + half });
    markup += label(sheet, x, y - 7, letter, { size: 11, anchor: "middle", bold: true });
  }
  const edges = new Set(runs.flatMap(({ from, to }) => [Math.round(from), Math.round(to)]));
  return { markup, edges: [...edges].sort((a, b) => a - b), strokes: short.size };
}

/** A letter on a patch of paper, so that no hatch runs through it. */
export function letterOnPaper(sheet: Sheet, x: number, y: number, letter: string): string {
  return label(sheet, x, y, letter, { size: 12, anchor: "middle", bold: true, rim: true });
}
