import type { LogSegment, SegmentKind } from "../logs/segments.js";
import type { Interval } from "../numeric/index.js";
import { kindHatches } from "./segment-strip.js";
import type { Sheet } from "./sheet.js";
import { duration, moment } from "./time-axis.js";
import { type Extremes, type Gap, panelDecimals } from "./trace-panel.js";
import type { ThinnedTrace } from "./trace-thinner.js";

/** Segments told one by one in the description; after them only sums. Our choice. */
const SEGMENTS_TOLD = 12;

/** One quantity of a log in words; without `extremes` it was not recorded. */
export interface ToldPanel {
  readonly unit: "V" | "A";
  readonly name: string;
  readonly axis?: Interval;
  readonly extremes?: Extremes;
  readonly gaps: readonly Gap[];
}

/** How often and how long one thing went on. */
export interface KindSum {
  readonly kind: SegmentKind;
  readonly count: number;
  readonly seconds: number;
}

/** Sums by kind, in the order of the legend. */
export function kindsOf(segments: readonly LogSegment[]): KindSum[] {
  const sums = new Map<SegmentKind, KindSum>();
  for (const { kind, fromSeconds, toSeconds } of segments) {
    const { count, seconds } = sums.get(kind) ?? { count: 0, seconds: 0 };
    sums.set(kind, { kind, count: count + 1, seconds: seconds + toSeconds - fromSeconds });
  }
  return (Object.keys(kindHatches) as SegmentKind[]).flatMap((kind) => sums.get(kind) ?? []);
}

export function kindText(sheet: Sheet, { kind, count, seconds }: KindSum): string {
  return sheet.say("trace.kind", {
    name: sheet.say(`kind.${kind}`),
    count: sheet.number(count, 0),
    time: duration(sheet, seconds),
  });
}

/** Smallest and greatest value of each quantity. */
export function rangesTold(sheet: Sheet, panels: readonly ToldPanel[]): string[] {
  return panels.flatMap(({ unit, extremes }) => {
    if (!extremes) return [];
    const decimals = panelDecimals({ unit, extremes });
    const lower = sheet.quantity(extremes.least, decimals, unit);
    const upper = sheet.quantity(extremes.most, decimals, unit);
    return [sheet.say(unit === "V" ? "trace.voltage-range" : "trace.current-range", { lower, upper })];
  });
}

/** The first segments one by one, then the sums. */
export function segmentsTold(
  sheet: Sheet,
  segments: readonly LogSegment[],
  kinds: readonly KindSum[],
  origin: number,
  span: number,
): string[] {
  if (segments.length === 0) return [];
  const parts = segments.slice(0, SEGMENTS_TOLD).map(({ kind, fromSeconds, toSeconds }) =>
    sheet.say("trace.segment", {
      name: sheet.say(`kind.${kind}`),
      from: moment(sheet, fromSeconds - origin, span),
      to: moment(sheet, toSeconds - origin, span),
    }),
  );
  if (segments.length > SEGMENTS_TOLD)
    parts.push(sheet.say("more", { count: sheet.number(segments.length - SEGMENTS_TOLD, 0) }));
  return [
    `${sheet.say("trace.segments")}: ${parts.join("; ")}.`,
    `${kinds.map((one) => kindText(sheet, one)).join("; ")}.`,
  ];
}

/** What is missing or was left out, one sentence each. */
export function notesOf(
  sheet: Sheet,
  { withoutTime, back, volts, amperes }: ThinnedTrace,
  panels: readonly ToldPanel[],
): string[] {
  const { say } = sheet;
  const notes: string[] = [];
  const count = (n: number) => ({ count: sheet.number(n, 0) });
  for (const { unit, name, extremes, axis, gaps } of panels) {
    if (axis && extremes && (extremes.least < axis.lower || extremes.most > axis.upper)) {
      const lower = sheet.quantity(axis.lower, 1, unit);
      const upper = sheet.quantity(axis.upper, 1, unit);
      notes.push(say("trace.beyond-axis", { name, lower, upper }));
    }
    if (gaps.length > 0) {
      const longest = duration(sheet, gaps[0]!.toSeconds - gaps[0]!.fromSeconds);
      notes.push(say("trace.gaps", { name, ...count(gaps.length), longest }));
    }
  }
  if (back > 0) notes.push(say("trace.back", count(back)));
  if (withoutTime > 0) notes.push(say("trace.without-time", count(withoutTime)));
  const beyond = volts.beyond + amperes.beyond;
  if (beyond > 0) notes.push(say("trace.beyond-values", count(beyond)));
  return notes;
}
