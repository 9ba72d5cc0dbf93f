import { calendarOf, type PlainDate, plainDate, requireDay } from "../numeric/index.js";
import { completedMonths } from "./age.js";
import { checkWhole } from "./context.js";
import type { DateReading, DateReason, ExcludedReading } from "./reading.js";
import type { DateScheme, DateSchemeId, DayRange, DecodeContext } from "./scheme.js";

/**
 * Time between manufacture and sale [months] up to which a reading counts as supported by the sale date, beyond which as
 * doubtful. Our choice: policies limit shelf time to well below two years, and a wrong decade is off by ten.
 */
export const PLAUSIBLE_SHELF_MONTHS = 24;

/**
 * What else is known. `manufactured`, `activated` and `sold` are three dates: each limits the others, none replaces
 * another, and no reading is narrowed by them.
 */
export interface DateCodeEvidence {
  /** Day of the sale: a battery made later is impossible; one made long before is doubtful. */
  readonly soldOn?: PlainDate;
  /** Day of filling or first charge: a battery made later is impossible. A dry one may have waited for years. */
  readonly activatedOn?: PlainDate;
  /** Year of the vehicle: a battery made more than a year before is doubtful. */
  readonly vehicleYear?: number;
  /**
   * Another code on the same battery, read by every scheme unless one is named. It may be the start of the warranty, so
   * it supports a reading with which it shares a day, and never excludes one.
   */
  readonly secondCode?: { readonly text: string; readonly scheme?: DateSchemeId };
}

/** A period that a code can mean, before the evidence is heard. */
export interface Candidate extends DayRange {
  readonly scheme: Pick<DateScheme, "precision" | "yearCycle" | "source" | "standing"> & {
    readonly id: DateReading["scheme"];
  };
  readonly template: string | undefined;
}

/** What {@link judge} makes of candidates. */
export interface Judgement {
  readonly readings: readonly DateReading[];
  readonly excluded: readonly ExcludedReading[];
}

/** Evidence as numbers, checked once a code. */
export interface HeardEvidence {
  /** Infinity: not known; likewise `activatedDay`. */
  readonly soldDay: number;
  readonly activatedDay: number;
  readonly vehicleYear: number | undefined;
  /** What a second code can mean, if there is one. */
  readonly second: readonly DayRange[] | undefined;
}

/** Checks the evidence; RangeError when a date is none of the calendar or the year outside 1900..2999. */
export function hear(evidence: DateCodeEvidence = {}, second?: readonly DayRange[]): HeardEvidence {
  const { soldOn, activatedOn, vehicleYear } = evidence;
  const soldDay = soldOn === undefined ? Infinity : requireDay("soldOn", soldOn);
  const activatedDay = activatedOn === undefined ? Infinity : requireDay("activatedOn", activatedOn);
  if (vehicleYear !== undefined) checkWhole("vehicleYear", vehicleYear, 1900, 2999);
  return { soldDay, activatedDay, vehicleYear, second };
}

/** Sorts candidates by what the evidence says, and takes out those it makes impossible. */
export function judge(
  candidates: readonly Candidate[],
  { inspectionDay, latestDay }: DecodeContext,
  { soldDay, activatedDay, vehicleYear, second }: HeardEvidence,
): Judgement {
  const excluded: ExcludedReading[] = [];
  const kept: Scored[] = [];
  for (const { scheme: rule, template, fromDay, toDay, weekRule } of candidates) {
    const { id: scheme, precision, yearCycle, source, standing } = rule;
    const from = plainDate(fromDay);
    const to = toDay > fromDay ? plainDate(toDay) : from;
    const earliestBegin = fromDay - (latestDay - inspectionDay);
    const afterSale = earliestBegin > soldDay;
    if (afterSale || earliestBegin > activatedDay) {
      const because = afterSale ? "made-after-sale" : "made-after-activation";
      excluded.push({ scheme, from, to, because });
      continue;
    }
    const reasons: DateReason[] = [];
    if (yearCycle === 10) reasons.push("open-decade");
    if (yearCycle === 20) reasons.push("open-twenty-years");
    const dayMissing = precision === "day" && toDay > fromDay;
    if (dayMissing) reasons.push("day-not-given");
    if (toDay > inspectionDay)
      reasons.push(fromDay > inspectionDay ? "dated-ahead" : "ends-after-inspection");
    let score = 0;
    if (soldDay < Infinity) {
      const near = completedMonths(toDay, soldDay) < PLAUSIBLE_SHELF_MONTHS;
      reasons.push(near ? "shortly-before-sale" : "long-before-sale");
      score = near ? 1 : -1;
    }
    if (vehicleYear !== undefined) {
      if (calendarOf(toDay).year < vehicleYear - 1) {
        reasons.push("older-than-vehicle");
        score--;
      } else if (calendarOf(fromDay).year <= vehicleYear) reasons.push("in-vehicle-year");
    }
    if (second?.some((other) => other.fromDay <= toDay && other.toDay >= fromDay)) {
      reasons.push("agrees-with-second-code");
      score++;
    }
    kept.push({
      score,
      reading: {
        scheme,
        template,
        from,
        to,
        precision: dayMissing ? "month" : precision,
        rank: 1,
        reasons,
        ageDays: { lower: inspectionDay - toDay, upper: inspectionDay - fromDay },
        source,
        standing,
        ...(weekRule && { weekRule }),
      },
    });
  }
  kept.sort((a, b) => b.score - a.score || a.reading.ageDays.upper - b.reading.ageDays.upper);
  const readings = kept.map(({ reading, score }, index) => {
    const before = kept[index - 1];
    if (before) reading.rank = before.reading.rank + (score < before.score ? 1 : 0);
    return reading;
  });
  return { readings, excluded };
}

interface Scored {
  readonly score: number;
  readonly reading: { -readonly [Key in keyof DateReading]: DateReading[Key] };
}
