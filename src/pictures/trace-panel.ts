import { line as lineThrough } from "d3-shape";
import type { Interval } from "../numeric/index.js";
import { type Plot, padded, type Scale, scaleOver, valueAxis } from "./axes.js";
import { decimalsOfSize } from "./numbers.js";
import { label, labelInside, line, stroke } from "./paint.js";
import type { Sheet } from "./sheet.js";
import type { Ink } from "./style.data.js";
import { element } from "./svg.js";
import { emptyBuckets, put, visit } from "./trace-buckets.js";
import type { ThinnedChannel } from "./trace-thinner.js";

/** A stretch of time without rows [s]. */
export interface Gap {
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

/** A step counts as a gap when it lasts this many times the mean of the others. Our choice; `gapSeconds` replaces it. */
const GAP_FACTOR = 20;
/** And when it takes at least this share of the picture. Our choice. */
const GAP_SHARE = 0.01;

/** The steps of a channel that are drawn as gaps. */
export function gapsOf(channel: ThinnedChannel, span: number, gapSeconds: number | undefined): Gap[] {
  const steps = channel.longestSteps;
  const long = (one: Gap): number => one.toSeconds - one.fromSeconds;
  if (gapSeconds !== undefined) return steps.filter((one) => long(one) > gapSeconds);
  const rest = Math.max(1, channel.sampled - 1 - steps.length);
  // With few rows the steps kept are all there are; then the median of them is what is usual.
  const usual =
    channel.sampled - 1 > 2 * steps.length
      ? (span - steps.reduce((sum, one) => sum + long(one), 0)) / rest
      : steps.length > 0
        ? long(steps[steps.length >> 1]!)
        : 0;
  return steps.filter((one) => long(one) > Math.max(GAP_FACTOR * usual, GAP_SHARE * span));
}

/** Values of a channel and where they lie. */
export interface Extremes {
  readonly least: number;
  readonly leastSeconds: number;
  readonly most: number;
  readonly mostSeconds: number;
}

export function extremesOf({ seconds, values }: ThinnedChannel): Extremes | undefined {
  if (values.length === 0) return undefined;
  let [low, high] = [0, 0];
  for (let i = 1; i < values.length; i++) {
    if (values[i]! < values[low]!) low = i;
    if (values[i]! > values[high]!) high = i;
  }
  return {
    least: values[low]!,
    leastSeconds: seconds[low]!,
    most: values[high]!,
    mostSeconds: seconds[high]!,
  };
}

/** What one panel shows. */
export interface Panel {
  readonly channel: ThinnedChannel;
  readonly extremes: Extremes;
  readonly gaps: readonly Gap[];
  readonly unit: "V" | "A";
  readonly ink: Ink;
  readonly axis?: Interval;
  readonly clip: string;
}

/** Decimals of a reading in a panel. */
export function panelDecimals({ unit, extremes }: Pick<Panel, "unit" | "extremes">): number {
  return unit === "V" ? 2 : decimalsOfSize(Math.max(Math.abs(extremes.least), Math.abs(extremes.most)));
}

/** Curve, scale and direct labels of voltage or current over time. */
export function tracePanel(sheet: Sheet, panel: Panel, time: Scale, origin: number, plot: Plot): string {
  const { channel, extremes, gaps, unit, ink, clip } = panel;
  const natural =
    unit === "V"
      ? padded({ lower: extremes.least, upper: extremes.most }, 0.2, 0.1)
      : padded({ lower: Math.min(0, extremes.least), upper: Math.max(0, extremes.most) }, 0.22, 0.01);
  const axis = panel.axis ?? natural;
  const scale = scaleOver(axis, plot.bottom, plot.top);
  let markup = valueAxis(sheet, scale, plot, 4);
  if (unit === "A" && axis.lower <= 0 && axis.upper >= 0)
    markup += line(sheet, [plot.left, scale(0), plot.right, scale(0)], "ink", 1);
  const x = (seconds: number): number => time(seconds - origin);
  for (const gap of gaps) {
    const [from, to] = [x(gap.fromSeconds), x(gap.toSeconds)];
    if (to - from < 2) continue;
    for (const edge of [from, to])
      markup += line(sheet, [edge, plot.top, edge, plot.bottom], "soft", 0.8, "2 3");
    const word = sheet.say("trace.gap");
    if (to - from > 60)
      markup += label(sheet, (from + to) / 2, (plot.top + plot.bottom) / 2, word, {
        anchor: "middle",
        ink: "soft",
        italic: true,
        rim: true,
      });
  }
  // A number that no axis of reasonable size reaches would leave the page: such values end just outside the plot.
  const far = plot.bottom - plot.top;
  const y = (value: number): number => Math.min(plot.bottom + far, Math.max(plot.top - far, scale(value)));
  markup += element("path", {
    d: tracePath(channel, gaps, x, y, plot),
    ...stroke(sheet, ink, 1.3),
    "stroke-linejoin": "round",
    "stroke-linecap": "round",
    "clip-path": clip,
  });
  return markup + extremeLabels(sheet, panel, axis, x, y, plot);
}

// At most four points per pixel column, broken where a gap lies between two of them.
function tracePath(
  { seconds, values }: ThinnedChannel,
  gaps: readonly Gap[],
  x: (seconds: number) => number,
  y: (value: number) => number,
  plot: Plot,
): string {
  const columns = Math.ceil(plot.right - plot.left) + 1;
  const buckets = emptyBuckets(columns);
  for (let i = 0; i < values.length; i++) {
    const column = Math.floor(x(seconds[i]!) - plot.left);
    if (column >= 0 && column < columns) put(buckets, column, seconds[i]!, values[i]!);
  }
  const starts = gaps.map((gap) => gap.toSeconds).sort((a, b) => a - b);
  const draw = lineThrough<readonly [number, number]>().digits(1);
  let next = 0;
  let piece: [number, number][] = [];
  let path = "";
  const flush = (): void => {
    if (piece.length > 0) path += draw(piece) ?? "";
    piece = [];
  };
  for (let column = 0; column < columns; column++)
    visit(buckets, column, (time, value) => {
      if (next < starts.length && time >= starts[next]!) {
        flush();
        while (next < starts.length && time >= starts[next]!) next++;
      }
      piece.push([x(time), y(value)]);
    });
  flush();
  return path;
}

function extremeLabels(
  sheet: Sheet,
  panel: Panel,
  axis: Interval,
  x: (seconds: number) => number,
  y: (value: number) => number,
  plot: Plot,
): string {
  const { extremes, unit } = panel;
  const decimals = panelDecimals(panel);
  const edges = { left: plot.left + 2, right: plot.right - 2 };
  const mark = (seconds: number, value: number, below: boolean): string => {
    if (value < axis.lower || value > axis.upper) return "";
    const [px, py] = [x(seconds), y(value)];
    return (
      element("circle", { cx: px, cy: py, r: 3, ...stroke(sheet, "ink", 1.2) }) +
      labelInside(sheet, px, below ? py + 18 : py - 8, sheet.quantity(value, decimals, unit), edges, {
        rim: true,
        size: 12,
      })
    );
  };
  const { least, leastSeconds, most, mostSeconds } = extremes;
  const both = mark(mostSeconds, most, false);
  return least === most ? both : both + mark(leastSeconds, least, true);
}
