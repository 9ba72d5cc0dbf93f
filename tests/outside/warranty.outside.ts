import {
  addMonthsFrom,
  type CheckSystem,
  cashIncrement,
  checkCharacters,
  countDays,
  countMonths,
  hasValidCheck,
  lastCoveredDay,
  likelyTypos,
  type MonthCount,
  minorUnitDigits,
  type Purchase,
  roundCash,
  roundMoney,
  type Settlement,
  settleClaim,
  shelfAge,
  splitPrice,
  type WarrantyTerms,
} from "crankworthy/warranty";
import type { OutsideRow, OutsideSuite } from "./suite.js";

const same = (label: string, published: string | number, ours: () => unknown): OutsideRow => ({
  label,
  published,
  ours: () => {
    const value = ours();
    return typeof value === "number" ? value : String(value);
  },
});

const terms: WarrantyTerms = {
  currency: "USD",
  minorUnitDigits: 2,
  freeMonths: 0,
  totalMonths: 60,
  prorationOrigin: "purchase",
  monthCount: "completed-clamped",
  lastCoveredDay: "anniversary",
  priceBasis: "paid",
  rounding: "half-up",
  replacementTerm: "remaining",
  exclusions: [],
  core: { depositInExchange: "waived" },
};
const settle = (
  changes: Partial<WarrantyTerms>,
  claimedOn: string,
  purchase: Partial<Purchase> = {},
): Settlement =>
  settleClaim({
    terms: { ...terms, ...changes },
    purchase: { receipt: true, soldOn: "2020-01-01", pricePaid: "100.00", ...purchase },
    claimedOn,
  });
const line = (settlement: Settlement, kind: string) =>
  settlement.lines.find((one) => one.kind === kind)?.amount;

const MONTHS: readonly (readonly [from: string, to: string, ...counts: number[]])[] = [
  ["2023-01-31", "2023-02-28", 1, 0, 1, 1, 28],
  ["2024-01-31", "2024-02-29", 1, 0, 1, 1, 29],
  ["2024-02-29", "2025-02-28", 12, 11, 12, 12, 365],
  ["2024-02-29", "2028-02-29", 48, 48, 48, 48, 1461],
  ["2023-03-15", "2024-03-14", 11, 11, 12, 12, 365],
  ["2023-03-15", "2024-03-15", 12, 12, 12, 12, 366],
  ["2023-03-15", "2024-03-16", 12, 12, 13, 12, 367],
  ["2023-03-31", "2023-04-01", 0, 0, 1, 1, 1],
];
const CONVENTIONS: readonly MonthCount[] = [
  "completed-clamped",
  "completed-day-of-month",
  "started",
  "calendar",
];

const months: OutsideSuite[] = CONVENTIONS.map((convention, column) => ({
  title: `Counted months, ${convention}`,
  source:
    convention === "completed-day-of-month"
      ? "test262 issue 3249, github.com/tc39/test262/issues/3249 (read: 2020-02-29 to 2021-02-28 is not twelve months); rows computed by its rule"
      : convention === "completed-clamped"
        ? "Joda-Time issue 31, github.com/JodaOrg/joda-time/issues/31 (read); rows computed by its rule"
        : "common practice without a citable text; rows computed by the stated rule in Gregorian arithmetic",
  unit: "month",
  why: "whole numbers: none",
  rows: MONTHS.map(([from, to, ...counts]) =>
    same(`${from} to ${to}`, counts[column]!, () => countMonths(from, to, convention)),
  ),
}));

months.push({
  title: "Days, and months of mean length",
  source:
    "Gregorian calendar: day differences computed by Julian day numbers; mean month 365.2425 / 12 days (computed)",
  unit: "day; month",
  why: "whole days exact; the quotient in float64",
  rows: MONTHS.flatMap(([from, to, ...counts]) => [
    same(`${from} to ${to}, days`, counts[4]!, () => countDays(from, to)),
    {
      label: `${from} to ${to}, mean months`,
      published: (counts[4]! * 12) / 365.2425,
      ours: () => countMonths(from, to, "days"),
      allowed: 1e-12,
    },
  ]),
});

