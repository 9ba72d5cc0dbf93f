import {
  chargeCapacityAmpereHours,
  chargeHours,
  type loadLimitProfiles,
  loadTestCurrentAmperes,
  loadTestLimitVolts,
  naturalVentilation,
  planCharge,
  readMissingCells,
  stationaryAirFlowCubicMetresPerHour,
  workshopAirFlowCubicMetresPerHour,
} from "crankworthy/bench";
import { isRefusal } from "crankworthy/numeric";
import type { OutsideRow, OutsideSuite } from "./suite.js";

const sure = (value: number) => ({ value, standardUncertainty: 0 });
const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;

function limit(
  temperatureCelsius: number,
  options?: { profile?: keyof typeof loadLimitProfiles; nominalVolts?: 12 | 6 },
): number | string {
  const result = loadTestLimitVolts(sure(temperatureCelsius), options);
  return isRefusal(result) ? "refused" : result.value;
}

const TABLE: readonly (readonly [fahrenheit: number, twelve: number, six: number])[] = [
  [70, 9.6, 4.8],
  [60, 9.5, 4.75],
  [50, 9.4, 4.7],
  [40, 9.3, 4.6],
  [30, 9.1, 4.5],
  [20, 8.9, 4.4],
  [10, 8.7, 4.3],
  [0, 8.5, 4.2],
];

function variant(
  profile: keyof typeof loadLimitProfiles,
  points: readonly (readonly [label: string, celsius: number, volts: number | string])[],
): OutsideRow[] {
  return points.map(([label, temperature, published]) => ({
    label: `${profile}, ${label}`,
    published,
    ours: () => limit(temperature, { profile }),
    ...(typeof published === "number" && { allowed: 1e-9 }),
  }));
}

// Reserve capacity range of the row, hours and amperes for slow, medium and fast.
const BY_RESERVE: readonly (readonly [
  from: number,
  to: number,
  rows: readonly (readonly [number, number])[],
])[] = [
  [
    80,
    125,
    [
      [21, 4],
      [3.75, 20],
      [1.5, 50],
    ],
  ],
  [
    170,
    250,
    [
      [23, 6],
      [7.5, 20],
      [3, 50],
    ],
  ],
];

// Voltage band, state of charge range it stands for by 11.89/12.06/12.24/12.45/12.65 V, hours at 5 A.
const BY_VOLTAGE: readonly (readonly [band: string, from: number, to: number, hours: number])[] = [
  ["12.25-12.49 V", 0.49, 0.8, 6],
  ["12.00-12.24 V", 0.17, 0.49, 10],
  ["10.00-11.99 V", 0, 0.17, 14],
  ["below 10.00 V", 0, 0, 18],
];

function end(chemistry: "flooded" | "flooded-calcium", temperatureCelsius: number): number {
  const plan = planCharge({ chemistry, temperatureCelsius, capacityAmpereHours: sure(60) });
  if (isRefusal(plan)) throw new Error(plan.reason);
  return plan.endVolts.value;
}

function current(coldCrankingAmperes: number, capacityAmpereHours: number) {
  const result = loadTestCurrentAmperes({ coldCrankingAmperes, capacityAmpereHours });
  if (isRefusal(result)) throw new Error(result.reason);
  return result;
}

