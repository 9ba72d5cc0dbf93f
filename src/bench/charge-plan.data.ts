import type { SourceId, Standing } from "../sources/index.js";

/** Kinds of battery that charge differently. */
export type ChargeChemistry = "flooded" | "flooded-calcium" | "efb" | "agm" | "gel";

/** Where a figure comes from. With `our-choice` the source is the one the choice leans on. */
export type FigureFrom = readonly [source: SourceId, standing: Standing];

/** Charging figures of one kind. */
export interface ChargeProfile {
  /** End-of-charge voltage: temperature [°C], volts [V]; straight lines between. */
  readonly volts: readonly (readonly [temperatureCelsius: number, volts: number])[];
  /** Half the spread of the sources at 25 °C, and per kelvin away from it [V]. */
  readonly voltsHalfWidth: number;
  readonly voltsHalfWidthPerKelvin: number;
  /** Never above this voltage [V]. */
  readonly ceilingVolts: number;
  /** Current as a share of the 20 h capacity: slow from..to, standard from..to. */
  readonly slow: readonly [number, number];
  readonly standard: readonly [number, number];
  /** Of the end-of-charge voltage. */
  readonly source: SourceId;
  readonly standing: Standing;
  readonly ceilingFrom: FigureFrom;
  readonly slowFrom: FigureFrom;
  readonly standardFrom: FigureFrom;
}

// 5 to 7 %: a battery maker prints 4 A for reserve capacities of 80 to 125 min (56 to 78 Ah), 6 A for 170 to 250 min.
const SLOW_BY_RESERVE = ["reserve-charging-table", "our-choice"] as const;
const STANDARD_OF_TRADE = ["trade-charge-current", "from-memory"] as const;

const FLOODED = {
  voltsHalfWidth: 0.2,
  voltsHalfWidthPerKelvin: 0.006,
  ceilingVolts: 15.5,
  ceilingFrom: ["tractor-charging", "read"],
  slow: [0.05, 0.07],
  slowFrom: SLOW_BY_RESERVE,
  standard: [0.1, 0.13],
  standardFrom: STANDARD_OF_TRADE,
} as const;
const CALCIUM = {
  // 0, 75 and 95 °F as printed; 50 °C continues the line (our choice).
  volts: [
    [-17.8, 15.4],
    [23.9, 14.7],
    [35, 14.5],
    [50, 14.23],
  ],
  ...FLOODED,
} as const;

/**
 * End-of-charge voltage and current by kind. Flooded and calcium voltages as printed on one page for 95, 75 and 0 °F;
 * EFB is charged as calcium (our choice, no source). AGM and gel: the middle of the printed band at 25 °C, 4 mV/K per
 * cell (the sources print 3 for float and 5), and the disagreement as width: the law is our choice over read bands.
 */
export const chargeProfiles = {
  flooded: {
    volts: [
      [-17.8, 15.1],
      [23.9, 14.4],
      [35, 14.2],
      [50, 13.93],
    ],
    ...FLOODED,
    source: "charging-logbook",
    standing: "read",
  },
  "flooded-calcium": { ...CALCIUM, source: "charging-logbook", standing: "read" },
  efb: { ...CALCIUM, source: "bench-choice", standing: "our-choice" },
  agm: {
    volts: [
      [-18, 15.58],
      [25, 14.55],
      [50, 13.95],
    ],
    voltsHalfWidth: 0.15,
    voltsHalfWidthPerKelvin: 0.006,
    // Above 15.0 V the source only watches the battery more closely.
    ceilingVolts: 15,
    ceilingFrom: ["agm-receptacle", "our-choice"],
    slow: [0.05, 0.1],
    slowFrom: ["bench-choice", "our-choice"],
    standard: [0.2, 0.35],
    standardFrom: STANDARD_OF_TRADE,
    source: "agm-seller",
    standing: "our-choice",
  },
  gel: {
    volts: [
      [-18, 15.28],
      [25, 14.25],
      [50, 13.65],
    ],
    voltsHalfWidth: 0.15,
    voltsHalfWidthPerKelvin: 0.006,
    ceilingVolts: 14.4,
    ceilingFrom: ["auto-charging-notes", "read"],
    slow: [0.03, 0.05],
    slowFrom: SLOW_BY_RESERVE,
    standard: [0.05, 0.1],
    standardFrom: ["auto-charging-notes", "read"],
    source: "auto-charging-notes",
    standing: "our-choice",
  },
} as const satisfies Record<ChargeChemistry, ChargeProfile>;

