import type { LogChunk, LogSeries } from "../logs/index.js";
import type { LogSegment } from "../logs/segments.js";
import { type Interval, type Refusal, refuse, requireFinite, wrongArgument } from "../numeric/index.js";
import { bottomAxis, type Plot, scaleOver } from "./axes.js";
import { type Hatches, hatchedBox } from "./hatch.js";
import { cutText } from "./measure.js";
import { MARGIN, page } from "./page.js";
import { label, line, paragraph } from "./paint.js";
import { kindHatches, letterOnPaper, STRIP, segmentStrip } from "./segment-strip.js";
import { type PictureOptions, type Sheet, sheetFor } from "./sheet.js";
import { duration, timeTicks, timeUnit } from "./time-axis.js";
import { extremesOf, gapsOf, tracePanel } from "./trace-panel.js";
import { createTraceThinner, type ThinnedChannel, type ThinnedTrace } from "./trace-thinner.js";
import {
  type KindSum,
  kindsOf,
  kindText,
  notesOf,
  rangesTold,
  segmentsTold,
  type ToldPanel,
} from "./trace-words.js";

/** What {@link logTracePicture} shows. */
export interface LogTrace {
  /** A thinned log, or one in memory: a series, or chunks. */
  readonly trace: ThinnedTrace | LogSeries | readonly LogChunk[];
  /** What the battery did when; in order of time. */
  readonly segments?: readonly LogSegment[];
  /** Name of the log or battery, shown under the title. */
  readonly name?: string;
}

/** Settings of {@link logTracePicture}. */
export interface LogTraceOptions extends PictureOptions {
  /**
   * A longer time between two values is drawn as a gap [s] (> 0, `Infinity`: never). Default: more than 20 times the mean
   * of the other steps, and at least a hundredth of the picture (our choice). Loggers that write on change leave long
   * steps without a gap: give a number for them. Only the 24 longest steps are looked at.
   */
  readonly gapSeconds?: number;
  /** Ends of the axes, where single wild values would flatten everything else; default: all values fit. */
  readonly voltsAxis?: Interval;
  readonly amperesAxis?: Interval;
}

/** More edges than that would draw a curtain over the curves. Our choice. */
const EDGES_DRAWN = 40;
/** The longest name shown [characters]. */
const NAME_SHOWN = 80;

/**
 * A log as a picture: voltage and current over one axis of time, gaps left open, and a strip that tells what went on.
 *
 * Scope: any number of rows, at most four points per pixel column, extremes kept and labelled. Segments are told apart by
 * hatch and letter, with a legend in words.
 *
 * @param input the log, and its segments where there are any
 * @param options see {@link LogTraceOptions}
 * @returns one `svg` element as text
 *
 * Refuses `no-rows` when no row has a usable time and a voltage or current.
 * @throws RangeError for an option out of range, or an axis whose lower end is not below its upper end
 * @example
 * ```ts
 * import { logTracePicture } from "crankworthy/pictures";
 * const trace = {
 *   seconds: Float64Array.of(0, 60, 120, 180),
 *   volts: Float64Array.of(12.7, 12.6, 11.9, 12.4),
 *   amperes: Float64Array.of(0, 0, -25, 0),
 * };
 * const svg = logTracePicture({ trace });
 * typeof svg === "string" && svg.includes("Current between −25.0"); // => true
 * ```
 */
