import type { SourceId, Standing } from "../sources/index.js";

/** A published minimum voltage against temperature: temperatures in `unit`, rising, volts for 12 V and perhaps 6 V. */
export interface LoadLimitProfile {
  readonly unit: "F" | "C";
  readonly rows: readonly (readonly [temperature: number, volts12: number, volts6?: number])[];
  /** True when the limit stays at its last value above the rows; otherwise nothing is said there. */
  readonly flatAbove: boolean;
  /** Volts printed for anything colder than the rows, where the source prints one. */
  readonly colderVolts?: number;
  readonly source: SourceId;
  readonly standing: Standing;
}

/**
 * Minimum voltage 15 s into the load, as published. `usual` is the default; the others contradict it and are kept to
 * show by how much. The 6 V column is rounded down below 50 °F, so it is not half of the 12 V column.
 */
export const loadLimitProfiles = {
  usual: {
    unit: "F",
    rows: [
      [0, 8.5, 4.2],
      [10, 8.7, 4.3],
      [20, 8.9, 4.4],
      [30, 9.1, 4.5],
      [40, 9.3, 4.6],
      [50, 9.4, 4.7],
      [60, 9.5, 4.75],
      [70, 9.6, 4.8],
    ],
    flatAbove: true,
    source: "tm-5-4210-table-5",
    standing: "read",
  },
  "linear-to-100-f": {
    unit: "F",
    rows: [
      [40, 9.3],
      [100, 9.9],
    ],
    flatAbove: false,
    source: "car-battery-faq-2003",
    standing: "read",
  },
  // 18 °C as printed.
  "celsius-2004": {
    unit: "C",
    rows: [
      [-12, 8.7],
      [-7, 8.9],
      [-1, 9.1],
      [4, 9.3],
      [10, 9.4],
      [18, 9.5],
      [20, 9.6],
    ],
    flatAbove: true,
    source: "workshop-load-2004",
    standing: "read",
  },
  // Editions 2005 and 2006 are half a volt apart at −18 °C and agree on 8.0 V below it.
  "celsius-2005": {
    unit: "C",
    rows: [
      [-18, 8],
      [-10, 8.8],
      [0, 9.1],
      [10, 9.4],
      [21, 9.6],
    ],
    flatAbove: true,
    colderVolts: 8,
    source: "workshop-load-2005",
    standing: "read",
  },
  "celsius-2006": {
    unit: "C",
    rows: [
      [-18, 8.5],
      [-10, 8.8],
      [0, 9.1],
      [10, 9.4],
      [21, 9.6],
    ],
    flatAbove: true,
    colderVolts: 8,
    source: "workshop-load-2006",
    standing: "read",
  },
  "room-temperature-only": {
    unit: "C",
    rows: [
      [15, 9.6],
      [38, 9.6],
    ],
    flatAbove: false,
    source: "workshop-load-fixed",
    standing: "read",
  },
  // An outlier: meant for three times the capacity; another page of the same set prints 9.6 V. It prints no temperature: the
  // range is that of `room-temperature-only`, our choice.
  "outlier-10.5": {
    unit: "C",
    rows: [
      [15, 10.5],
      [38, 10.5],
    ],
    flatAbove: false,
    source: "workshop-load-10.5",
    standing: "read",
  },
} as const satisfies Record<string, LoadLimitProfile>;
