import { isRefusal } from "crankworthy/numeric";
import {
  type AbilityTable,
  type CapacityProfile,
  capacityPercent,
  coldStartMargin,
  crankingAbilityPercent,
  crankingAbilityTables,
  crankingDemandPercent,
  crankingDemandTables,
  type DemandTable,
  infraredReadingCelsius,
  resistanceAt25Celsius,
} from "crankworthy/temperature";
import type { OutsideRow, OutsideSuite } from "./suite.js";

const sure = (value: number) => ({ value, standardUncertainty: 0 });

function number(result: object): number {
  if (isRefusal(result)) throw new Error("refused");
  return (result as { value: number }).value;
}

function tableRows(
  read: (celsius: number, table: AbilityTable) => object,
  table: AbilityTable | DemandTable,
  points: readonly (readonly [label: string, celsius: number, percent: number])[],
  allowed = 0.001,
): OutsideRow[] {
  return points.map(([label, celsius, published]) => ({
    label: `${table.id}, ${label}`,
    published,
    ours: () => number(read(celsius, table)),
    allowed,
  }));
}

const MAKER_CELSIUS = [0, 5, 10, 15, 20, 25, 30, 35, 40];
const MAKER: readonly (readonly [CapacityProfile, readonly number[]])[] = [
  ["maker-over-60-min", [-16, -12, -10, -6, -1, 0, 3, 4, 5]],
  ["maker-30-to-60-min", [-18, -13, -11, -7, -2, 0, 4, 6, 8]],
  ["maker-under-30-min", [-20, -15, -12, -8, -3, 0, 5, 8, 10]],
];
// Worked out in Python from the balance, not with this library.
const INFRARED: readonly (readonly [celsius: number, emissivity: number, error: number])[] = [
  [-18, 0.85, 4.8458],
  [-18, 0.9, 2.4571],
  [-18, 0.97, -1.003],
  [0, 0.85, 2.3183],
  [0, 0.9, 1.1665],
  [0, 0.97, -0.4708],
  [25, 0.85, -0.5146],
  [25, 0.9, -0.2569],
  [25, 0.97, 0.1026],
];

