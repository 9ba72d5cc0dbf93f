import type { Source } from "./source.js";

/** Bibliography of the room `bench`. */
export const benchSources = {
  "tm-5-4210-table-5": {
    title: "US Army TM 5-4210-230-14&P-1, minimum voltage under load against temperature",
    locator: "Table 5; the 12 V column also stands in three vehicle makers' workshop manuals",
    address: "firetrucksandequipment.tpub.com/TM-5-4210-230-14P-1, pages 458 to 465",
    standing: "read",
  },
  "car-battery-faq-2003": {
    title: "A car-battery FAQ declared public domain by its author: 9.7 V at 80 °F, ±0.1 V per 10 °F",
    edition: "about 2003",
    standing: "read",
  },
  "workshop-load-2004": {
    title:
      "A vehicle maker's workshop manual, load test table in °C (its 18 °C is probably a misprint for 16)",
    edition: "2004",
    standing: "read",
  },
  "workshop-load-2005": {
    title: "A vehicle maker's workshop manual, load test table ending with 8.0 V at -18 °C",
    edition: "2005",
    standing: "read",
  },
  "workshop-load-2006": {
    title: "The same vehicle maker's workshop manual, load test table with 8.5 V at -18 °C, colder 8.0 V",
    edition: "2006",
    standing: "read",
  },
  "workshop-load-fixed": {
    title: "A vehicle maker's workshop manual: test only at 15 to 38 °C, limit 9.6 V",
    standing: "read",
  },
  "workshop-load-10.5": {
    title:
      "A page of a vehicle maker's manual set: above 10.5 V at three times the capacity; another page says 9.6 V",
    standing: "read",
  },
  "load-half-rating": {
    title:
      "Load of half the cold-cranking rating for 15 s: vocational study text and several workshop manuals",
    address: "freeasestudyguides.com/battery-capacity-tests.html",
    standing: "read",
  },
  "load-three-capacity": {
    title: "Load of three times the capacity for 15 s: a marine engine maker's workshop manual and others",
    edition: "1994",
    standing: "read",
  },
  "charge-before-load": {
    title:
      "Charge of at least 75 % before a load test: a car-battery FAQ; as 12.4 V in US Army TM 5-3805-262-20",
    address: "constructionloader.tpub.com/TM-5-3805-262-20, page 608",
    standing: "read",
  },
  "tm-9-6140-spread": {
    title: "US Army TM 9-6140-200-14, cell gravities of a fully charged battery",
    edition: "11 September 1998",
    locator: "paragraph 4-7; PS Magazine 696 prints the same, and no cell below 1.100",
    address: "batterymanuals.tpub.com/TM-9-6140-200-14",
    standing: "read",
  },
  "marine-manual-spread": {
    title: "A marine engine maker's workshop manual, cell gravities",
    edition: "1994",
    standing: "read",
  },
  "tm-5-3805-281-spread": {
    title: "US Army TM 5-3805-281-24-2, cell gravities; mean of at least 1.225 after charging",
    address: "constructionexcavators.tpub.com/TM-5-3805-281-24-2, page 527",
    standing: "read",
  },
  "tm-5-3740-cell": {
    title: "US Army TM 5-3740-214-14, cell gravities: 0.050 between cells, no cell below 1.150",
    address: "chemical-biological.tpub.com/TM-5-3740-214-14, page 419",
    standing: "read",
  },
  "cell-voltages": {
    title: "Rest voltage of a battery with missing cells, from 1.95 V (empty) to 2.13 V (full) per cell",
    standing: "computed",
  },
  "charging-logbook": {
    title:
      "A vehicle battery page: charging voltages at 95, 75 and 0 °F, hours = 1.6 x Ah x charge missing / A",
    address: "logwell.com/tech/shdwe/vehicle_battery.html",
    standing: "read",
  },
  "agm-seller": {
    title: "A battery seller's page: AGM 14.4 to 14.7 V, 5 mV/K per cell",
    standing: "read",
  },
  "auto-charging-notes": {
    title: "Notes on charging: gel 14.1 to 14.4 V, not above; gel at 5 to 10 % of the capacity",
    address: "donsnotes.com/tech/charging-auto.html",
    standing: "read",
  },
  "agm-receptacle": {
    title: "US Army PS Magazine 665: AGM at 14.2 to 14.7 V, above 15.0 V look every 15 min",
    edition: "April 2008",
    standing: "read",
  },
  "reserve-charging-table": {
    title: "A battery maker's page, hours and amperes of a charge from flat by reserve capacity, after BCI",
    standing: "read",
  },
  "charger-manual": {
    title: "A charger's manual: Ah = RC/2 + 15.5, hours = 1.25 x Ah x charge missing / A",
    locator: "page 14",
    address: "manualsdump.com, document 282408",
    standing: "read",
  },
  "tm-5-4210-charging": {
    title: "US Army TM 5-4210-230-14&P-1 and TM 5-3820-256-24-4, slow charging",
    locator:
      "up to 24 h; full when unchanged over three hourly readings; deeply discharged: slow, two to three days",
    address: "firetrucksandequipment.tpub.com/TM-5-4210-230-14P-1; waterstorage.tpub.com/TM-5-3820-256-24-4",
    standing: "read",
  },
  "trade-charge-current": {
    title: "Charging current by type in % of the 20 h capacity, trade practice",
    standing: "from-memory",
  },
  "tractor-charging": {
    title: "A tractor maker's operator manual: at most 15.5 V at the terminals while charging",
    standing: "read",
  },
  "workshop-charge-stop": {
    title: "A vehicle maker's workshop manual: stop above 60 °C electrolyte, at most 50 A",
    edition: "2002",
    locator: "others read: 51.7 °C (US Army TM 5-3820-256-24-4, NAVEDTRA 14113), 43 °C (a tractor manual)",
    standing: "read",
  },
  "workshop-deep-discharge": {
    title:
      "A vehicle maker's workshop manual, charging below 11 V: judge after 4, 8 or 16 h by charger voltage",
    edition: "1998 and 2000",
    standing: "read",
  },
  "frozen-battery": {
    title:
      "US Army Ordnance subcourse OD1002 and two workshop manuals: no charging, testing or jump start when frozen",
    address: "armyordnance.tpub.com/OD1002, page 60",
    standing: "read",
  },
  "polarity-practice": {
    title: "Reversed battery: verify the leads, then take out of service; two web pages, weak",
    standing: "our-choice",
  },
  "workshop-three-minute": {
    title: "A vehicle maker's workshop manual, three-minute charge: 40 A, at most 15.5 V",
    standing: "read",
  },
  "workshop-charge-acceptance": {
    title: "A vehicle maker's workshop manual: after 5 min the current must exceed 10 % of the rated Ah",
    edition: "2015",
    standing: "read",
  },
  "en-62485-stationary": {
    title:
      "EN 50272-2 / EN IEC 62485-2, air flow for stationary batteries, as given by an engineering office",
    address: "studiotecnicofama.it",
    standing: "secondary",
  },
  "en-62485-gas-currents": {
    title: "EN 50272-2:2001, Table 1, currents that produce gas",
    standing: "from-memory",
  },
  "en-62485-workshop": {
    title:
      "EN 50272-3 / EN IEC 62485-3, air flow while charging, as quoted on a battery maker's technical page",
    standing: "secondary",
  },
  "bench-choice": {
    title: "Defaults and uncertainties chosen by this library, reasons beside the code",
    standing: "our-choice",
  },
} as const satisfies Record<string, Source>;
