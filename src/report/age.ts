import type { Evaluation } from "../evaluate/index.js";
import type { Interval } from "../numeric/index.js";
import { fill, quantity } from "./format.js";
import { line, type ReportLine } from "./line.js";
import type { Voice } from "./voice.js";

/** Readings of an ambiguous code that are shown; the rest is counted. */
const MOST_READINGS = 4;
const DAYS_PER_MONTH = 365.2425 / 12;

/** How old is it: every reading of the date code, best supported first. */
export function ageLines({ age }: Evaluation, messages: Voice): ReportLine[] {
  if (!age) return [line(messages.phrase.unknown)];
  const { text, readings, excluded, ambiguous, notes } = age.dateCode;
  const lines = [line(fill(messages, "dateCode", { text }))];
  for (const { from, to, ageDays, scheme, reasons } of readings.slice(0, MOST_READINGS)) {
    const period = from === to ? messages.day(from) : fill(messages, "period", { from, to });
    const parameters = { period, age: ageText(ageDays, messages), scheme, reasons: reasons.join(", ") };
    lines.push(
      line(fill(messages, "reading", parameters), "item", {
        "age.reading": `${from}..${to}`,
        // The only reading is all readings together.
        ...(!ambiguous && { "age.oldest": ageDays.upper, "age.youngest": ageDays.lower }),
        ...(ambiguous && { "age.ofReading": ageDays.upper }),
      }),
    );
  }
  const more = readings.length - MOST_READINGS;
  if (more > 0) lines.push(line(fill(messages, "more", { n: more }), "item"));
  if (ambiguous) {
    const { upper, lower } = age.ageDays;
    const figures = { "age.oldest": upper, "age.youngest": lower };
    lines.push(line(fill(messages, "overall", { age: ageText(age.ageDays, messages) }), "text", figures));
  }
  if (excluded.length > 0) lines.push(line(fill(messages, "ruledOut", { n: excluded.length })));
  for (const note of notes) lines.push(line(fill(messages, "note", { note })));
  return lines;
}

function ageText(days: Interval, messages: Voice): string {
  // A period that is not over yet reaches into the future; an age does not.
  const lower = Math.max(0, days.lower) / DAYS_PER_MONTH;
  const upper = Math.max(0, days.upper) / DAYS_PER_MONTH;
  const inMonths = upper < 36;
  const count = inMonths ? Math.ceil(upper) : Math.ceil(upper / 1.2) / 10;
  const from = quantity(inMonths ? Math.floor(lower) : Math.floor(lower / 1.2) / 10, "d", messages);
  const to = quantity(count, "d", messages);
  const span = from === to ? from : fill(messages, "span", { from, to });
  return fill(messages, inMonths ? "months" : "years", { span, count });
}