export function logTracePicture(
  { trace, segments = [], name }: LogTrace,
  options: LogTraceOptions = {},
): string | Refusal<"no-rows"> {
  const { gapSeconds, voltsAxis, amperesAxis } = options;
  const sheet = sheetFor(options);
  if (gapSeconds !== undefined && !(gapSeconds > 0)) wrongArgument("gapSeconds", gapSeconds, "more than 0 s");
  checkAxis("voltsAxis", voltsAxis);
  checkAxis("amperesAxis", amperesAxis);
  const thin = thinTrace(trace, sheet.width);
  const { fromSeconds, toSeconds, volts, amperes } = thin;
  if (!(fromSeconds <= toSeconds) || volts.values.length + amperes.values.length === 0)
    return refuse(
      "no-rows",
      "No row has a time and a voltage or current.",
      "Rows with a time and a reading.",
    );
  const span = toSeconds > fromSeconds ? toSeconds - fromSeconds : 1;

  const panels = (["volts", "amperes"] as const).map(
    (key): ToldPanel & { readonly channel: ThinnedChannel } => {
      const channel = thin[key];
      const axis = key === "volts" ? voltsAxis : amperesAxis;
      const extremes = extremesOf(channel);
      return {
        unit: key === "volts" ? "V" : "A",
        name: sheet.say(key === "volts" ? "trace.voltage" : "trace.current"),
        channel,
        gaps: gapsOf(channel, span, gapSeconds),
        ...(extremes && { extremes }),
        ...(axis && { axis }),
      };
    },
  );
  const kinds = kindsOf(segments);
  const notes = notesOf(sheet, thin, panels);
  const missing = panels
    .filter(({ extremes }) => !extremes)
    .map(({ unit }) => sheet.say(unit === "V" ? "trace.voltage-missing" : "trace.current-missing"));
  const rows = sheet.say("trace.rows", {
    rows: sheet.number(thin.rows, 0),
    time: duration(sheet, toSeconds - fromSeconds),
  });
  const named = name === undefined ? undefined : cutText(name, NAME_SHOWN);

  return page(sheet, {
    kind: "trace",
    title: sheet.say("trace.title"),
    subtitles: named === undefined ? [rows] : [named, rows],
    description: [
      ...(named === undefined ? [] : [`${named}.`]),
      `${rows}.`,
      ...rangesTold(sheet, panels),
      ...missing,
      ...notes,
      ...segmentsTold(sheet, segments, kinds, fromSeconds, span),
    ].join(" "),
    draw,
  });

  function draw(top: number, hatches: Hatches): { markup: string; bottom: number } {
    const left = MARGIN + 40;
    const right = sheet.width - MARGIN;
    const time = scaleOver({ lower: 0, upper: span }, left, right);
    const heights = sheet.narrow ? 130 : 165;
    let y = top + 4;
    let markup = "";
    let curves = "";
    let plot: Plot = { left, right, top: y, bottom: y };
    const plots: Plot[] = [];
    for (const panel of panels) {
      const { unit, channel, extremes, gaps, axis } = panel;
      if (!extremes) {
        const word = sheet.say(unit === "V" ? "trace.voltage-missing" : "trace.current-missing");
        markup += label(sheet, MARGIN, y + 14, word, { italic: true, ink: "soft" });
        y += 26;
        continue;
      }
      markup += label(sheet, MARGIN, y + 12, panel.name, { bold: true });
      plot = { left, right, top: y + 20, bottom: y + 20 + heights };
      plots.push(plot);
      const clip = hatches.clip(`clip-${unit}`, plot);
      const ink = unit === "V" ? "first" : "second";
      const drawn = { channel, extremes, gaps, unit, ink, clip, ...(axis && { axis }) } as const;
      curves += tracePanel(sheet, drawn, time, fromSeconds, plot);
      if (unit === "A") curves += signs(sheet, axis, extremes, plot);
      y = plot.bottom + 12;
    }
    if (segments.length > 0) {
      const offset = segments.map((one) => ({
        ...one,
        fromSeconds: one.fromSeconds - fromSeconds,
        toSeconds: one.toSeconds - fromSeconds,
      }));
      const strip = segmentStrip(sheet, hatches, offset, time, y - 6);
      y += STRIP.above + STRIP.height - 6;
      markup += strip.markup;
      if (strip.edges.length <= EDGES_DRAWN)
        for (const x of strip.edges)
          for (const one of plots) markup += line(sheet, [x, one.top, x, one.bottom], "soft", 0.7, "1 3");
      if (strip.strokes > 0) notes.push(sheet.say("trace.narrow"));
    } else y = plot.bottom;
    markup += curves;
    const most = sheet.narrow ? 6 : 12;
    const axis = bottomAxis(
      sheet,
      time,
      { left, right, top, bottom: y },
      timeTicks(sheet, span, most),
      sheet.say("trace.time", { unit: timeUnit(span).symbol }),
    );
    markup += axis.markup;
    y = axis.bottom + 6;
    const legend = legendOf(sheet, hatches, kinds, y);
    markup += legend.markup;
    y = legend.bottom;
    for (const note of notes) {
      const written = paragraph(sheet, { x: MARGIN, y: y + 12, width: sheet.width - 2 * MARGIN }, note, {
        size: 12,
        ink: "soft",
      });
      markup += written.markup;
      y = written.nextY - 10;
    }
    return { markup, bottom: y };
  }
}

function checkAxis(name: string, axis: Interval | undefined): void {
  if (!axis) return;
  requireFinite(`${name}.lower`, axis.lower, -1e6, 1e6);
  requireFinite(`${name}.upper`, axis.upper, -1e6, 1e6);
  if (!(axis.lower < axis.upper)) wrongArgument(name, `${axis.lower} to ${axis.upper}`, "lower < upper");
}

function thinTrace(trace: LogTrace["trace"], width: number): ThinnedTrace {
  if ("fromSeconds" in trace) return trace;
  const thinner = createTraceThinner(Math.ceil(width));
  if (Array.isArray(trace)) for (const chunk of trace as readonly LogChunk[]) thinner.push(chunk);
  else {
    const { seconds, volts, amperes } = trace as LogSeries;
    thinner.push({ firstRow: 1, rows: seconds.length, seconds, volts, amperes });
  }
  return thinner.finish();
}

function legendOf(
  sheet: Sheet,
  hatches: Hatches,
  kinds: readonly KindSum[],
  top: number,
): { readonly markup: string; readonly bottom: number } {
  const columns = sheet.narrow ? 1 : 2;
  const width = (sheet.width - 2 * MARGIN) / columns;
  let markup = "";
  kinds.forEach((one, i) => {
    const x = MARGIN + width * (i % columns);
    const y = top + 24 * Math.floor(i / columns);
    markup += hatchedBox(sheet, hatches, { x, y, width: 30, height: 17 }, kindHatches[one.kind]);
    markup += letterOnPaper(sheet, x + 15, y + 13, sheet.say(`letter.${one.kind}`));
    markup += label(sheet, x + 38, y + 13, kindText(sheet, one));
  });
  return { markup, bottom: top + 24 * Math.ceil(kinds.length / columns) };
}

// Which way the current flows, in words at the zero line's sides.
function signs(
  sheet: Sheet,
  axis: Interval | undefined,
  extremes: { readonly least: number; readonly most: number },
  plot: Plot,
): string {
  const style = { size: 12, anchor: "end", ink: "soft", italic: true } as const;
  const charging = (axis?.upper ?? extremes.most) > 0;
  const discharging = (axis?.lower ?? extremes.least) < 0;
  let markup = "";
  if (charging) markup += label(sheet, plot.right, plot.top - 7, `↑ ${sheet.say("trace.charging")}`, style);
  if (discharging) {
    const x = charging ? plot.right - 90 : plot.right;
    markup += label(sheet, x, plot.top - 7, `↓ ${sheet.say("trace.discharging")}`, style);
  }
  return markup;
}