export const suites: OutsideSuite[] = [
  {
    title: "Load test, minimum voltage after 15 s against temperature, 12 V",
    source:
      "US Army TM 5-4210-230-14&P-1, Table 5 (read), printed alike in three vehicle makers' workshop manuals",
    unit: "V",
    why: "copy check of the printed rows; the rows between, above and below test the reading of the table",
    rows: [
      ...TABLE.map(([fahrenheit, volts]) => ({
        label: `${fahrenheit} °F`,
        published: volts,
        ours: () => limit(celsius(fahrenheit)),
        allowed: 1e-9,
      })),
      { label: "65 °F, between rows", published: 9.55, ours: () => limit(celsius(65)), allowed: 1e-9 },
      { label: "100 °F, flat above 70 °F", published: 9.6, ours: () => limit(celsius(100)), allowed: 1e-9 },
      { label: "-18 °C, printed beside 0 °F", published: 8.5, ours: () => limit(-18), allowed: 1e-9 },
      { label: "-5 °F, the table ends at 0 °F", published: "refused", ours: () => limit(celsius(-5)) },
    ],
  },
  {
    title: "Load test, minimum voltage after 15 s against temperature, 6 V",
    source: "US Army TM 5-4210-230-14&P-1, Table 5, 6 V column (read)",
    unit: "V",
    why: "copy check: rounded down below 50 °F, not half of the 12 V column",
    rows: TABLE.map(([fahrenheit, , volts]) => ({
      label: `${fahrenheit} °F`,
      published: volts,
      ours: () => limit(celsius(fahrenheit), { nominalVolts: 6 }),
      allowed: 1e-9,
    })),
  },
  {
    title: "Load test, tables that contradict the usual one",
    source:
      "A car-battery FAQ, about 2003; a vehicle maker's manual 2004 (°C); another's, editions 2005 and 2006, 0.5 V apart at -18 °C; a manual that tests at 15-38 °C only; one page printing 10.5 V (all read)",
    unit: "V",
    why: "copy check of the printed rows; 90, 80 and 70 °F and the refusals test the reading of the profiles",
    rows: [
      ...variant("linear-to-100-f", [
        ["100 °F", celsius(100), 9.9],
        ["90 °F", celsius(90), 9.8],
        ["80 °F", celsius(80), 9.7],
        ["70 °F", celsius(70), 9.6],
        ["40 °F", celsius(40), 9.3],
        ["30 °F", celsius(30), "refused"],
      ]),
      ...variant("celsius-2004", [
        ["20 °C", 20, 9.6],
        ["18 °C as printed", 18, 9.5],
        ["10 °C", 10, 9.4],
        ["4 °C", 4, 9.3],
        ["-1 °C", -1, 9.1],
        ["-7 °C", -7, 8.9],
        ["-12 °C", -12, 8.7],
      ]),
      ...variant("celsius-2005", [
        ["21 °C", 21, 9.6],
        ["10 °C", 10, 9.4],
        ["0 °C", 0, 9.1],
        ["-10 °C", -10, 8.8],
        ["-18 °C", -18, 8],
        ["colder", -25, 8],
      ]),
      ...variant("celsius-2006", [
        ["-18 °C", -18, 8.5],
        ["colder", -25, 8],
      ]),
      ...variant("room-temperature-only", [
        ["38 °C", 38, 9.6],
        ["10 °C", 10, "refused"],
      ]),
      ...variant("outlier-10.5", [["20 °C", 20, 10.5]]),
    ],
  },
  {
    title: "Load test, current by two rules",
    source:
      "Half of the cranking rating and three times the capacity, workshop manuals (read); two makers' fixed loads for 55D23L: 170 and 180 A, for 75D23L: 260 and 195 A (read); their 20 h capacities 60 and 65 Ah (from memory)",
    unit: "A",
    why: "170 A may be off by the 5 % within which a load counts as held; the rest is exact arithmetic",
    rows: [
      { label: "356 A, half", published: 170, ours: () => current(356, 60).amperes, allowed: 8.5 },
      {
        label: "60 Ah, three times",
        published: 180,
        ours: () => current(356, 60).otherRuleAmperes!,
        allowed: 1e-9,
      },
      { label: "520 A, half", published: 260, ours: () => current(520, 65).amperes, allowed: 1e-9 },
      {
        label: "65 Ah, three times",
        published: 195,
        ours: () => current(520, 65).otherRuleAmperes!,
        allowed: 1e-9,
      },
      {
        label: "520 A and 65 Ah: the rules differ by a third",
        published: 1.33,
        ours: () => current(520, 65).amperes / current(520, 65).otherRuleAmperes!,
        allowed: 0.005,
      },
    ],
  },
  {
    title: "Rest voltage of a battery with missing cells, after a charge",
    source:
      "Cells of 1.95 to 2.13 V (computed): five working cells typically 10.4-10.6 V when full, four 8.5 V; 14.4 V on charge becomes 12.0-12.5 V with one cell shorted (workshop practice, from memory)",
    unit: "cells missing",
    why: "whole numbers",
    rows: (
      [
        [12.7, "rested", 0],
        [10.6, "rested", 1],
        [10.4, "rested", 1],
        [8.5, "rested", 2],
        [12, "on-charge", 1],
        [12.4, "on-charge", 1],
        [14.4, "on-charge", 0],
      ] as const
    ).map(([volts, situation, cells]) => ({
      label: `${volts} V ${situation}`,
      published: cells,
      ours: () =>
        readMissingCells({ volts, voltsStandardUncertainty: 0.02, situation, chargedBefore: true }).cells,
      allowed: 0,
    })),
  },
  {
    title: "End-of-charge voltage against temperature",
    source:
      "logwell.com/tech/shdwe/vehicle_battery.html (read): flooded 14.2/14.4/15.1 V, maintenance-free 14.5/14.7/15.4 V at 95/75/0 °F",
    unit: "V",
    why: "copy check; °C rounded to 0.1, at 17 mV/K 0.002 V",
    rows: (
      [
        ["flooded", 35, 14.2],
        ["flooded", 23.9, 14.4],
        ["flooded", -17.8, 15.1],
        ["flooded-calcium", 35, 14.5],
        ["flooded-calcium", 23.9, 14.7],
        ["flooded-calcium", -17.8, 15.4],
      ] as const
    ).map(([chemistry, temperature, volts]) => ({
      label: `${chemistry}, ${temperature} °C`,
      published: volts,
      ours: () => end(chemistry, temperature),
      allowed: 0.002,
    })),
  },
  {
    title: "Charging hours from flat by reserve capacity",
    source:
      "A battery maker's page, derived from BCI (read): hours at given amperes for reserve capacities 80-125 and 170-250 min",
    unit: "inside our interval or not",
    why: "our interval from the lower end of the row with factor 1.25 to its upper end with 1.6",
    rows: BY_RESERVE.flatMap(([from, to, rows]) =>
      rows.map(([hours, amperes]) => ({
        label: `${from}-${to} min, ${hours} h at ${amperes} A`,
        published: "inside",
        ours: () => {
          const shortest = chargeHours(sure(chargeCapacityAmpereHours(from).value), sure(0), amperes).lower;
          const longest = chargeHours(sure(chargeCapacityAmpereHours(to).value), sure(0), amperes).upper;
          return hours >= shortest && hours <= longest ? "inside" : `${shortest} to ${longest} h`;
        },
      })),
    ),
  },
  {
    title: "Charging hours at 5 A by rest voltage",
    source:
      "Vehicle makers' workshop manuals 2002 and 2004 (read, 5 A column); capacity not printed, taken as 60 ± 5 Ah",
    unit: "inside our interval or not",
    why: "band of charge by the table 11.89/12.06/12.24/12.45/12.65 V; factor 1.25 to 1.6; capacity one u either way",
    rows: BY_VOLTAGE.map(([band, from, to, hours]) => ({
      label: `${band}, ${hours} h`,
      published: "inside",
      ours: () => {
        const capacity = { value: 60, standardUncertainty: 5 };
        const shortest = chargeHours(capacity, sure(to), 5).lower;
        const longest = chargeHours(capacity, sure(from), 5).upper;
        return hours >= shortest && hours <= longest ? "inside" : `${shortest} to ${longest} h`;
      },
    })),
  },
  {
    title: "Ventilation against hydrogen, 12 V 70 Ah",
    source:
      "EN 50272-2 / EN IEC 62485-2 and EN 50272-3 / EN IEC 62485-3 (secondary; gas currents of the stationary form from memory); results worked out independently (computed)",
    unit: "m³/h; cm²",
    why: "exact arithmetic; 0.05 is the rounded product 24 × 0.42 × 10⁻³ × 5 = 0.0504",
    rows: [
      {
        label: "stationary form, 20 mA/Ah",
        published: 0.42,
        ours: () => stationaryAirFlowCubicMetresPerHour({ gasCurrent: 20, capacityAmpereHours: 70 }),
        allowed: 1e-9,
      },
      {
        label: "workshop form, 6 A per 100 Ah",
        published: 1.26,
        ours: () => workshopAirFlowCubicMetresPerHour({ gasCurrent: 6, capacityAmpereHours: 70 }),
        allowed: 1e-9,
      },
      {
        label: "opening for 1.26 m³/h",
        published: 35.28,
        ours: () => naturalVentilation(1.26).openingSquareCentimetres,
        allowed: 1e-9,
      },
    ],
  },
];
