import { loadTestLimitVolts } from "crankworthy/bench";
import {
  acidFills,
  type Chemistry,
  chargeFromGravity,
  chargeFromRestVoltage,
  freezingPointCelsius,
} from "crankworthy/charge-state";
import { decodeJisType } from "crankworthy/label-codes";
import { type Estimate, type Interval, interval95, isRefusal, type Refusal } from "crankworthy/numeric";
import { convertRating, type RatingStandard, reserveCapacityMinutes } from "crankworthy/ratings";
import { crankingAbilityPercent, crankingDemandPercent } from "crankworthy/temperature";

// How often does a stated 95 % interval hold the value that somebody else gives? An interval that holds everything because
// it is huge is as wrong as a narrow one: the mean width stands beside the share.

export interface CoverageCase {
  readonly label: string;
  readonly others: number;
  readonly ours: () => Interval;
}

export interface CoverageSuite {
  readonly quantity: string;
  readonly source: string;
  /** Unit of the width; `%` means relative to the middle of the interval. */
  readonly unit: string;
  /** Bounds the share must keep to, and why they are what they are. */
  readonly share: readonly [least: number, most: number];
  readonly remark: string;
  readonly cases: readonly CoverageCase[];
}

function value<T>(result: T): Exclude<T, Refusal> {
  if (isRefusal(result)) throw new Error(`refused: ${result.code}`);
  return result as Exclude<T, Refusal>;
}

const converted = (from: RatingStandard, to: RatingStandard, amperes: number) => (): Interval =>
  interval95(value(convertRating({ amperes: { value: amperes, standardUncertainty: 0 }, from, to })));

const DIN = "din-43539-2";
const EN = "en-50342-1:2015";
const SAE = "sae-j537";

// DIN, EN, SAE columns of a reprinted table (Russian-language car press, from memory).
const REPRINTED = [
  [170, 280, 300],
  [200, 330, 350],
  [255, 420, 450],
  [280, 480, 500],
  [310, 520, 550],
  [335, 540, 600],
  [395, 640, 700],
  [420, 680, 750],
] as const;

function chargeInterval(
  volts: number,
  chemistry: Chemistry,
  hoursAtRest = 24,
  lastEvent: "discharge" | "charge" = "discharge",
) {
  return (): Interval => {
    const reading = value(
      chargeFromRestVoltage({
        volts,
        voltsStandardUncertainty: 0.01,
        chemistry,
        temperatureCelsius: 25,
        temperatureStandardUncertaintyKelvin: 2,
        rest: { lastEvent, hoursAtRest },
      }),
    );
    return interval95(reading.stateOfCharge);
  };
}

function chargeTable(
  name: string,
  chemistry: Chemistry,
  volts: readonly (number | undefined)[],
): CoverageCase[] {
  return volts.flatMap((one, i) =>
    one === undefined
      ? []
      : [{ label: `${name}, ${100 - 25 * i} %`, others: 1 - 0.25 * i, ours: chargeInterval(one, chemistry) }],
  );
}

function gravityTable(
  name: string,
  acid: keyof typeof acidFills,
  rows: readonly (readonly [charge: number, gravity: number])[],
): CoverageCase[] {
  return rows.map(([charge, gravity]) => ({
    label: `${name}, ${charge} %`,
    others: charge / 100,
    ours: () =>
      interval95(
        value(
          chargeFromGravity({
            cellReadings: [gravity, gravity, gravity, gravity, gravity, gravity],
            chemistry: "flooded",
            acid: acidFills[acid],
            temperatureCelsius: 26.7,
          }),
        ).stateOfCharge,
      ),
  }));
}

const spread = (estimate: Estimate | Refusal) => (): Interval => interval95(value(estimate) as Estimate);

