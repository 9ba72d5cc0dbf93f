import { type Estimate, requireEstimate, requireKey } from "../numeric/index.js";
import type { Derivation, Standing } from "../sources/index.js";

/** Nominal voltage of a system [V]. */
export type NominalVolts = 6 | 12 | 24;

/** Bands of one system [V]. */
export interface SystemBands {
  readonly restVolts: readonly [lower: number, upper: number];
  readonly chargingVolts: readonly [lower: number, upper: number];
  /** Least voltage while cranking near 70 °F. */
  readonly crankingVolts: number;
}

/**
 * Rest and charging bands: computed from 1.95-2.15 V per cell at rest and 2.2-2.55 V on charge; the cranking minima from
 * the load-test table at 70 °F.
 */
export const SYSTEM_BANDS: Readonly<Record<NominalVolts, SystemBands>> = {
  6: { restVolts: [5.85, 6.45], chargingVolts: [6.6, 7.65], crankingVolts: 4.8 },
  12: { restVolts: [11.7, 12.9], chargingVolts: [13.2, 15.3], crankingVolts: 9.6 },
  24: { restVolts: [23.4, 25.8], chargingVolts: [26.4, 30.6], crankingVolts: 19.2 },
};

/** The system a rest reading shows, or what to ask. */
export type SystemVoltage =
  | {
      readonly certain: true;
      readonly nominalVolts: NominalVolts;
      readonly state: "rest" | "surface-charge-or-charging" | "flat-or-failed-cells";
      readonly source: "vehicle-defaults";
      readonly standing: Standing;
    }
  | {
      readonly certain: false;
      readonly ask:
        | "exchange-leads-and-repeat"
        | "reversed-battery"
        | "almost-no-voltage"
        | "label-decides"
        | "twelve-volts-flat-or-failed"
        | "between-systems"
        | "label-contradicts"
        | "above-any-system"
        | "on-a-boundary";
      /** Systems that remain possible. */
      readonly candidates: readonly NominalVolts[];
      readonly source: "vehicle-defaults";
      readonly standing: Standing;
    };

type Zone = readonly [upTo: number, sure: NominalVolts | 0, flat: readonly NominalVolts[]];

// Upper end of each zone [V]; the system it shows by itself; the systems it can be when the label says so.
const ZONES: readonly Zone[] = [
  [2.5, 0, []],
  [7.7, 0, [6, 12]],
  [11.7, 0, [12, 24]],
  [15.4, 12, []],
  [23.4, 0, [24]],
  [31, 24, []],
  [Infinity, 0, []],
];
const ASKS = [
  "almost-no-voltage",
  "label-decides",
  "twelve-volts-flat-or-failed",
  "",
  "between-systems",
  "",
  "above-any-system",
] as const;

function zoneOf(volts: number): number {
  return ZONES.findIndex(([upTo], i) => volts < upTo || (i === 5 && volts === upTo));
}

/**
 * Recognises a 6, 12 or 24 V system from a rest reading, with the label where the reading does not decide.
 *
 * Scope: engine and charger off. 7.7-11.7 V is a 12 V battery, flat or with failed cells, never 6 V by itself; 2.5-7.7 V is
 * 6 V or a very flat 12 V, and only the label decides; a negative reading means exchanged leads first.
 *
 * @param restVolts reading [V], any sign
 * @param labelVolts nominal voltage of the label, where it was read
 * @param leadsVerified the leads were checked after a negative reading
 * @returns the system, or the code of what to ask; nothing is refused
 *
 * Source: bands computed from cell voltages; zones our choice.
 * @example
 * ```ts
 * import { recogniseSystem } from "crankworthy/vehicle";
 * recogniseSystem({ value: 12.5, standardUncertainty: 0.02 }).nominalVolts; // => 12
 * recogniseSystem({ value: 6.3, standardUncertainty: 0.02 }).ask; // => "label-decides"
 * recogniseSystem({ value: 6.3, standardUncertainty: 0.02 }, 6).nominalVolts; // => 6
 * recogniseSystem({ value: -12.5, standardUncertainty: 0.02 }).ask; // => "exchange-leads-and-repeat"
 * ```
 */
export function recogniseSystem(
  restVolts: Estimate,
  labelVolts?: NominalVolts,
  leadsVerified = false,
  derivation?: Derivation,
): SystemVoltage {
  const result = recognise(restVolts, labelVolts, leadsVerified);
  derivation?.push({
    quantity: "system voltage",
    formula: "zone of the rest reading, with the label",
    inputs: { restVolts: restVolts.value, labelVolts: labelVolts ?? "not read" },
    result: result.certain ? result.nominalVolts : result.ask,
    unit: result.certain ? "V" : "",
    source: result.source,
    standing: result.standing,
  });
  return result;
}

function recognise(
  restVolts: Estimate,
  labelVolts: NominalVolts | undefined,
  leadsVerified: boolean,
): SystemVoltage {
  requireEstimate("restVolts", restVolts);
  if (labelVolts !== undefined) requireKey("labelVolts", String(labelVolts), SYSTEM_BANDS);
  const { value: volts, standardUncertainty: u } = restVolts;
  if (volts < -2 && leadsVerified) return ask("reversed-battery", labelVolts ? [labelVolts] : [6, 12, 24]);
  // Below twice its uncertainty a reading near zero has no sign.
  if (volts < 0 && volts < -2 * u && !leadsVerified)
    return ask("exchange-leads-and-repeat", labelVolts ? [labelVolts] : [6, 12, 24]);
  const zone = zoneOf(volts);
  const [, sure, flat] = ZONES[zone]!;
  if (labelVolts && flat.includes(labelVolts)) {
    const [lower, upper] = SYSTEM_BANDS[labelVolts].restVolts;
    if (volts > upper) return certain(labelVolts, "surface-charge-or-charging");
    return certain(labelVolts, volts >= lower ? "rest" : "flat-or-failed-cells");
  }
  if (labelVolts && (sure ? sure !== labelVolts : flat.length > 0)) {
    // A flat 24 V set reads like a full 12 V battery only with half its cells gone: ask, do not decide.
    return ask("label-contradicts", sure ? [sure, labelVolts] : [...flat, labelVolts]);
  }
  if (!sure)
    return ask(
      ASKS[zone] as Exclude<(typeof ASKS)[number], "">,
      zone === 2 ? [12] : zone === 4 ? [12, 24] : flat,
    );
  // Near an edge of a zone that decides by itself, the reading must clear it by 2 u, unless the label says the same.
  if (!labelVolts && (zoneOf(volts - 2 * u) !== zone || zoneOf(volts + 2 * u) !== zone))
    return ask("on-a-boundary", [sure]);
  return certain(sure, volts > SYSTEM_BANDS[sure].restVolts[1] ? "surface-charge-or-charging" : "rest");
}

function certain(
  nominalVolts: NominalVolts,
  state: "rest" | "surface-charge-or-charging" | "flat-or-failed-cells",
): SystemVoltage {
  return { certain: true, nominalVolts, state, source: "vehicle-defaults", standing: "our-choice" };
}

function ask(
  code: Extract<SystemVoltage, { certain: false }>["ask"],
  candidates: readonly NominalVolts[],
): SystemVoltage {
  return { certain: false, ask: code, candidates, source: "vehicle-defaults", standing: "our-choice" };
}
