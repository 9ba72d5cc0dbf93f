import type { TemperatureTable } from "./table.js";

// Capacity in % of the capacity at 25 °C. Uncertainty: 0.2 % per kelvin away from 25 °C, our choice: at 0 °C it
// spans what the profiles disagree about between neighbouring discharge times.
function rows(points: readonly (readonly [celsius: number, percent: number])[]): TemperatureTable["rows"] {
  return points.map(([celsius, percent]) => [celsius, percent, 0.2 * Math.abs(celsius - 25)] as const);
}

// A battery maker's change of capacity in %, every 5 K from 0 to 40 °C.
function maker(id: string, change: readonly number[]): TemperatureTable {
  return {
    id,
    rows: rows(change.map((percent, i) => [5 * i, 100 + percent] as const)),
    source: "maker-faq-capacity",
    standing: "read",
  };
}

// The coefficient is a straight line, so two ends and the reference carry it.
function coefficient(id: string, perKelvin: number): TemperatureTable {
  return {
    id,
    rows: rows([0, 25, 40].map((celsius) => [celsius, 100 * (1 + perKelvin * (celsius - 25))] as const)),
    source: "iec-capacity-coefficient",
    standing: "from-memory",
  };
}

// °F and sizing factor; capacity is the reciprocal.
const SIZING = [
  [25, 1.52],
  [30, 1.43],
  [35, 1.35],
  [40, 1.3],
  [45, 1.25],
  [50, 1.19],
  [55, 1.15],
  [60, 1.11],
  [65, 1.08],
  [70, 1.04],
  [77, 1],
  [80, 0.98],
  [85, 0.96],
  [90, 0.94],
  [95, 0.93],
  [100, 0.91],
  [105, 0.89],
  [110, 0.88],
  [115, 0.87],
  [120, 0.86],
  [125, 0.85],
] as const;

/** Capacity against temperature by kind of discharge; choose by name, there is no default. */
export const capacityProfiles = /* @__PURE__ */ (() => ({
  "maker-over-60-min": maker("maker-over-60-min", [-16, -12, -10, -6, -1, 0, 3, 4, 5]),
  "maker-30-to-60-min": maker("maker-30-to-60-min", [-18, -13, -11, -7, -2, 0, 4, 6, 8]),
  "maker-under-30-min": maker("maker-under-30-min", [-20, -15, -12, -8, -3, 0, 5, 8, 10]),
  "coefficient-slow": coefficient("coefficient-slow", 0.006),
  "coefficient-fast": coefficient("coefficient-fast", 0.01),
  "stationary-sizing": {
    id: "stationary-sizing",
    rows: rows(SIZING.map(([fahrenheit, factor]) => [(fahrenheit - 32) / 1.8, 100 / factor] as const)),
    source: "ieee-485-table-1",
    standing: "from-memory",
  } as TemperatureTable,
}))();
