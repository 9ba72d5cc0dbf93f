import { isRefusal } from "crankworthy/numeric";
import {
  type BandName,
  type CrankingMinimumName,
  type DropLimitName,
  daysUntilNoStart,
  drawLimits,
  dropLimit,
  judgeCrankingCurrent,
  judgeRipple,
  minimumCrankingVolts,
  RIPPLE_LIMITS,
  type RippleLimitName,
  recogniseSystem,
  regulatedBand,
  SYSTEM_BANDS,
} from "crankworthy/vehicle";
import type { OutsideRow, OutsideSuite } from "./suite.js";

const EXACT = 1e-12;

function value<T extends object>(result: T): Exclude<T, { readonly refused: true }> {
  if (isRefusal(result)) throw new Error(result.reason);
  return result as Exclude<T, { readonly refused: true }>;
}

function drops(rows: readonly (readonly [DropLimitName, number])[]): OutsideRow[] {
  return rows.map(([name, published]) => ({
    label: name,
    published,
    ours: () => dropLimit(name).value,
    allowed: EXACT,
  }));
}

function bands(name: BandName, printed: readonly (readonly [number, number, number])[]): OutsideRow[] {
  return printed.flatMap(([celsius, lower, upper]) => [
    {
      label: `${name}, ${celsius} °C, lower end`,
      published: lower,
      ours: () => value(regulatedBand(celsius, name)).lower.value,
      allowed: EXACT,
    },
    {
      label: `${name}, ${celsius} °C, upper end`,
      published: upper,
      ours: () => value(regulatedBand(celsius, name)).upper.value,
      allowed: EXACT,
    },
  ]);
}

function ripple(name: RippleLimitName, published: number, place: string, method: string): OutsideRow[] {
  const [at, how] = RIPPLE_LIMITS[name];
  const at0 = { value: 0, standardUncertainty: 0 };
  const reading = { rippleVolts: at0, place: at, method: how ?? "meter-on-ac" } as const;
  return [
    {
      label: `${name}, limit`,
      published,
      ours: () => value(judgeRipple(reading, name)).limit.value,
      allowed: EXACT,
    },
    { label: `${name}, place`, published: place, ours: () => at },
    { label: `${name}, method`, published: method, ours: () => how ?? "not printed" },
  ];
}

function standing(
  reserveCapacityMinutes: number,
  cells: readonly (readonly [number, number])[],
): OutsideRow[] {
  const days = (amperes: number) =>
    value(
      daysUntilNoStart({
        reserveCapacityMinutes,
        drawAmperes: { value: amperes, standardUncertainty: 0 },
      }),
    ).bulletinDays;
  return cells.map(([milliamperes, published]) => ({
    label: `RC ${reserveCapacityMinutes} min, ${milliamperes} mA`,
    published,
    ours: () => days(milliamperes / 1000),
    allowed: 0.05 + 1e-9,
  }));
}

function minimum(label: string, celsius: number, published: number, name?: CrankingMinimumName): OutsideRow {
  return {
    label,
    published,
    ours: () => value(minimumCrankingVolts(celsius, name)).value,
    allowed: 1e-9,
  };
}

const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;

function zone(volts: number, published: string): OutsideRow {
  return {
    label: `${volts} V`,
    published,
    ours: () => {
      const found = recogniseSystem({ value: volts, standardUncertainty: 0 });
      return found.certain ? `${found.nominalVolts} V` : "ask";
    },
  };
}

