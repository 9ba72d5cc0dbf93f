import type { Source } from "./source.js";

/** Bibliography of the room `ratings`. */
export const ratingsSources = {
  "sae-j537": {
    title: "SAE J537, Storage Batteries",
    standing: "secondary",
    locator: "cold cranking test, as described by two German battery dealers and a battery maker's lexicon",
  },
  "en-50342-1": {
    title: "EN 50342-1, Lead-acid starter batteries, general requirements and methods of test",
    edition: "2006 and 2015 (+A1:2018)",
    locator: "cranking test; reserve capacity relation",
    standing: "from-memory",
  },
  "iec-60095-1": {
    title: "IEC 60095-1, Lead-acid starter batteries, general requirements and methods of test",
    edition: "1st to 8th",
    locator: "cranking test",
    standing: "from-memory",
  },
  "en-50342-2": {
    title: "EN 50342-2, Lead-acid starter batteries, dimensions and marking of terminals",
    locator: "case series L, LN, LB; terminal layouts",
    standing: "from-memory",
  },
  "jis-d-5301": {
    title: "JIS D 5301, Lead-acid starter batteries",
    edition: "1999, 2006, 2019",
    standing: "from-memory",
  },
  "jis-d-5306": {
    title: "JIS D 5306, start-stop lead-acid batteries",
    edition: "2021",
    locator: "section 4, type designation",
    address: "https://jis.eomec.com/jisd53062021/2",
    standing: "read",
  },
  "bci-groups": {
    title: "Battery Council International, battery group dimensions",
    locator: "dimension table, tolerance 3 mm",
    standing: "from-memory",
  },
  "cold-test-lexicon": {
    title: "A battery maker's technical lexicon",
    locator: "entry on the cold test current; an older text of it survives in a German car forum",
    standing: "secondary",
  },
  "en-sae-explained": {
    title: "A German battery dealer's explanation of the EN and SAE cranking tests",
    standing: "secondary",
  },
  "gb-t-5008-1": {
    title: "GB/T 5008.1, Lead-acid starter batteries, technical conditions",
    standing: "from-memory",
  },
  "catalogue-glossary": {
    title: "Glossary of a price-comparison catalogue, battery ratings",
    address: "https://e-catalog.co.uk",
    standing: "secondary",
  },
  "us-glossary": {
    title: "A US battery maker's glossary quoting BCI, and a US battery dealer's training page",
    locator: "cranking amperes, marine cranking amperes",
    standing: "secondary",
  },
  "hca-note": {
    title: "A US battery seller's article on hot cranking amperes and an undated collection of definitions",
    address: "https://www.scribd.com/document/238782011",
    standing: "secondary",
  },
  "jis-cca-list": {
    title: "Table of JIS types with cold cranking amperes, after the revision of November 2006",
    address: "https://k-broad.co.jp/study/cca.html",
    standing: "read",
  },
  "jis-designation": {
    title: "Battery Association of Japan, how to read a car battery designation",
    address: "https://www.baj.or.jp/car_battery/car03.html",
    standing: "read",
  },
  "jis-definitions": {
    title: "Page on battery specifications quoting the definitions of JIS D 5301:2006",
    address: "https://battery-flat.com/battery/specification.html",
    standing: "read",
  },
  "jis-posts": {
    title: "A parts maker's Japanese page on JIS designations",
    locator: "polarity letter, prefix S, post diameters; quotes JIS D 5301 of 20 November 2006",
    standing: "read",
  },
  "jis-trade-names": {
    title: "Parts list of an open vehicle-parts interface, low authority",
    locator: "parts/battery.js, commit fc0572c98d978a5b08f4a6578e723a9f8622fd23",
    standing: "read",
  },
  "etn-register": {
    title: "A car-parts page on the European type number",
    address: "https://auto-einbau.de",
    locator: "digits 1 to 6; agrees with the German battery industry association's page",
    standing: "read",
  },
  "number-codes": {
    title: "A Dutch battery supplier's knowledge base",
    locator: "pages on the European type number, DIN numbers, EN 50342 and reserve capacity",
    standing: "read",
  },
  "reserve-article": {
    title: "A Ukrainian battery seller's article on reserve capacity",
    standing: "read",
  },
  "reserve-forum": {
    title: "A sailing forum, thread on reserve capacity",
    locator: "thread 63682, example 325 min, 165 Ah",
    address: "sailnet.com",
    standing: "read",
  },
  "reserve-training": {
    title: "A US battery dealer's training page",
    locator: "reserve capacity to ampere hours",
    standing: "read",
  },
  "reserve-trade-rule": {
    title: "Trade rule for reserve capacity, no citable text",
    standing: "common-practice",
  },
  "peukert-dealer": {
    title: "A battery dealer's page on Peukert's law",
    locator: "exponents by construction",
    standing: "read",
  },
  "peukert-note": {
    title: "A note on Peukert's law",
    locator: "generic exponents, model error about 10 %",
    address: "https://myelectrical.com/notes/entryid/116",
    standing: "read",
  },
  "ratings-choice": {
    title: "Choices of this library on ratings",
    locator:
      "conversion centres and uncertainties set from the published formulas DIN to SAE (1.5 x + 40; 1.7; 1.65), DIN to IEC (1.15; 1.18), EN to SAE (1.0), a reprinted DIN/EN/SAE table, CCA to MCA (1.25 to 1.33); no measured pairs",
    standing: "our-choice",
  },
} as const satisfies Record<string, Source>;