export const coverageSuites: CoverageSuite[] = [
  {
    quantity: "SAE from DIN cranking current",
    source: "UK battery sheet 1.5·DIN + 40; German dealer 1.7·DIN and 330/200; reprinted table (from memory)",
    unit: "%",
    share: [0.9, 1],
    remark:
      "U = 8 % was set to hold these lineages, so the share is no independent proof; the spread of the sources is ±5 %",
    cases: [
      ...[150, 200, 250, 300, 350, 400, 450].flatMap((din) => [
        { label: `sheet, DIN ${din}`, others: 1.5 * din + 40, ours: converted(DIN, SAE, din) },
        { label: `dealer, DIN ${din}`, others: 1.7 * din, ours: converted(DIN, SAE, din) },
      ]),
      { label: "dealer's example, DIN 200", others: 330, ours: converted(DIN, SAE, 200) },
      ...REPRINTED.map(([din, , sae]) => ({
        label: `table, DIN ${din}`,
        others: sae,
        ours: converted(DIN, SAE, din),
      })),
    ],
  },
  {
    quantity: "SAE from EN cranking current",
    source: "glossary of a price-comparison site (1.0); reprinted table (from memory)",
    unit: "%",
    share: [0.9, 1],
    remark: "even the direction is disputed, so U = 10 % (k = 2)",
    cases: [
      { label: "nearly the same number", others: 500, ours: converted(EN, SAE, 500) },
      ...REPRINTED.map(([, en, sae]) => ({
        label: `table, EN ${en}`,
        others: sae,
        ours: converted(EN, SAE, en),
      })),
    ],
  },
  {
    quantity: "CA and MCA from SAE",
    source: "marine mechanic's page (1.3 and one third higher), dealer's training page (1.25)",
    unit: "%",
    share: [0.9, 1],
    remark: "three printed factors, two lineages",
    cases: [1.25, 1.3, 4 / 3].map((factor) => ({
      label: `× ${factor.toFixed(2)}`,
      others: 600 * factor,
      ours: converted(SAE, "bci-mca", 600),
    })),
  },
  {
    quantity: "CCA of a JIS type",
    source: "public shop lists of several makers (read), against the estimate from the printed type",
    unit: "%",
    share: [0.9, 1],
    remark: "the interval −15/+30 % was set from the same kind of lists",
    cases: (
      [
        ["55B24L", 320],
        ["55B24L", 380],
        ["55B24L", 480],
        ["60B24L", 480],
        ["65B24L", 480],
        ["75D23L", 430],
        ["75D23L", 470],
        ["75D23L", 550],
        ["75D23L", 580],
        ["95D31L", 550],
      ] as const
    ).map(([type, amperes]) => ({
      label: `${type} ${amperes} A`,
      others: amperes,
      ours: () => value(decodeJisType(type)).estimatedRating!.interval,
    })),
  },
  {
    quantity: "Reserve capacity from C20",
    source:
      "three AGM labels (public listings, read); Dutch supplier's 0.83·C20^1.17; Ukrainian article's 1.63·C20 at 45-80 Ah",
    unit: "%",
    share: [0.85, 1],
    remark: "flooded ±8 %, valve-regulated ±15 % (k = 2); the AGM labels all lie on the low side",
    cases: [
      ...(
        [
          [165, 325],
          [198, 380],
          [100, 170],
        ] as const
      ).map(([ah, minutes]) => ({
        label: `AGM label ${ah} Ah`,
        others: minutes,
        ours: spread(reserveCapacityMinutes({ capacityAmpereHours: ah, construction: "valve-regulated" })),
      })),
      ...[36, 55, 70, 95, 180].map((ah) => ({
        label: `supplier, ${ah} Ah`,
        others: 0.83 * ah ** 1.17,
        ours: spread(reserveCapacityMinutes({ capacityAmpereHours: ah, construction: "flooded" })),
      })),
      ...[45, 60, 80].map((ah) => ({
        label: `article, ${ah} Ah`,
        others: 1.63 * ah,
        ours: spread(reserveCapacityMinutes({ capacityAmpereHours: ah, construction: "flooded" })),
      })),
    ],
  },
  {
    quantity: "State of charge from rest voltage, published tables",
    source:
      "US Army TM 5-3805-262-20; a US battery FAQ table at 80 °F; a battery maker's FAQ by type (flooded, AGM, gel); an off-road vehicle manual (AGM)",
    unit: "1",
    share: [0.85, 1],
    remark:
      "flooded tables are mostly the EMF of the gravity column and no independent evidence; the 12.6/12.4/12.2 family reads low; half the scale is what one rest voltage leaves open",
    cases: [
      ...chargeTable("Army", "flooded", [12.6, 12.4, 12.2, 12.0, 11.7]),
      ...chargeTable("FAQ", "flooded", [12.65, 12.45, 12.24, 12.06, 11.89]),
      ...chargeTable("maker, flooded", "flooded", [12.7, 12.4, 12.2, 12.0, 11.8]),
      ...chargeTable("maker, AGM", "agm", [12.85, 12.6, 12.3, 12.0, 11.8]),
      ...chargeTable("manual, AGM", "agm", [undefined, 12.6, 12.3, 12.0]),
      ...chargeTable("maker, gel", "gel", [12.9, 12.65, 12.35, 12.0, 11.8]),
      ...chargeTable("FAQ, gel", "gel", [12.8, 12.6, 12.4, 12.0, 11.8]),
    ],
  },
  {
    quantity: "State of charge from rest voltage, four measured modules, type taken as unknown",
    source:
      "open vehicle-simulator data, tested 1998-2000 at about 22 °C (geraldo-reboucas/adv-vehicle-sim, data/energy_storage, commit b3777b3c), linear interpolation",
    unit: "1",
    share: [0.9, 1],
    remark:
      "the one miss is the 18 Ah module of very strong acid at 12.6 V; the outlier module (28 Ah) is left out and reported in the tests",
    cases: (
      [
        [12.0, [0.242, 0.1, 0.25, 0.2]],
        [12.2, [0.364, 0.2, 0.387, 0.4]],
        [12.4, [0.49, 0.333, 0.515, 0.6]],
        [12.6, [0.625, 0.467, 0.675, 0.733]],
      ] as const
    ).flatMap(([volts, charges]) =>
      charges.map((charge, i) => ({
        label: `${["16 Ah", "18 Ah", "91 Ah", "104 Ah"][i]} at ${volts} V`,
        others: charge,
        ours: chargeInterval(volts, "unknown"),
      })),
    ),
  },
  {
    quantity: "State of charge at the end of five full discharges, 17 Ah AGM",
    source:
      "open telemetry (valentinsulzer/faster-lead-acid, commit 92ad5793, BSD-3-Clause): 1 − charge removed / most ever removed",
    unit: "1",
    share: [1, 1],
    remark:
      "below “empty” the interval widens by the excursion itself, because how far acid can be used up is the maker's choice",
    cases: (
      [
        [11.445, 19.74, 6000],
        [11.383, 19.84, 5400],
        [11.232, 19.28, 4881],
        [11.097, 18.97, 4800],
        [10.981, 18.46, 4200],
      ] as const
    ).map(([volts, removed, seconds]) => ({
      label: `${removed} Ah removed`,
      others: 1 - removed / 19.84,
      ours: chargeInterval(volts, "agm", seconds / 3600),
    })),
  },
  {
    quantity: "State of charge from gravity, published tables",
    source:
      "US Army TM 5-4210-230 table 2; TM 5-1185 table II; a tractor maker's manual (three fills); a Japanese tractor manual",
    unit: "1",
    share: [0.9, 1],
    remark:
      "each table against the fill it states; empty gravities differ by 0.08 between them, hence u = 0.020",
    cases: [
      ...gravityTable("TM 5-4210", "temperate", [
        [100, 1.265],
        [75, 1.225],
        [50, 1.19],
        [25, 1.155],
        [0, 1.12],
      ]),
      ...gravityTable("TM 5-1185", "calcium", [
        [100, 1.28],
        [75, 1.25],
        [50, 1.22],
        [25, 1.19],
      ]),
      ...gravityTable("tractor, tropical", "tropical", [
        [100, 1.225],
        [75, 1.18],
        [50, 1.135],
      ]),
    ],
  },
  {
    quantity: "Freezing point of the acid",
    source: "US Army TM 5-4210-230, TM 5-1185, TM 10-6140-200-14; an off-road vehicle manual",
    unit: "K",
    share: [0.85, 1],
    remark: "the manuals round to whole °F and mostly lie 1-2 K on the safe side",
    cases: (
      [
        [1.225, -37.2],
        [1.2, -26.7],
        [1.19, -26.1],
        [1.16, -17.2],
        [1.155, -15],
        [1.12, -9.4],
        [1.1, -7.2],
        [1.1, -7.8],
        [1.05, -2.8],
      ] as const
    ).map(([gravity, celsius]) => ({
      label: `gravity ${gravity}`,
      others: celsius,
      ours: () => interval95(value(freezingPointCelsius({ relativeDensity25: gravity })).celsius),
    })),
  },
  {
    quantity: "Cranking ability against temperature, % of 80 °F",
    source: "PS Magazine 696; a vehicle-workshop article; SAE/BCI chart (from memory)",
    unit: "points",
    share: [0.8, 1],
    remark:
      "sources other than the 100/65/40 rule; the miss is 10 °C, between two printed rows, where a chart from memory lies 4 points above the straight line",
    cases: (
      [
        [0, 67],
        [-18, 45],
        [10, 82],
        [-6.7, 58],
        [-12.2, 50],
      ] as const
    ).map(([celsius, percent]) => ({
      label: `${celsius} °C`,
      others: percent,
      ours: spread(crankingAbilityPercent(celsius)),
    })),
  },
  {
    quantity: "Engine's cranking demand against temperature, % of 80 °F",
    source: "two workshops' articles (read); textbook chart (from memory)",
    unit: "points",
    share: [0.8, 1],
    remark:
      "wide because the sources contradict each other; oil grade decides and none is told: a table to be replaced by the caller's own",
    cases: (
      [
        [0, 155],
        [0, 165],
        [-17.8, 210],
        [-17.8, 250],
        [-20, 200],
        [-27, 300],
      ] as const
    ).map(([celsius, percent]) => ({
      label: `${celsius} °C, ${percent} %`,
      others: percent,
      ours: spread(crankingDemandPercent(celsius)),
    })),
  },
  {
    quantity: "Load-test limit at 15 s",
    source: "public-domain battery FAQ (about 2003); vehicle makers' workshop manuals of 2004, 2005, 2006",
    unit: "V",
    share: [0.8, 1],
    remark: "at −18 °C one manual prints 8.0 V and its next edition 8.5 V: u = 0.29 V there holds both",
    cases: (
      [
        [21.1, 9.6],
        [15.6, 9.5],
        [10, 9.4],
        [4.4, 9.3],
        [-1.1, 9.1],
        [-6.7, 8.9],
        [-12.2, 8.7],
        [26.7, 9.7],
        [0, 9.1],
        [-17.8, 8.5],
        [-17.8, 8.0],
      ] as const
    ).map(([celsius, volts]) => ({
      label: `${celsius} °C, ${volts} V`,
      others: volts,
      ours: spread(loadTestLimitVolts({ value: celsius, standardUncertainty: 0 })),
    })),
  },
];

export interface CoverageResult {
  readonly inside: number;
  readonly missed: readonly string[];
  /** Mean full width of the interval in `unit`. */
  readonly meanWidth: number;
}

/** Counts how many of the others' values our intervals hold, and how wide they are. */
export function coverageOf(suite: CoverageSuite): CoverageResult {
  const missed: string[] = [];
  let width = 0;
  for (const { label, others, ours } of suite.cases) {
    const { lower, upper } = ours();
    if (!(others >= lower && others <= upper)) missed.push(label);
    width += suite.unit === "%" ? (200 * (upper - lower)) / (upper + lower) : upper - lower;
  }
  return { inside: suite.cases.length - missed.length, missed, meanWidth: width / suite.cases.length };
}
