import type { Source } from "./source.js";

/** Bibliography of the rooms `verdict` and `numeric`. */
export const verdictSources = {
  "jcgm-106": {
    title: "Evaluation of measurement data: the role of measurement uncertainty in conformity assessment",
    edition: "JCGM 106:2012 (ISO/IEC Guide 98-4)",
    locator: "§7, §8.3, §9",
    address: "bipm.org/en/committees/jc/jcgm/publications",
    standing: "from-memory",
  },
  "jcgm-100": {
    title: "Guide to the expression of uncertainty in measurement",
    edition: "JCGM 100:2008",
    locator: "§4.3.7, §5.1.2",
    address: "bipm.org/en/committees/jc/jcgm/publications",
    standing: "from-memory",
  },
  "tm-9-6140": {
    title: "US Army TM 9-6140-200-14, lead-acid storage batteries",
    edition: "11 Sep 1998",
    locator: "§4-7, p. 4-8, pages 16, 17, 31, 61, 65, 66, 111 of the web edition",
    address: "batterymanuals.tpub.com/TM-9-6140-200-14",
    standing: "read",
  },
  "trade-reject-limits": {
    title:
      "Field habit: below 70-80 % of the rated cranking current weak, below 60 % withdrawn; no standard sets it",
    standing: "common-practice",
  },
  "crankworthy-policy": {
    title: "Decision policy of this library, documented in docs/decisions.md",
    standing: "our-choice",
  },
  "osha-1926-441": {
    title: "29 CFR 1926.441, batteries and battery charging",
    address: "osha.gov",
    standing: "read",
  },
  "tm-9-2350-287": {
    title: "US Army TM 9-2350-287-20-2, acid in the eyes: rinse at least 15 minutes, get care",
    address: "personnelcarrier.tpub.com",
    standing: "read",
  },
  "clamp-order-manuals": {
    title: "Vehicle makers' workshop manuals: grounded cable off first (read), on last (from memory)",
    standing: "from-memory",
  },
  od1002: {
    title: "US Army Ordnance subcourse OD1002",
    locator: "page 60",
    address: "armyordnance.tpub.com/OD1002",
    standing: "read",
  },
  "cfr-173-159": {
    title: "49 CFR 173.159, batteries, wet (UN2794, UN2800)",
    edition: "2002 text",
    standing: "read",
  },
  "workshop-manual-load-test": {
    title:
      "Vehicle makers' workshop manuals (2003, 2004): repeat a low load test after charging before condemning",
    standing: "read",
  },
  "workshop-practice": { title: "Workshop practice", standing: "common-practice" },
  "cfr-1917-157": {
    title: "29 CFR 1917.157, battery charging and changing: jumper leads, ground away from the battery",
    address: "osha.gov",
    standing: "read",
  },
  "spent-battery-rules": {
    title: "US EPA, frequent questions on spent lead-acid batteries: 40 CFR 266 subpart G or 273",
    address: "epa.gov",
    standing: "read",
  },
} as const satisfies Record<string, Source>;