export const suites: OutsideSuite[] = [
  {
    title: "Cranking ability of the battery against temperature",
    source:
      "US Army TM 5-4210-230-14&P-1, Table 3 (read); TM 5-1185, pages 98 and 99 (read); PS Magazine 696, November 2010, page 10 (read): a third lost at 32 °F, 30 % at -20 °F; SAE/BCI chart (from memory)",
    unit: "% of 80 °F",
    why: "copy check of the printed rows; 0 °F stands at -18 °C, the temperature of the ratings. How well one source reads another stands under the intervals above",
    rows: [
      ...tableRows(crankingAbilityPercent, crankingAbilityTables["workshop-rule"], [
        ["80 °F", 26.7, 100],
        ["32 °F", 0, 65],
        ["0 °F", -18, 40],
      ]),
      ...tableRows(crankingAbilityPercent, crankingAbilityTables.rollers, [
        ["30 °F", -1.1, 65],
        ["0 °F", -18, 40],
      ]),
      ...tableRows(crankingAbilityPercent, crankingAbilityTables.magazine, [
        ["32 °F", 0, 67],
        ["-20 °F", -28.9, 30],
      ]),
      ...tableRows(crankingAbilityPercent, crankingAbilityTables["trade-chart"], [
        ["50 °F", 10, 82],
        ["20 °F", -6.7, 58],
        ["10 °F", -12.2, 50],
      ]),
    ],
  },
  {
    title: "Cranking demand of the engine against temperature",
    source:
      "A workshop's article (read, labels doubtful): 100/155/210/350; a textbook chart (from memory): 100/165/250/350",
    unit: "% of 80 °F",
    why: "copy check of the printed rows",
    rows: [
      ...tableRows(crankingDemandPercent, crankingDemandTables["workshop-article"], [
        ["80 °F", 26.7, 100],
        ["32 °F", 0, 155],
        ["0 °F", -18, 210],
        ["-20 °F", -28.9, 350],
      ]),
      ...tableRows(crankingDemandPercent, crankingDemandTables["textbook-chart"], [
        ["80 °F", 26.7, 100],
        ["32 °F", 0, 165],
        ["0 °F", -18, 250],
        ["-20 °F", -28.9, 350],
      ]),
    ],
  },
  {
    title: "Default demand table against a starter's current",
    source:
      "A vehicle maker's workshop manual 1998 (read): starter of a 1.9 L engine 80-120 A at 5-27 °C, 230-280 A at -20 °C; the table was not made from it",
    unit: "ratio of demand at -20 °C to demand at 16 °C, inside the printed bands or not",
    why: "from the least cold over the greatest warm current (230/120) to the greatest over the least (280/80)",
    rows: [
      {
        label: "1.92 to 3.5",
        published: "inside",
        ours: () => {
          const ratio = number(crankingDemandPercent(-20)) / number(crankingDemandPercent(16));
          return ratio >= 230 / 120 && ratio <= 280 / 80 ? "inside" : String(ratio);
        },
      },
    ],
  },
  {
    title: "Cranking current at a higher end voltage",
    source:
      "Ratings at 7.2 V and at 9.0 V, both 30 s at -18 °C, catalogues (read): 200 DIN = 330 SAE (1.65) and 1.7; their centre 1.70 ±8 % (k = 2, computed)",
    unit: "1",
    why: "the expanded uncertainty (k = 2) stated for the conversion, 8 % of 1.70",
    rows: [
      {
        label: "current at 7.2 V over current at 9.0 V",
        published: 1.7,
        ours: () => 1 / share(9),
        allowed: 0.136,
      },
    ],
  },
  {
    title: "Capacity against temperature, a battery maker's table",
    source:
      "A battery maker's page of questions and answers (read), change against 25 °C in three classes of discharge time",
    unit: "% of 25 °C",
    why: "copy check of the printed rows",
    rows: MAKER.flatMap(([profile, changes]) =>
      changes.map((change, i) => ({
        label: `${profile}, ${MAKER_CELSIUS[i]} °C`,
        published: 100 + change,
        ours: () => number(capacityPercent(MAKER_CELSIUS[i]!, profile)),
        allowed: 1e-9,
      })),
    ),
  },
  {
    title: "Slow discharge: the coefficient of capacity tests against the maker's table",
    source:
      "λ = 0.006/K, IEC and EN capacity tests (from memory), against a battery maker's page (read), over 60 min",
    unit: "% of 25 °C",
    why: "95 % half-width of the stated standard uncertainty of 0.2 % per kelvin away from 25 °C, and half a unit of the maker's whole percent; two independent statements of the same thing",
    rows: [0, 10, 20, 40].map((celsius) => ({
      label: `${celsius} °C`,
      published: 100 + MAKER[0]![1][MAKER_CELSIUS.indexOf(celsius)]!,
      ours: () => number(capacityPercent(celsius, "coefficient-slow")),
      allowed: 1.96 * 0.2 * Math.abs(celsius - 25) + 0.5,
    })),
  },
  {
    title: "Resistance against temperature",
    source: "Textbook figure (from memory): resistance rises by 50 % from +30 to -18 °C",
    unit: "1",
    why: "slope kept to four decimals",
    rows: [
      {
        label: "R(-18 °C) over R(30 °C)",
        published: 1.5,
        ours: () => referred(30) / referred(-18),
        allowed: 0.001,
      },
    ],
  },
  {
    title: "Infrared thermometer set to 0.95, surroundings 20 °C: error by emissivity",
    source:
      "Balance 0.95·Tm⁴ + 0.05·Ts⁴ = ε·T⁴ + (1 − ε)·Ts⁴ in kelvin, worked out in Python (computed); emissivities of plastic from a pyrometer's manual (read)",
    unit: "K",
    why: "half a unit of the last digit kept",
    rows: INFRARED.map(([celsius, emissivity, error]) => ({
      label: `${celsius} °C, ε = ${emissivity}`,
      published: error,
      ours: () => infraredReadingCelsius(celsius, { emissivity, surroundingsCelsius: 20 }) - celsius,
      allowed: 0.00005,
    })),
  },
];

function referred(celsius: number): number {
  return number(resistanceAt25Celsius(sure(1), sure(celsius)));
}

// Share of the rating's current left at a higher end voltage, seen through the ability at −18 °C.
function share(neededVolts: number): number {
  const start = coldStartMargin({
    abilityAmperes: sure(500),
    demandAmperes: sure(100),
    demandReferenceCelsius: 20,
    coldestMorningCelsius: -18,
    neededVolts,
  });
  if (isRefusal(start) || !start.atColdestMorning || isRefusal(start.atColdestMorning))
    throw new Error("refused");
  return start.atColdestMorning.abilityAmperes.value / 500;
}