/** Largest charging current [A], whatever the capacity. */
export const MOST_AMPERES = 50;

/**
 * Ampere-hours to put in per ampere-hour missing: two sources, by the taper of the charger.
 */
export const chargeFactorRange = {
  lower: 1.25,
  upper: 1.6,
  lowerSource: "charger-manual",
  upperSource: "charging-logbook",
  standing: "read",
} as const satisfies { lowerSource: SourceId; upperSource: SourceId; [field: string]: number | string };

/** Hours on the charger after which a deeply discharged battery may be judged, by what the charger can give. */
export const deepDischargeJudgement = {
  /** Below this rested voltage: slow only, may take two to three days [V]. */
  belowVolts: 10,
  judgeAfterHours: 48,
  source: "tm-5-4210-charging",
  standing: "read",
  /** Below this voltage: current still too small to measure after these hours [V, charger V, h]. */
  noCurrentBelowVolts: 11,
  noCurrentHours: [
    [16, 4],
    [14, 8],
    [0, 16],
  ],
  noCurrentSource: "workshop-deep-discharge",
} as const satisfies {
  source: SourceId;
  noCurrentSource: SourceId;
  standing: Standing;
  [field: string]: unknown;
};

/** Where charging ends or must stop: what, value, unit, lowest and highest of the sources. */
export interface StopCriterion {
  readonly code:
    | "electrolyte-temperature"
    | "terminal-voltage"
    | "equal-hourly-readings"
    | "longest-slow-charge"
    | "charge-current";
  readonly value: number;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly source: SourceId;
  readonly standing: Standing;
}

type StopRow = readonly [StopCriterion["code"], number, string, number, number, SourceId, Standing];

/** Criteria for ending a charge, whichever comes first; `equal-hourly-readings` of gravity or current means full. */
export const chargeStopCriteria: readonly StopCriterion[] = /* @__PURE__ */ (
  [
    // 43 °C a tractor manual, 52 °C US Army and Navy, 60 °C a workshop manual, all read.
    ["electrolyte-temperature", 50, "°C", 43, 60, "workshop-charge-stop", "our-choice"],
    ["terminal-voltage", 15.5, "V", 15.5, 15.5, "tractor-charging", "read"],
    ["equal-hourly-readings", 3, "1", 3, 3, "tm-5-4210-charging", "read"],
    ["longest-slow-charge", 24, "h", 24, 24, "tm-5-4210-charging", "read"],
    ["charge-current", MOST_AMPERES, "A", 50, 50, "workshop-charge-stop", "read"],
  ] satisfies readonly StopRow[]
).map(([code, value, unit, from, to, source, standing]) => ({
  code,
  value,
  unit,
  from,
  to,
  source,
  standing,
}));

/** Conditions in which a battery must not be charged, with source and standing. */
export const chargingForbidden = {
  frozen: ["frozen-battery", "read"],
  leaking: ["workshop-practice", "from-memory"],
  cracked: ["workshop-practice", "from-memory"],
  swollen: ["workshop-practice", "from-memory"],
  "shorted-cell": ["workshop-practice", "from-memory"],
  "very-low-electrolyte": ["workshop-practice", "from-memory"],
  "sulfur-smell": ["workshop-practice", "from-memory"],
  "reversed-polarity": ["polarity-practice", "our-choice"],
} as const satisfies Record<string, readonly [SourceId, Standing]>;
