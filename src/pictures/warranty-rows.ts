import type { DateReading } from "../date-codes/index.js";
import type { BatteryRecord, Evaluation, RecordWarranty } from "../evaluate/index.js";
import type { PlainDate } from "../numeric/index.js";
import { dayNumber, plainDate } from "../numeric/index.js";
import { addMonthsFrom, type Coverage, type CoverageCase, coverageOn } from "../warranty/index.js";
import type { Hatch } from "./hatch.js";
import type { Sheet } from "./sheet.js";

/** One thing on the timeline: a day, or a stretch of days with both ends included. */
export interface Row {
  readonly text: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** A stretch is a box with this hatch; a day without one is a mark. */
  readonly hatch?: Hatch;
  /** The day everything is held against: its line crosses the whole picture. */
  readonly crossing?: boolean;
}

/** Rows of the timeline and what cannot be drawn. */
export interface Timeline {
  readonly rows: readonly Row[];
  readonly notes: readonly string[];
}

/** Readings of a date code that are drawn; the rest is counted. Our choice. */
const READINGS_DRAWN = 3;

/** Everything dated about a claim, in the order it is drawn. */
export function warrantyTimeline(
  sheet: Sheet,
  evaluation: Pick<Evaluation, "age" | "inspectedOn">,
  warranty: RecordWarranty,
  claimedOn: PlainDate,
): Timeline {
  const { purchase, terms } = warranty;
  const readings = periodsOf(evaluation.age?.dateCode.readings ?? []);
  const coverage = coverageOn({ terms, purchase, claimedOn, ...manufactured(readings) });
  const { rows, notes } = madeRows(sheet, evaluation.age?.dateCode.text ?? "", readings);
  const day = (text: "warranty.sold" | "warranty.sold-no-receipt" | "warranty.installed", date: PlainDate) =>
    rows.push({ text: sheet.say(text, { date: sheet.day(date) }), from: date, to: date });
  if (purchase.soldOn !== undefined)
    day(purchase.receipt ? "warranty.sold" : "warranty.sold-no-receipt", purchase.soldOn);
  if (purchase.installedOn !== undefined) day("warranty.installed", purchase.installedOn);
  rows.push(...termRows(sheet, coverage, rows));
  const statutory = statutoryRow(sheet, warranty, coverage);
  if (statutory) rows.push(statutory);
  if (coverage.cases.length === 0) notes.push(sheet.say("warranty.no-term"));
  const { inspectedOn } = evaluation;
  if (inspectedOn !== undefined && inspectedOn !== claimedOn)
    rows.push({
      text: sheet.say("warranty.inspected", { date: sheet.day(inspectedOn) }),
      from: inspectedOn,
      to: inspectedOn,
    });
  const text = sheet.say("warranty.claim", { date: sheet.day(claimedOn) });
  rows.push({ text, from: claimedOn, to: claimedOn, crossing: true });
  return { rows, notes };
}

/** The day a claim is made, where it is known. */
export function claimDay(
  { warranty }: Pick<BatteryRecord, "warranty">,
  { inspectedOn }: Pick<Evaluation, "inspectedOn">,
): PlainDate | undefined {
  return warranty?.claimedOn ?? inspectedOn;
}

interface Period {
  readonly from: PlainDate;
  readonly to: PlainDate;
}

// Schemes that agree on the days say one thing.
function periodsOf(readings: readonly DateReading[]): Period[] {
  const periods = new Map<string, Period>();
  for (const { from, to } of readings)
    if (!periods.has(`${from} ${to}`)) periods.set(`${from} ${to}`, { from, to });
  return [...periods.values()];
}

function manufactured(readings: readonly Period[]): { readonly manufactured?: Period } {
  if (readings.length === 0) return {};
  // Plain dates compare as text.
  const from = readings.map((one) => one.from).sort()[0]!;
  const to = readings
    .map((one) => one.to)
    .sort()
    .at(-1)!;
  return { manufactured: { from, to } };
}