export const suites: OutsideSuite[] = [
  {
    title: "Voltage drop limits while cranking, parts",
    source: "US Army TM 5-3820-256-24-4, pages 449-450 of waterstorage.tpub.com (read)",
    unit: "V",
    why: "copy check: printed limits, no calculation",
    rows: drops([
      ["cable-under-3-ft", 0.1],
      ["cable-3-to-6-ft", 0.2],
      ["mechanical-switch", 0.1],
      ["solenoid", 0.2],
      ["magnetic-switch", 0.3],
      ["connection", 0],
      ["ground-side", 0.2],
    ]),
  },
  {
    title: "Voltage drop limits while cranking, paths",
    source:
      "US Army TM 10-3930-671-24, page 556 of constructionforklifts.tpub.com; vehicle makers' workshop manuals of 1983 and 2005 (all read)",
    unit: "V",
    why: "copy check: printed limits, no calculation",
    rows: [
      ...drops([
        ["positive-cable-to-solenoid", 0.4],
        ["any-branch-per-ampere", 0.2],
        ["battery-post-to-starter", 0.5],
        ["frame-to-ground-post", 0.1],
        ["frame-to-starter", 0.1],
        ["post-to-starter-stud", 0.1],
      ]),
      {
        label: "any-branch-per-ampere, holds at [A]",
        published: 100,
        ours: () => dropLimit("any-branch-per-ampere").atAmperes ?? 0,
        allowed: 0,
      },
    ],
  },
  {
    title: "Voltage drop limits of the charging circuit",
    source:
      "Vehicle makers' workshop manuals of 2018 and 2014, a technician's page (read); vocational texts for the rows at 20 A (from memory)",
    unit: "V",
    why: "copy check: printed limits; the 20 A rows keep the ends of the printed range",
    rows: [
      ...drops([
        ["charging-positive-at-30-a", 0.3],
        ["charging-positive-2014", 0.2],
        ["alternator-frame-to-negative", 0.2],
      ]),
      {
        label: "charging-positive-at-20-a, lower end",
        published: 0.2,
        ours: () => dropLimit("charging-positive-at-20-a").lower,
        allowed: EXACT,
      },
      {
        label: "charging-positive-at-20-a, upper end",
        published: 0.5,
        ours: () => dropLimit("charging-positive-at-20-a").upper,
        allowed: EXACT,
      },
    ],
  },
  {
    title: "Regulated voltage against regulator temperature",
    source:
      "Vehicle makers' workshop manuals, charging pages: two bands of 2018, one of unknown year (read); the envelope is the lowest and highest of the three",
    unit: "V",
    why: "copy check at the printed temperatures; the envelope rows test that two bands bound the third",
    rows: [
      ...bands("first-maker", [
        [-20, 14, 15.1],
        [20, 13.7, 14.6],
        [60, 13.2, 14.3],
        [80, 12.9, 14.1],
      ]),
      ...bands("first-maker-hot-market", [
        [-20, 14.2, 15.4],
        [20, 13.9, 14.9],
        [60, 13.4, 14.6],
        [80, 13.1, 14.5],
      ]),
      ...bands("second-maker", [
        [-20, 14.2, 15.4],
        [20, 14, 15],
        [60, 13.7, 14.9],
        [80, 13.5, 14.7],
      ]),
      ...bands("envelope", [
        [-20, 14, 15.4],
        [20, 13.7, 15],
        [60, 13.2, 14.9],
        [80, 12.9, 14.7],
      ]),
    ],
  },
  {
    title: "Published limits of AC ripple, with place and method",
    source:
      "tomorrowstechnician.com and ricksfreeautorepairadvice.com (50 mV), an oscilloscope training page (90 mV, 1 V spikes), autoedu.info (250 mV), training flash cards (300 mV), a vehicle maker's dealer magazine (500 mV): all read",
    unit: "V",
    why: "copy check: printed limits, no calculation; they differ tenfold, so none is a default",
    rows: [
      ...ripple("posts-50-mv", 0.05, "battery-posts", "meter-on-ac"),
      ...ripple("posts-90-mv", 0.09, "battery-posts", "meter-on-ac"),
      ...ripple("posts-1-v-spikes", 1, "battery-posts", "peak-to-peak"),
      ...ripple("output-250-mv", 0.25, "alternator-output", "not printed"),
      ...ripple("output-300-mv", 0.3, "alternator-output", "not printed"),
      ...ripple("output-500-mv", 0.5, "alternator-output", "not printed"),
    ],
  },
  {
    title: "Days until the engine no longer starts",
    source:
      "A vehicle maker's service bulletin (undated, read): usable Ah = 0.6 RC, no start once 40 % is gone; cells worked out by hand from that rule",
    unit: "d",
    why: "half a unit of the last printed digit, 0.1 d",
    rows: [
      ...standing(90, [
        [20, 45],
        [30, 30],
        [50, 18],
        [85, 10.6],
        [100, 9],
        [500, 1.8],
        [1000, 0.9],
      ]),
      ...standing(100, [
        [20, 50],
        [30, 33.3],
        [50, 20],
        [85, 11.8],
        [100, 10],
        [500, 2],
        [1000, 1],
      ]),
    ],
  },
  {
    title: "Parasitic draw, expected at most",
    source:
      "Vehicle makers' workshop manuals of 2001, 2003, 2005, 2008, 2023 and one of unknown year, vocational modules (autoshop101.com pp. 117-118), a public-domain FAQ of about 2003: all read; a bulletin's 30 mA from memory",
    unit: "mA",
    why: "copy check: printed limits, no calculation",
    rows: (
      [
        ["workshop-2008", 30],
        ["workshop-2003", 25],
        ["vocational", 35],
        ["workshop-undated", 35],
        ["workshop-2001", 50],
        ["workshop-2023", 50],
        ["workshop-2005", 50],
        ["faq", 120],
        ["bulletin", 30],
      ] as const
    ).map(([name, published]) => ({
      label: name,
      published,
      ours: () => 1000 * drawLimits(name).expected.value,
      allowed: 1e-9,
    })),
  },
  {
    title: "Rest and charging bands of 6, 12 and 24 V systems",
    source:
      "1.95-2.15 V per cell at rest and 2.2-2.55 V on charge, times 3, 6 and 12 cells (computed); cranking minima of US Army TM 5-4210-230-14&P-1 Table 5 at 70 °F (read), twice that for 24 V (computed)",
    unit: "V",
    why: "products of numbers with three digits",
    rows: ([6, 12, 24] as const).flatMap((system) => {
      const own = SYSTEM_BANDS[system];
      const cells = system / 2;
      const row = (label: string, published: number, ours: number): OutsideRow => ({
        label: `${system} V, ${label}`,
        published,
        ours: () => ours,
        allowed: 1e-9,
      });
      return [
        row("rest, lower", 1.95 * cells, own.restVolts[0]),
        row("rest, upper", 2.15 * cells, own.restVolts[1]),
        row("charging, lower", 2.2 * cells, own.chargingVolts[0]),
        row("charging, upper", 2.55 * cells, own.chargingVolts[1]),
        row("cranking minimum", { 6: 4.8, 12: 9.6, 24: 19.2 }[system], own.crankingVolts),
      ];
    }),
  },
  {
    title: "System voltage recognised without a label",
    source:
      "Zones chosen by this library around the computed bands (our choice): ask in 2.5-7.7, 7.7-11.7, 15.4-23.4 and above 31 V",
    unit: "",
    why: "text",
    rows: [
      zone(2.4, "ask"),
      zone(6.2, "ask"),
      zone(7.7, "ask"),
      zone(11.69, "ask"),
      zone(11.7, "12 V"),
      zone(12.6, "12 V"),
      zone(15.3, "12 V"),
      zone(15.4, "ask"),
      zone(23.39, "ask"),
      zone(23.4, "24 V"),
      zone(25.2, "24 V"),
      zone(31, "24 V"),
      zone(31.1, "ask"),
      zone(-12.6, "ask"),
    ],
  },
  {
    title: "Least voltage while cranking",
    source:
      "Vehicle makers' workshop manuals of 2004 (9.6 V) and 1998 (9.5 V), a roller maker's manual (10 V), near 70 °F; below it the slope of US Army TM 5-4210-230-14&P-1 Table 5 (read), its use for cranking our choice",
    unit: "V",
    why: "the printed rows in exact °C; the table is two straight lines",
    rows: [
      minimum("2004, 70 °F", celsius(70), 9.6, "proved-battery"),
      minimum("1998, 70 °F", celsius(70), 9.5, "average-while-cranking"),
      minimum("roller, 70 °F", celsius(70), 10, "roller"),
      ...(
        [
          [60, 9.5],
          [50, 9.4],
          [40, 9.3],
          [30, 9.1],
          [20, 8.9],
          [10, 8.7],
          [0, 8.5],
        ] as const
      ).map(([fahrenheit, volts]) => minimum(`default, ${fahrenheit} °F`, celsius(fahrenheit), volts)),
    ],
  },
  {
    title: "Upper starter current, warm engine",
    source: "A textbook page on starter draw, scribd.com document 486200162 (read)",
    unit: "A",
    why: "copy check: printed limits, no calculation",
    rows: (
      [
        ["4-cylinder-warm", 150, 185],
        ["6-cylinder-warm", 160, 200],
        ["8-cylinder-warm", 185, 250],
      ] as const
    ).flatMap(([engine, lower, upper]) => {
      const limit = () =>
        value(judgeCrankingCurrent({ value: 100, standardUncertainty: 0 }, 80, engine)).limit;
      return [
        { label: `${engine}, lower`, published: lower, ours: () => limit().lower, allowed: 0 },
        { label: `${engine}, upper`, published: upper, ours: () => limit().upper, allowed: 0 },
      ];
    }),
  },
];
