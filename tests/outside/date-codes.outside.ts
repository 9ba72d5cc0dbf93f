import {
  ageInterval,
  type DateCodeRefusal,
  type DateCodeResult,
  type DateSchemeId,
  type DecodeOptions,
  dateSchemes,
  decodeContext,
  decodeDateCode,
  encodeDateCode,
} from "crankworthy/date-codes";
import { dayNumber, isRefusal, plainDate } from "crankworthy/numeric";
import values from "./reference-values.json" with { type: "json" };
import type { OutsideRow, OutsideSuite } from "./suite.js";

const EXACT = "calendar dates are whole numbers: they must be equal";

function decoded(text: string, options: DecodeOptions): DateCodeResult | DateCodeRefusal {
  return decodeDateCode(text, options);
}

/** All readings as text, or the code of the refusal. */
function periods(text: string, options: DecodeOptions): string {
  const result = decoded(text, options);
  if (isRefusal(result)) return result.code;
  return result.readings.map(({ from, to }) => (from === to ? from : `${from}..${to}`)).join(" ");
}

function months(text: string, scheme: DateSchemeId, inspectedOn: string, maxAgeYears: number): string {
  const result = decoded(text, { inspectedOn, maxAgeYears, schemes: [scheme] });
  return isRefusal(result) ? result.code : result.readings.map(({ from }) => from.slice(0, 7)).join(" ");
}

const ISO_WEEKS = { schemes: ["yyww"], weekRule: "iso" } as const;

const FOUR_DIGIT_SCHEMES = ["mmyy", "yymm", "wwyy", "yyww", "yddd"] as const;
const FOUR_DIGITS: DecodeOptions = {
  inspectedOn: "2025-06-15",
  maxAgeYears: 10,
  schemes: FOUR_DIGIT_SCHEMES,
  weekRule: "iso",
};

function schemesThatRead(text: string): string {
  const result = decoded(text, FOUR_DIGITS);
  if (isRefusal(result)) return "";
  return FOUR_DIGIT_SCHEMES.filter((id) => result.readings.some(({ scheme }) => scheme === id)).join(" ");
}

function histogram(): readonly number[] {
  const counts = [0, 0, 0, 0, 0, 0];
  for (let n = 0; n < 10_000; n++) {
    const read = schemesThatRead(String(n).padStart(4, "0"));
    counts[read === "" ? 0 : read.split(" ").length]!++;
  }
  return counts;
}

let counted: readonly number[] | undefined;
const countOf = (readings: number): number => {
  counted ??= histogram();
  return counted[readings]!;
};

/** ISO week date as our two schemes print it: YYWW and YWWD together hold year, week and weekday. */
function weekDate(date: string): string {
  return `${encodeDateCode("yyww", date)} ${encodeDateCode("ywwd", date).slice(-1)}`;
}

const two = (value: number): string => String(value % 100).padStart(2, "0");

const isoWeekRows = (values.iso_week as [string, number, number, number][]).flatMap(
  ([date, year, week, weekday]): OutsideRow[] => [
    {
      label: `${date} printed`,
      published: `${two(year)}${two(week)} ${weekday}`,
      ours: () => weekDate(date),
    },
    {
      label: `${year}-W${two(week)}-${weekday} read`,
      published: date,
      ours: () =>
        periods(`${year % 10}${two(week)}${weekday}`, {
          inspectedOn: plainDate(dayNumber(date) + 30),
          maxAgeYears: 1,
          schemes: ["ywwd"],
          weekRule: "iso",
        }),
    },
  ],
);

const letterCodes = [..."ABCDEFGHJKLM"].flatMap((letter) => [..."0123456789"].map((digit) => letter + digit));