const periods: OutsideSuite[] = [
  {
    title: "Adding months, month's last day where the date does not exist",
    source:
      "Rule: Regulation (EEC, Euratom) 1182/71 article 3, text quoted at wordscope.be (read); rows computed by it",
    unit: "date",
    why: "dates: none",
    rows: [
      same("2023-01-31 + 1", "2023-02-28", () => addMonthsFrom("2023-01-31", 1)),
      same("2024-02-29 + 12", "2025-02-28", () => addMonthsFrom("2024-02-29", 12)),
      same("2024-02-29 + 48", "2028-02-29", () => addMonthsFrom("2024-02-29", 48)),
      same("2023-08-31 + 6", "2024-02-29", () => addMonthsFrom("2023-08-31", 6)),
      same("2011-11-30 + 1, a day missing in Apia", "2011-12-30", () => addMonthsFrom("2011-11-30", 1)),
    ],
  },
  {
    title: "Last day of a period of months, European Union",
    source:
      "Regulation 1182/71 article 3 (read); case 152/85 Misset, argument read, outcome from memory: 18 February + 3 months ends on 18 May, not 19 May",
    unit: "date",
    why: "dates: none",
    rows: [
      same("18 Feb 1985 + 3", "1985-05-18", () => lastCoveredDay("1985-02-18", 3, "anniversary")),
      same("31 Jan 2023 + 1", "2023-02-28", () => lastCoveredDay("2023-01-31", 1, "anniversary")),
    ],
  },
  {
    title: "Last day of a period whose first day is given, United Kingdom",
    source:
      "SI 2018/1082 rule 1.4, legislation.gov.uk/uksi/2018/1082/article/1.4 (read); rows computed by the rule",
    unit: "date",
    why: "dates: none",
    rows: [
      same("15 Mar 2023 + 12", "2024-03-14", () => lastCoveredDay("2023-03-15", 12, "day-before")),
      same("1 Mar 2023 + 12", "2024-02-29", () => lastCoveredDay("2023-03-01", 12, "day-before")),
      same("no such date: 29 Feb 2024 + 12", "2025-02-28", () =>
        lastCoveredDay("2024-02-29", 12, "day-before"),
      ),
      same("no such date: 31 Jan 2023 + 1", "2023-02-28", () =>
        lastCoveredDay("2023-01-31", 1, "day-before"),
      ),
    ],
  },
];

const tenYears = { totalMonths: 120 } as const;
const tender = { freeDays: 90, totalMonths: 60 } as const;
const sale: Partial<WarrantyTerms> = {
  core: { depositAmount: "7.00", depositInExchange: "due" },
  tax: { ratePercent: "7", base: "charge", coreTaxed: true, freeReplacementTaxed: false },
};
const saleLedger = () =>
  settle(sale, "2020-01-01", { pricePaid: "47.00", replacementPrice: "94.00", coreReturned: true });

const examples: OutsideSuite[] = [
  {
    title: "Ten-year battery failing after nine years",
    source:
      "18 CCR 3210, California (read): customer pays 90 for an identical replacement of 100, or is credited 10",
    unit: "USD",
    why: "money: none",
    rows: [
      same("credit", "10.00", () => settle(tenYears, "2029-01-01").rebate),
      same("customer pays", "90.00", () => settle(tenYears, "2029-01-01").charge),
      same(
        "credit against a dearer replacement of 130: retail sale of what exceeds the credit",
        "120.00",
        () => settle(tenYears, "2029-01-01", { replacementPrice: "130.00" }).charge,
      ),
    ],
  },
  {
    title: "First 90 days free, and counted in the proration",
    source:
      "Clause 2.3 of a public tender of a US sheriff's office, bidnetdirect.com (read): the rule; amounts computed by it for 60.00 over 60 months",
    unit: "USD",
    why: "money: none",
    rows: [
      same("day 90", "0.00", () => settle(tender, "2020-03-31", { pricePaid: "60.00" }).charge),
      same("after four months", "4.00", () => settle(tender, "2020-05-01", { pricePaid: "60.00" }).charge),
      same("after ten months", "50.00", () => settle(tender, "2020-11-01", { pricePaid: "60.00" }).rebate),
    ],
  },
  {
    title: "Sale at 54.00 including core 7.00, core handed in",
    source:
      "California practice quoted in a car owners' forum and in mercurynews.com, 2 February 2010 (secondary); sum computed",
    unit: "USD",
    why: "money: none",
    rows: [
      same("tax of 7 % on 54.00", "3.78", () => line(saleLedger(), "tax")),
      same("total", "50.78", () => saleLedger().total),
    ],
  },
  {
    title: "Proration from purchase and from the end of the free period",
    source:
      "18 CCR 3210 (read) and Ritchken, Technical Memorandum 551 (1984), equation 2 (read); rows computed for 100.00, free 24, term 60 months",
    unit: "USD",
    why: "money: none",
    rows: [
      same(
        "day after month 24, end of free period",
        "100.00",
        () => settle({ freeMonths: 24, prorationOrigin: "end-of-free-period" }, "2022-01-02").rebate,
      ),
      same("day after month 24, purchase", "60.00", () => settle({ freeMonths: 24 }, "2022-01-02").rebate),
      same(
        "month 30, end of free period",
        "83.33",
        () => settle({ freeMonths: 24, prorationOrigin: "end-of-free-period" }, "2022-07-01").rebate,
      ),
      same("month 30, purchase", "50.00", () => settle({ freeMonths: 24 }, "2022-07-01").rebate),
    ],
  },
  {
    title: "Price basis: one claim, three prices",
    source:
      "Computed from 60 months with 24 left, half up; the bases are trade practice without a citable text",
    unit: "USD",
    why: "money: none",
    rows: (
      [
        ["paid", "52.00"],
        ["list-at-purchase", "64.00"],
        ["list-today", "70.00"],
      ] as const
    ).map(([priceBasis, credit]) =>
      same(
        priceBasis,
        credit,
        () =>
          settle({ priceBasis }, "2023-01-01", {
            pricePaid: "129.99",
            listPriceAtPurchase: "159.99",
            listPriceToday: "174.99",
          }).rebate,
      ),
    ),
  },
];

