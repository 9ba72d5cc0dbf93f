import type { Source } from "./source.js";

/** Bibliography of the room `warranty`. */
export const warrantySources = {
  "ca-18-ccr-3210": {
    title: "California Code of Regulations, title 18, section 3210",
    locator: "worked examples of a prorated battery warranty",
    standing: "read",
  },
  "ritchken-1984": {
    title: "P. H. Ritchken, Technical Memorandum 551, Case Western Reserve University",
    edition: "September 1984",
    locator: "equation 2",
    address: "https://www.scribd.com/document/240375945/battery-2",
    standing: "read",
  },
  "blischke-murthy": {
    title: "Blischke & Murthy, Warranty Cost Analysis",
    locator: "chapter 4, doi 10.1201/9780367810856-5; formula from memory",
    standing: "from-memory",
  },
  "us-88-stat-2183": {
    title: "Magnuson-Moss Warranty Act, 88 Stat. 2183, section 101(11) and (12)",
    locator: "page 869 of the scan of volume 88 part 2 (88 Stat. 2185)",
    address: "https://en.wikisource.org/wiki/United_States_Statutes_at_Large",
    standing: "read",
  },
  "eec-1182-71": {
    title: "Regulation (EEC, Euratom) No 1182/71, periods, dates and time limits",
    locator: "article 3, quoted at wordscope.be",
    standing: "read",
  },
  "uk-si-2018-1082": {
    title: "United Kingdom statutory instrument 2018/1082",
    locator: "rule 1.4",
    address: "https://www.legislation.gov.uk/uksi/2018/1082/article/1.4",
    standing: "read",
  },
  "clamped-months": {
    title: "An open date library, discussion of months between month ends",
    locator: "issue 31",
    address: "https://github.com/JodaOrg/joda-time/issues/31",
    standing: "read",
  },
  "day-of-month-months": {
    title:
      "An open conformance suite of a programming language, discussion of months between 29 February and 28 February",
    locator: "issue 3249",
    address: "https://github.com/tc39/test262/issues/3249",
    standing: "read",
  },
  "mean-month": {
    title: "Mean month of the Gregorian calendar, 365.2425 / 12 = 30.436875 days",
    standing: "computed",
  },
  "ca-hs-25215-2": {
    title: "California Health and Safety Code, section 25215.2, refundable battery deposit",
    address: "https://www.cdtfa.ca.gov/lawguides/vol4/labrf/labrf-25215-2.html",
    standing: "read",
  },
  "ri-23-60-3": {
    title: "Rhode Island General Laws, 23-60-3, vehicle battery deposit",
    locator: "waived on exchange; read at lawserver.com",
    standing: "read",
  },
  "core-exchange-practice": {
    title: "Trade practice: the battery handed in under warranty is the core",
    standing: "common-practice",
  },
  "va-ruling-97-475": {
    title: "Virginia tax ruling 97-475, quoting 23 VAC 10-210-10",
    edition: "10 December 1997",
    address: "https://www.tax.virginia.gov",
    standing: "read",
  },
  "al-810-6-1-187": {
    title: "Alabama Administrative Code 810-6-1-.187",
    locator: "public copy",
    standing: "read",
  },
  "eu-2019-771": {
    title: "Directive (EU) 2019/771, sale of goods",
    locator: "two years of liability read at eurlexa.com/act/en/32019L0771; articles 14 and 16 from memory",
    standing: "from-memory",
  },
  "icu-rounding": {
    title: "User guide of an open internationalisation library, rounding modes",
    address: "https://unicode-org.github.io/icu/userguide/format_parse/numbers/rounding-modes",
    standing: "read",
  },
  "warranty-practice": {
    title: "Warranty practice in the battery trade, no citable text",
    standing: "common-practice",
  },
  "warranty-choice": { title: "Choice of this library for warranty settlement", standing: "our-choice" },
} as const satisfies Record<string, Source>;
