import { dayNumber } from "../numeric/index.js";
import type { Messages } from "./messages.js";

/** A catalogue with the number and date forms of its language; made once for a report. */
export interface Voice extends Messages {
  /** Fixed decimals, no grouping, no minus zero. */
  readonly decimals: (value: number, digits: number) => string;
  /** A number or amount as it is, only its decimal mark and minus sign those of the language. */
  readonly asIs: (text: string) => string;
  /** A calendar day, which no time zone can move; as it is where it is no day. */
  readonly day: (isoDay: string) => string;
  readonly pluralForm: (count: number) => string;
}

const MILLISECONDS_PER_DAY = 86_400_000;

/** Gives a catalogue its voice. Digits stay 0 to 9 in every language: a ticket is compared with an instrument's display. */
export function voiceOf(messages: Messages | Voice): Voice {
  if ("decimals" in messages) return messages;
  const { language } = messages;
  const formats = new Map<number, Intl.NumberFormat>();
  const format = (digits: number): Intl.NumberFormat => {
    let known = formats.get(digits);
    if (!known) {
      known = new Intl.NumberFormat(language, {
        minimumFractionDigits: digits,
        maximumFractionDigits: digits,
        useGrouping: false,
        numberingSystem: "latn",
        signDisplay: "negative",
      });
      formats.set(digits, known);
    }
    return known;
  };
  const mark = format(1)
    .formatToParts(0.5)
    .find((part) => part.type === "decimal")!.value;
  const minus = format(0)
    .formatToParts(-1)
    .filter((part) => part.type === "minusSign" || part.type === "literal")
    .map((part) => part.value)
    .join("");
  let days: Intl.DateTimeFormat | undefined;
  let plurals: Intl.PluralRules | undefined;
  return {
    ...messages,
    decimals: (value, digits) => format(digits).format(value),
    asIs: (text) => text.replace(".", mark).replace(/^-/, minus),
    day(isoDay) {
      const number = dayNumber(isoDay);
      if (Number.isNaN(number)) return isoDay;
      days ??= new Intl.DateTimeFormat(language, {
        year: "numeric",
        month: "short",
        day: "numeric",
        calendar: "gregory",
        numberingSystem: "latn",
        timeZone: "UTC",
      });
      const written = days.format(number * MILLISECONDS_PER_DAY);
      return written.replace(/^1(?=\s)/, messages.firstDay);
    },
    pluralForm(count) {
      plurals ??= new Intl.PluralRules(language);
      return plurals.select(count);
    },
  };
}