const split = (used: number) => splitPrice("189.99", 60 - used, 60, 2, "half-up");

const money: OutsideSuite[] = [
  {
    title: "Linear proration of 189.99 over 60 months",
    source: "Computed in exact rationals, rounded once, half up; the charge by subtraction",
    unit: "USD",
    why: "money: none",
    rows: (
      [
        [25, "110.83", "79.16"],
        [31, "91.83", "98.16"],
        [59, "3.17", "186.82"],
      ] as const
    ).flatMap(([used, rebate, charge]) => [
      same(`rebate at ${used}`, rebate, () => split(used).rebate),
      same(`charge at ${used}`, charge, () => split(used).charge),
    ]),
  },
  {
    title: "Rounding the monthly rate first: the trap",
    source:
      "Computed: 189.99 / 60 = 3.1665, rounded 3.17; with the rounded rate 91.93 + 98.27 = 190.20, not the price",
    unit: "USD",
    why: "money: none",
    rows: [
      same("rebate is not 91.93", "91.83", () => split(31).rebate),
      same("charge is not 98.27", "98.16", () => split(31).charge),
      same("sum in cents", 18999, () =>
        Math.round(Number(split(31).rebate) * 100 + Number(split(31).charge) * 100),
      ),
    ],
  },
  {
    title: "Cash rounding to 0.05, half up",
    source: "Computed in decimal arithmetic; that it applies to the total alone is common practice",
    unit: "CHF",
    why: "money: none",
    rows: (
      [
        ["12.32", "12.30"],
        ["12.325", "12.35"],
        ["12.33", "12.35"],
        ["12.37", "12.35"],
        ["12.375", "12.40"],
        ["12.38", "12.40"],
        ["0.02", "0.00"],
        ["0.03", "0.05"],
        ["99.99", "100.00"],
      ] as const
    ).map(([from, to]) => same(from, to, () => roundCash(from, "0.05", "half-up", 2))),
  },
  {
    title: "Ties: half-even against half-up",
    source:
      "Rounding modes of the ICU user guide, unicode-org.github.io/icu/userguide/format_parse/numbers/rounding-modes (read); rows computed",
    unit: "1",
    why: "money: none",
    rows: (
      [
        ["62.325", 2, "62.32", "62.33"],
        ["62.335", 2, "62.34", "62.34"],
        ["0.125", 2, "0.12", "0.13"],
        ["0.135", 2, "0.14", "0.14"],
        ["2.5", 0, "2", "3"],
        ["-62.325", 2, "-62.32", "-62.33"],
        ["1.005", 2, "1.00", "1.01"],
      ] as const
    ).flatMap(([from, digits, even, up]) => [
      same(`${from}, half-even`, even, () => roundMoney(from, digits, "half-even")),
      same(`${from}, half-up`, up, () => roundMoney(from, digits, "half-up")),
    ]),
  },
  {
    title: "Minor-unit digits and cash increments",
    source:
      "Unicode CLDR supplementalData, packages cldr 7.6.0 and unicode-countries 0.1.11, and older files (read)",
    unit: "digit; main unit",
    why: "none",
    rows: [
      ...Object.entries({ CHF: 2, CAD: 2, BHD: 3, CLP: 0, DJF: 0, CLF: 4, JPY: 0, KRW: 0 }),
      ...Object.entries({ KWD: 3, OMR: 3, TND: 3, IQD: 3, JOD: 3, CZK: 2, CRC: 2 }),
    ]
      .map(([code, digits]) => same(`digits of ${code}`, digits, () => minorUnitDigits(code)))
      .concat(
        Object.entries({ CHF: "0.05", CAD: "0.05", DKK: "0.50", CZK: "1", CRC: "1" }).map(([code, step]) =>
          same(`cash increment of ${code}`, step, () => cashIncrement(code)),
        ),
      ),
  },
];