export const suites: OutsideSuite[] = [
  {
    title: "ISO week dates",
    source:
      "Python datetime.isocalendar as an independent implementation (tests/outside/reference-values.json); rule: ISO 8601 (from memory)",
    unit: "date",
    why: EXACT,
    rows: isoWeekRows,
  },
  {
    title: "Years with a week 53",
    source: "ISO 8601 week rule (from memory), years 2000 to 2060 computed from it by calendar arithmetic",
    unit: "year",
    why: EXACT,
    rows: [
      {
        label: "2000 to 2060",
        published: "2004 2009 2015 2020 2026 2032 2037 2043 2048 2054 2060",
        ours: () => {
          const long: number[] = [];
          for (let year = 2000; year <= 2060; year++) {
            const options = { ...ISO_WEEKS, inspectedOn: `${year + 1}-06-01`, maxAgeYears: 2 };
            if (!isRefusal(decoded(`${two(year)}53`, options))) long.push(year);
          }
          return long.join(" ");
        },
      },
      {
        label: "2553 as YYWW: 2025 has 52 weeks",
        published: "no-reading",
        ours: () => periods("2553", { ...ISO_WEEKS, inspectedOn: "2026-06-15" }),
      },
      {
        label: "2510 as YYWW",
        published: "2025-03-03..2025-03-09",
        ours: () => periods("2510", { ...ISO_WEEKS, inspectedOn: "2025-06-15" }),
      },
      {
        label: "5012 as YWWD: the week year begins before the calendar year",
        published: "2024-12-31",
        ours: () =>
          periods("5012", { inspectedOn: "2025-06-15", maxAgeYears: 5, schemes: ["ywwd"], weekRule: "iso" }),
      },
    ],
  },
  {
    title: "Month letter and last digit of the year",
    source:
      "Technician training module on batteries, page 127, autoshop101.com (read): B9 is February 1999; the further years follow from the same rule (computed)",
    unit: "month",
    why: EXACT,
    rows: [
      {
        label: "B9 seen in 1999",
        published: "1999-02",
        ours: () => months("B9", "letter-month-no-i", "1999-12-01", 9),
      },
      {
        label: "B9 seen in 2025, within 27 years",
        published: "2019-02 2009-02 1999-02",
        ours: () => months("B9", "letter-month-no-i", "2025-06-01", 27),
      },
      {
        label: "C9, within 21 years",
        published: "2019-03 2009-03",
        ours: () => months("C9", "letter-month-no-i", "2025-06-01", 21),
      },
      {
        label: "J5: September 2025 lies ahead",
        published: "2015-09 2005-09",
        ours: () => months("J5", "letter-month-no-i", "2025-06-01", 21),
      },
      {
        label: "E5",
        published: "2025-05 2015-05 2005-05",
        ours: () => months("E5", "letter-month-no-i", "2025-06-01", 21),
      },
      {
        label: "F5: the current month begins on the day of the inspection",
        published: "2025-06 2015-06 2005-06",
        ours: () => months("F5", "letter-month-no-i", "2025-06-01", 21),
      },
      {
        label: "L4 with I kept is December (trade practice, no source)",
        published: "2024-12",
        ours: () => months("L4", "letter-month-a-to-l", "2025-06-01", 5),
      },
    ],
  },
  {
    title: "IEC 60062 year and month characters",
    source:
      "IEC 60062 / DIN EN 60062 in a German summary, bedienungsanleitung.elektronotdienst-nuernberg.de (secondary); a second page gives R = 2003; row without G (our choice)",
    unit: "month",
    why: EXACT,
    rows: [
      {
        label: "M3 in 2025",
        published: "2020-03 2000-03",
        ours: () => months("M3", "iec-60062", "2025-06-01", 30),
      },
      { label: "M3 in 1999", published: "1980-03", ours: () => months("M3", "iec-60062", "1999-06-01", 30) },
      { label: "R1", published: "2023-01 2003-01", ours: () => months("R1", "iec-60062", "2025-06-01", 30) },
      { label: "K5", published: "2018-05 1998-05", ours: () => months("K5", "iec-60062", "2025-06-01", 30) },
      { label: "B9", published: "2011-09 1991-09", ours: () => months("B9", "iec-60062", "2025-06-01", 35) },
      ...(
        [
          ["RO", "2023-10"],
          ["RN", "2023-11"],
          ["RD", "2023-12"],
          ["A1", "2010-01"],
          ["X1", "2009-01"],
        ] as const
      ).map(([code, published]) => ({
        label: code,
        published,
        ours: () => months(code, "iec-60062", "2025-06-01", 18),
      })),
      {
        label: "R0: O is a letter",
        published: "no-reading",
        ours: () => months("R0", "iec-60062", "2025-06-01", 18),
      },
      {
        label: "G5: the published rows disagree",
        published: "iec-60062-year-g",
        ours: () => months("G5", "iec-60062", "2025-06-01", 18),
      },
      {
        label: "letter and digit codes (I skipped) that are IEC 60062 codes too, of 120",
        published: 99,
        ours: () => {
          // 20 years from 2010 on hold each year letter once.
          const context = decodeContext({ inspectedOn: "2029-12-31", maxAgeYears: 20 });
          return letterCodes.filter((code) => dateSchemes["iec-60062"].decode(code, context).length > 0)
            .length;
        },
        allowed: 0,
      },
    ],
  },
  {
    title: "Ambiguity of four digits",
    source:
      "Full enumeration of the 10 000 strings by calendar arithmetic (computed), schemes MMYY, YYMM, WWYY, YYWW (ISO weeks), YDDD, inspection 2025-06-15, ten years",
    unit: "strings",
    why: EXACT,
    rows: [
      ...[5784, 3638, 433, 145, 0].map((published, readings) => ({
        label: `strings with ${readings} readings`,
        published,
        ours: () => countOf(readings),
        allowed: 0,
      })),
      ...(
        [
          ["2403", "yymm yyww"],
          ["0324", "mmyy wwyy yddd"],
          ["1218", "mmyy wwyy yddd"],
          ["2024", "wwyy yyww yddd"],
          ["1923", "wwyy yyww"],
        ] as const
      ).map(([text, published]) => ({ label: text, published, ours: () => schemesThatRead(text) })),
      {
        label: "0324 as YDDD",
        published: "2020-11-19",
        ours: () => periods("0324", { ...FOUR_DIGITS, schemes: ["yddd"] }),
      },
    ],
  },
  {
    title: "GS1 production date",
    source:
      "GS1 syntax dictionary, commit ff2eb4bf, application identifier 11, format yymmd0 (read): day 00 = not given; the whole month is our choice",
    unit: "date",
    why: EXACT,
    rows: [
      {
        label: "11240300, identifier in front",
        published: "2024-03-01..2024-03-31",
        ours: () =>
          periods("11240300", {
            inspectedOn: "2025-06-15",
            schemes: [{ scheme: "yymmdd", template: "11######" }],
          }),
      },
      {
        label: "240229",
        published: "2024-02-29",
        ours: () => periods("240229", { inspectedOn: "2025-06-15", schemes: ["yymmdd"] }),
      },
      {
        label: "250229: no such day",
        published: "no-reading",
        ours: () => periods("250229", { inspectedOn: "2025-06-15", schemes: ["yymmdd"] }),
      },
      {
        label: "23060 as YYDDD",
        published: "2023-03-01",
        ours: () => periods("23060", { inspectedOn: "2025-06-15", schemes: ["yyddd"] }),
      },
    ],
  },
  {
    title: "Shelf age of a month code",
    source: "Days between two dates by calendar arithmetic (computed): made in March 2024, sold 2024-09-15",
    unit: "d",
    why: EXACT,
    rows: [
      { label: "made 31 March", published: 168, ours: () => shelfAge().lower, allowed: 0 },
      { label: "made 1 March", published: 198, ours: () => shelfAge().upper, allowed: 0 },
    ],
  },
];

function shelfAge() {
  return ageInterval({ from: "2024-03-01", to: "2024-03-31" }, "2024-09-15").days;
}
