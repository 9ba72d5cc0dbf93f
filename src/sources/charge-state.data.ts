import type { Source } from "./source.js";

/** Bibliography of the room `charge-state`. */
export const chargeStateSources = {
  "carma-sulfate": {
    title:
      "Sulfuric acid density table of an open aerosol model; it names International Critical Tables (1928)",
    edition: "commit 4cbe6bbf",
    locator: "source/base/sulfate_utils.F90",
    address: "github.com/ESCOMP/CARMA",
    standing: "read",
  },
  "crc-solutions": {
    title:
      "CRC Handbook of Chemistry and Physics, concentrative properties of aqueous solutions, sulfuric acid",
    edition: "102nd ed., as transcribed at commit b43fe5ad",
    locator: "src/CRC Solution Properties.txt",
    address: "github.com/amosonabike/CRC-Solution-Properties-",
    standing: "read",
  },
  "bode-1977": {
    title: "H. Bode, Lead-Acid Batteries: cell voltage against acid molality, full digits",
    edition: "1977",
    locator: "fit in log10 of molality; a rounded form was read in an open battery modelling package",
    address: "github.com/pybamm-team/PyBaMM, Sulzer2019.py, commit 7c9f5bd8",
    standing: "from-memory",
  },
  "harned-hamer-1935": {
    title: "H. S. Harned, W. J. Hamer, J. Am. Chem. Soc. 57, 33",
    edition: "1935",
    locator: "E = a + b·t + c·t², 0-60 °C",
    standing: "from-memory",
  },
  "gu-wang-liaw-1997": {
    title: "Gu, Wang and Liaw, acid conductivity, as in an open battery modelling package, parameter file",
    edition: "1997",
    locator: "conductivity function, citing Tiedemann and Newman 1979",
    address: "github.com/pybamm-team/PyBaMM, Sulzer2019.py, commit 7c9f5bd8",
    standing: "secondary",
  },
  "tm-5-4210-230": {
    title: "US Army TM 5-4210-230-14&P-1, fire truck",
    locator: "Table 2, Fig. 6-7, page 458 of the web edition",
    address: "firetrucksandequipment.tpub.com",
    standing: "read",
  },
  "tm-5-1185": {
    title: "US Army TM 5-1185, road roller",
    locator: "Tables II, IV, pages 98, 99 of the web edition",
    address: "constructionrollers.tpub.com/TM-5-1185",
    standing: "read",
  },
  "tractor-manual": {
    title: "A tractor maker's operator manual, acid fills by climate",
    locator: "p. 17",
    standing: "read",
  },
  "japanese-tractor-manual": {
    title: "A Japanese tractor and mower maker's manual, gravity at 20 °C",
    locator: "p. 83",
    standing: "read",
  },
  "navedtra-14113": {
    title: "NAVEDTRA 14113, hydrometer correction",
    locator: "page 294 of the web edition",
    address: "navyaviation.tpub.com/14113",
    standing: "read",
  },
  "encyclopedia-americana": {
    title: "Encyclopedia Americana (historic), hydrometer correction at 70 °F",
    address: "gluedideas.com",
    standing: "read",
  },
  "battery-maker-lexicon": {
    title: "A battery maker's page of questions and answers, rest voltages by type",
    standing: "read",
  },
  "charge-state-defaults": {
    title: "Curve parameters and uncertainties of this library, reasons beside the numbers",
    locator: "src/charge-state/*.data.ts",
    standing: "our-choice",
  },
} as const satisfies Record<string, Source>;
