import type { Source } from "./source.js";

const WORKSHOP = "A vehicle maker's workshop manual";

/** Bibliography of the room `vehicle`. */
export const vehicleSources = {
  "vehicle-defaults": {
    title:
      "Defaults of this library for the checks on the vehicle, chosen where sources differ or are silent",
    standing: "our-choice",
  },
  "tm-5-4210-load-table": {
    title: "US Army TM 5-4210-230-14&P-1",
    locator: "Table 5, minimum voltage under load against temperature",
    address: "firetrucksandequipment.tpub.com/TM-5-4210-230-14P-1",
    standing: "read",
  },
  "tm-5-4210-cranking": {
    title: "US Army TM 5-4210-230-14&P-1",
    locator: "cranking time",
    address: "firetrucksandequipment.tpub.com/TM-5-4210-230-14P-1",
    standing: "read",
  },
  "tm-5-3820": {
    title: "US Army TM 5-3820-256-24-4",
    locator: "pages 449, 450 of the web edition",
    address: "waterstorage.tpub.com/TM-5-3820-256-24-4",
    standing: "read",
  },
  "tm-10-3930-671": {
    title: "US Army TM 10-3930-671-24",
    locator: "page 556 of the web edition",
    address: "constructionforklifts.tpub.com",
    standing: "read",
  },
  "workshop-starting-2004": { title: WORKSHOP, edition: "2004", locator: "starter draw", standing: "read" },
  "workshop-starting-1998": {
    title: WORKSHOP,
    edition: "1998, 1999",
    locator: "starter draw",
    standing: "read",
  },
  "workshop-starting-1983": {
    title: WORKSHOP,
    edition: "1983",
    locator: "starting circuit",
    standing: "read",
  },
  "workshop-truck-2005": {
    title: WORKSHOP,
    edition: "trucks, 2005",
    locator: "starting circuit",
    standing: "read",
  },
  "workshop-truck-1984": { title: WORKSHOP, edition: "trucks, 1984", locator: "charging", standing: "read" },
  "charging-bulletin": {
    title: "A car maker's undated charging bulletin, and another maker's workshop manual of 2003",
    standing: "read",
  },
  "roller-manual": { title: "A roller maker's manual", locator: "cranking voltage", standing: "read" },
  "starter-textbook": {
    title: "A textbook page on starter current draw",
    address: "scribd.com/document/486200162",
    standing: "read",
  },
  "capacity-study-guide": {
    title: "Study-guide text on battery capacity tests",
    address: "freeasestudyguides.com/battery-capacity-tests.html",
    standing: "read",
  },
  "workshop-charging-2018": {
    title: WORKSHOP,
    edition: "2018",
    locator: "regulated voltage; cable drop",
    standing: "read",
  },
  "workshop-charging-undated": {
    title: `${WORKSHOP} (charging pages)`,
    edition: "year unknown",
    standing: "read",
  },
  "workshop-charging-2014": {
    title: WORKSHOP,
    edition: "2014",
    locator: "charging system",
    standing: "read",
  },
  "technician-page": { title: "A technician's page on one make of vehicle (weak)", standing: "read" },
  "vocational-texts": {
    title: "Vocational texts on charging systems, 0.2-0.5 V positive and 0.1-0.2 V ground at 20 A",
    standing: "from-memory",
  },
  "computer-controlled-charging": {
    title: "Vehicle makers' training texts: 12.2 V to above 15.0 V can be normal",
    standing: "from-memory",
  },
  "ripple-trade-pages": {
    title: "Two trade pages on measuring AC ripple",
    address: "tomorrowstechnician.com; ricksfreeautorepairadvice.com",
    standing: "read",
  },
  "ripple-oscilloscope-page": { title: "A page on oscilloscope training (weak)", standing: "read" },
  "ripple-training-page": {
    title: "A training page on alternator ripple",
    address: "autoedu.info",
    standing: "read",
  },
  "ripple-flash-cards": { title: "Training flash cards (weak)", standing: "read" },
  "ripple-dealer-magazine": {
    title: "A vehicle maker's dealer magazine",
    edition: "year unknown",
    standing: "read",
  },
  "workshop-draw-2008": { title: WORKSHOP, edition: "2008", locator: "parasitic draw", standing: "read" },
  "workshop-draw-2003": { title: WORKSHOP, edition: "2003", locator: "parasitic draw", standing: "read" },
  "battery-service-modules": {
    title: "Vocational modules Battery Service",
    locator: "pages 117-118",
    address: "autoshop101.com/trainmodules/batservice",
    standing: "read",
  },
  "workshop-draw-undated": {
    title: `${WORKSHOP} (a fourth model of one set)`,
    edition: "year unknown",
    locator: "parasitic draw",
    standing: "read",
  },
  "workshop-draw-2001": { title: WORKSHOP, edition: "2001", locator: "parasitic draw", standing: "read" },
  "workshop-draw-2023": { title: WORKSHOP, edition: "2023", locator: "parasitic draw", standing: "read" },
  "workshop-draw-2005": {
    title: `${WORKSHOP}, with a training text of the same maker`,
    edition: "2005",
    locator: "parasitic draw",
    standing: "read",
  },
  "car-battery-faq": {
    title: "A car-battery FAQ, declared public domain by its author",
    edition: "about 2003",
    locator: "section 10",
    standing: "read",
  },
  "draw-bulletin": {
    title: "A vehicle maker's undated service bulletin on battery drain",
    standing: "read",
  },
} as const satisfies Record<string, Source>;
