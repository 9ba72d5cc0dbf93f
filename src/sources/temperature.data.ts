import type { Source } from "./source.js";

/** Bibliography of the room `temperature`. */
export const temperatureSources = {
  "tm-5-4210-table-3": {
    title: "US Army TM 5-4210-230-14&P-1, battery power at low temperature",
    locator: "Table 3",
    address: "firetrucksandequipment.tpub.com/TM-5-4210-230-14P-1, page 458 and neighbours",
    standing: "read",
  },
  "tm-5-1185-cranking-power": {
    title: "US Army TM 5-1185, cranking power at low temperature",
    locator: "pages 98 and 99 of the web edition; TM 9-8000 page 289 prints the same",
    address: "constructionrollers.tpub.com/TM-5-1185",
    standing: "read",
  },
  "ps-696-cold": {
    title: "US Army PS Magazine 696 (TB 43-PS-696)",
    edition: "November 2010",
    locator: "page 10",
    address: "nsndepot.com/Library/PSMAG/PS_696",
    standing: "read",
  },
  "trade-chart-ability": {
    title: "SAE and BCI chart of cranking ability against temperature, as handed down in the trade",
    standing: "from-memory",
  },
  "rating-ratio-pages": {
    title: "Ratio of the cranking rating at 0 °C to the rating at -18 °C, 1.25 to 1.33",
    locator: "a marine mechanics' page (1.3 and 1.33) and a US battery dealer's training page (1.25)",
    address: "marinemechanic.com/site/page32.html",
    standing: "read",
  },
  "workshop-article-demand": {
    title: "A workshop's article on starting in the cold; its temperature labels are doubtful",
    standing: "read",
  },
  "textbook-demand": {
    title: "Textbook chart of engine cranking demand against temperature",
    standing: "from-memory",
  },
  "resistance-textbook": {
    title: "Textbook figure: resistance of a lead-acid battery rises by 50 % from +30 to -18 °C",
    standing: "from-memory",
  },
  "acid-resistivity": {
    title:
      "NBS Research Paper RP689 (1934) and Darling, J. Chem. Eng. Data (1964): resistivity of sulfuric acid",
    locator: "conductivity +1.5 to 2 %/K near 25 °C, resistivity about doubled at -18 °C",
    standing: "from-memory",
  },
  "maker-faq-capacity": {
    title: "A battery maker's page of questions and answers: capacity against temperature",
    standing: "read",
  },
  "ieee-485-table-1": {
    title: "IEEE 485, sizing factor for electrolyte temperature",
    locator: "Table 1; its range and reference temperature were read at tech.cepsc.com",
    standing: "from-memory",
  },
  "iec-capacity-coefficient": {
    title: "IEC and EN capacity tests, temperature coefficient of capacity",
    standing: "from-memory",
  },
  "pyrometer-manual": {
    title: "A pyrometer's manual, appendix of emissivities (opaque plastic 0.95 at 8 to 14 µm)",
    locator: "page 65; a second appendix prints 0.85 to 0.95",
    address: "manualsdump.com, document 45041",
    standing: "read",
  },
  "pyrometer-data-sheets": {
    title: "Data sheets of infrared thermometers: accuracy typically ±1.5 to 2 °C or ±1.5 to 2 %",
    standing: "from-memory",
  },
  "grey-body-balance": {
    title: "Radiation balance of an opaque grey surface in uniform surroundings (Stefan-Boltzmann law)",
    standing: "computed",
  },
  "temperature-choice": {
    title: "Defaults and uncertainties chosen by this library, reasons beside the code",
    standing: "our-choice",
  },
} as const satisfies Record<string, Source>;