function madeRows(sheet: Sheet, text: string, readings: readonly Period[]): { rows: Row[]; notes: string[] } {
  if (readings.length === 0) return { rows: [], notes: [sheet.say("warranty.not-dated")] };
  const rows = readings.slice(0, READINGS_DRAWN).map(({ from, to }, i): Row => {
    const values = { text, from: sheet.day(from), to: sheet.day(to) };
    return {
      text: sheet.say(i === 0 ? "warranty.made" : "warranty.made-also", values),
      from,
      to,
      hatch: i === 0 ? "upright" : "blank",
    };
  });
  const more = readings.length - rows.length;
  const notes = more > 0 ? [sheet.say("warranty.made-more", { count: sheet.number(more, 0) })] : [];
  return { rows, notes };
}

function termRows(sheet: Sheet, { cases }: Coverage, drawn: readonly Row[]): Row[] {
  const { first, last } = extremes(cases);
  if (!first || !last) return [];
  const rows: Row[] = [];
  const between = (word: "warranty.start-between" | "warranty.end-between", from: PlainDate, to: PlainDate) =>
    rows.push({
      text: sheet.say(word, { from: sheet.day(from), to: sheet.day(to) }),
      from,
      to,
      hatch: "blank",
    });
  const starts = cases.map(({ startedOn }) => startedOn).sort();
  const [earliest, latest] = [starts[0]!, starts.at(-1)!];
  if (earliest !== latest) between("warranty.start-between", earliest, latest);
  else if (!drawn.some(({ from, to }) => from === earliest && to === earliest))
    rows.push({
      text: sheet.say("warranty.start", { date: sheet.day(earliest) }),
      from: earliest,
      to: earliest,
    });
  for (const one of first === last ? [first] : [first, last]) rows.push(...periodRows(sheet, one));
  if (first.lastCoveredDay !== last.lastCoveredDay)
    between("warranty.end-between", first.lastCoveredDay, last.lastCoveredDay);
  return rows;
}

// The readings of the facts that end the cover first and last.
function extremes(cases: readonly CoverageCase[]): {
  readonly first?: CoverageCase;
  readonly last?: CoverageCase;
} {
  let [first, last] = [cases[0], cases[0]];
  for (const one of cases) {
    if (one.lastCoveredDay < first!.lastCoveredDay) first = one;
    if (one.lastCoveredDay > last!.lastCoveredDay) last = one;
  }
  return first && last ? { first, last } : {};
}

function periodRows(sheet: Sheet, { startedOn, lastFreeDay, lastCoveredDay }: CoverageCase): Row[] {
  const row = (
    word: "warranty.free" | "warranty.prorated",
    from: PlainDate,
    to: PlainDate,
    hatch: Hatch,
  ): Row[] =>
    from > to
      ? []
      : [{ text: sheet.say(word, { from: sheet.day(from), to: sheet.day(to) }), from, to, hatch }];
  if (lastFreeDay === undefined) return row("warranty.prorated", startedOn, lastCoveredDay, "rising");
  return [
    ...row("warranty.free", startedOn, lastFreeDay, "dots"),
    ...row("warranty.prorated", plainDate(dayNumber(lastFreeDay) + 1), lastCoveredDay, "rising"),
  ];
}

// From the sale where it is proved, else from the latest start the facts leave open; for whom the law speaks is for its own text.
function statutoryRow(
  sheet: Sheet,
  { terms, purchase }: RecordWarranty,
  { cases }: Coverage,
): Row | undefined {
  const floor = terms.statutoryFloor;
  if (!floor || (floor.scope === "consumer" && purchase.buyer === "business")) return undefined;
  const from = (purchase.receipt ? purchase.soldOn : undefined) ?? cases.at(-1)?.startedOn;
  if (from === undefined) return undefined;
  const to = addMonthsFrom(from, floor.months);
  return { text: sheet.say("warranty.statutory", { to: sheet.day(to) }), from, to, hatch: "falling" };
}
