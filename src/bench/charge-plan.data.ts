import type { SourceId, Standing } from "../sources/index.js";

/** Kinds of battery that charge differently. */
export type ChargeChemistry = "flooded" | "flooded-calcium" | "efb" | "agm" | "gel";

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
  readonly source: SourceId;
  readonly standing: Standing;
}

const FLOODED = { voltsHalfWidth: 0.2, voltsHalfWidthPerKelvin: 0.006, ceilingVolts: 15.5 } as const;
// Slow: 3 to 6 A at 50 to 115 Ah in a battery maker's table by reserve capacity; standard: trade practice.
const FLOODED_SHARES = { slow: [0.05, 0.07], standard: [0.1, 0.13] } as const;
const CALCIUM = {
  // 0, 75 and 95 °F as printed; 50 °C continues the line (our choice).
  volts: [
    [-17.8, 15.4],
    [23.9, 14.7],
    [35, 14.5],
    [50, 14.23],
  ],
  ...FLOODED,
  ...FLOODED_SHARES,
} as const;

/**
 * End-of-charge voltage and current by kind. Flooded and calcium rows as printed on one page; EFB is charged as calcium
 * (our choice, no source). AGM and gel: band at 25 °C with 3 to 5 mV/K per cell, the sources' disagreement, as width.
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
    ...FLOODED_SHARES,
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
    ceilingVolts: 15,
    slow: [0.05, 0.1],
    standard: [0.2, 0.35],
    source: "agm-seller",
    standing: "read",
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
    slow: [0.03, 0.05],
    standard: [0.05, 0.1],
    source: "auto-charging-notes",
    standing: "read",
  },
} as const satisfies Record<ChargeChemistry, ChargeProfile>;

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
    ["electrolyte-temperature", 50, "°C", 50, 60, "workshop-charge-stop", "our-choice"],
    ["terminal-voltage", 15.5, "V", 15.5, 15.5, "tractor-charging", "read"],
    ["equal-hourly-readings", 3, "1", 3, 3, "tm-5-4210-charging", "read"],
    ["longest-slow-charge", 24, "h", 24, 24, "tm-5-4210-charging", "read"],
    ["charge-current", 50, "A", 50, 50, "workshop-charge-stop", "read"],
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