const CHECKS: readonly (readonly [system: CheckSystem, data: string, check: string])[] = [
  ["mod-11-2", "0794", "0"],
  ["mod-11-2", "079", "X"],
  ["mod-11-2", "123456", "3"],
  ["mod-37-2", "G123489654321", "Y"],
  ["mod-37-2", "G123498654321", "H"],
  ["mod-37-2", "CLM2025000123", "M"],
  ["mod-97-10", "794", "44"],
  ["mod-97-10", "5367", "02"],
  ["mod-97-10", "5303", "97"],
  ["mod-97-10", "5335", "98"],
  ["mod-97-10", "99991234567890121414", "90"],
  ["mod-11-10", "0794", "5"],
  ["mod-11-10", "79462", "3"],
  ["mod-11-10", "00200667308", "5"],
  ["mod-37-36", "A12425GABC1234002", "M"],
  ["mod-37-36", "CLM2025000123", "J"],
];

const references: OutsideSuite[] = [
  {
    title: "Check characters of ISO/IEC 7064",
    source:
      "python-stdnum commit 006192e5 (stdnum/iso7064, test_iso7064.doctest), docs.rs/iso-7064, LiosK/cdigit (read); the CLM rows and 123456 computed from the recursion, which is cited from memory of ISO/IEC 7064. A README (ucam-cl-dtg/iso7064) shows X for 123456 in MOD 11-2: a usage sketch, not followed",
    unit: "character",
    why: "characters: none",
    rows: CHECKS.flatMap(([system, data, check]) => [
      same(`${system} ${data}`, check, () => checkCharacters(system, data)),
      same(`${system} ${data}${check} is valid`, "true", () => hasValidCheck(system, data + check)),
    ]),
  },
  {
    title: "A swapped pair is caught and named",
    source: "python-stdnum doctest of MOD 37-2: G123489654321Y valid, G123498654321Y not (read)",
    unit: "text",
    why: "text: none",
    rows: [
      same("swapped pair", "false", () => hasValidCheck("mod-37-2", "G123498654321Y")),
      same("likely slip", "transposition at 6: 98 for 89", () => {
        const [typo] = likelyTypos("mod-37-2", "G123498654321Y");
        return `${typo?.kind} at ${typo?.position}: ${typo?.written} for ${typo?.instead}`;
      }),
    ],
  },
];

const march = { from: "2024-03-01", to: "2024-03-31" };

const shelf: OutsideSuite[] = [
  {
    title: "Shelf time from a month code: made March 2024, sold 15 September 2024",
    source: "Computed: 31 March to 15 September 168 days, 1 March to 15 September 198 days",
    unit: "day",
    why: "whole days: none",
    rows: [
      same("least", 168, () => shelfAge(march, "2024-09-15", 180).lowerDays),
      same("most", 198, () => shelfAge(march, "2024-09-15", 180).upperDays),
      same("limit 180", "cannot-tell", () => shelfAge(march, "2024-09-15", 180).answer),
      same("limit 198", "within", () => shelfAge(march, "2024-09-15", 198).answer),
      same("limit 167", "beyond", () => shelfAge(march, "2024-09-15", 167).answer),
    ],
  },
];

export const suites: OutsideSuite[] = [...months, ...periods, ...examples, ...money, ...references, ...shelf];
