import type { Source } from "./source.js";

/** Bibliography of the room `date-codes`. */
export const dateCodesSources = {
  "technician-training-date-codes": {
    title: "Technician training module on batteries: reading the date code",
    locator:
      "page 127; month letter A to M without I, then the last digit of the year; its example reads B9 as February 1999",
    address: "autoshop101.com/trainmodules/batteries/127.html",
    standing: "read",
  },
  "date-code-trade-practice": {
    title: "Date codes used in the battery trade, without a citable text",
    standing: "common-practice",
  },
  "hibc-date-formats": {
    title:
      "Date formats of the HIBC supplier label standard, as enumerated in the manual of a bar code library",
    locator: "YYYYMMDD, MMYY, YYMMDD, YYJJJ",
    address: "docs.aspose.com/barcode",
    standing: "secondary",
  },
  "iec-60062-characters": {
    title: "IEC 60062 / DIN EN 60062, marking codes: year letter and month character, in a German summary",
    locator:
      "twenty year letters without G I O Q Y Z; months 1 to 9, O, N, D. The summary prints 21 letters for 20 years",
    address: "bedienungsanleitung.elektronotdienst-nuernberg.de/din-en-60062.html",
    standing: "secondary",
  },
  "iec-60062-year-week": {
    title: "IEC 60062, marking codes: four-digit form, year then week",
    standing: "from-memory",
  },
  "cfr-49-574-5": {
    title: "49 CFR 574.5, tyre identification number: week then year of manufacture",
    standing: "from-memory",
  },
  "iso-8601": {
    title: "ISO 8601, representations of dates: calendar, ordinal and week dates",
    standing: "from-memory",
  },
  "cfr-21-801-18": {
    title: "21 CFR 801.18, format of dates on a device label: year, month, day",
    standing: "from-memory",
  },
  "gs1-production-date": {
    title:
      "GS1 syntax dictionary: application identifier 11, production date, format yymmd0 (day 00 = not given)",
    edition: "commit ff2eb4bf",
    locator: "identifier 11; src/lint_yymmd0.c",
    address: "github.com/gs1/gs1-syntax-dictionary",
    standing: "read",
  },
  "date-code-choices": {
    title:
      "Choices of this library for reading date codes: accepted window, all decades reported, plausible shelf time",
    standing: "our-choice",
  },
} as const satisfies Record<string, Source>;
