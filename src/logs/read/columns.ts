import { requireKey, wrongArgument } from "../../numeric/index.js";

/** A column by its header, or by its position counted from 0. */
export type ColumnReference = number | string;

/**
 * How a column writes time: elapsed in ms, s, min, h or d (day of year, too); `iso-8601` = date and time with an offset
 * or `Z`; `local-clock` = date and time without a zone, `2017-01-02 03:04:05.678`, counted by the face of the clock, so
 * that a daylight-saving change shows as a jump or as a step backwards.
 */
export type LogTimeUnit = "ms" | "s" | "min" | "h" | "d" | "iso-8601" | "local-clock";

/** Cells of one column that hold no sample, beside the format's own. */
export interface MissingMarks {
  /** Texts as written in the file; one that is a number is compared by value. */
  readonly null?: readonly string[];
}

/** Which column holds what, in which unit and with which sign. Nothing of it is guessed. */
export interface LogColumns {
  readonly time: { readonly column: ColumnReference; readonly unit: LogTimeUnit } & MissingMarks;
  readonly voltage: { readonly column: ColumnReference; readonly unit: "mV" | "V" } & MissingMarks;
  /** Left out where the log has none: every current is then not sampled. */
  readonly current?: {
    readonly column: ColumnReference;
    readonly unit: "mA" | "A";
    /** What a positive number in the file means. */
    readonly positive: "charging" | "discharging";
  } & MissingMarks;
  readonly temperature?: {
    readonly column: ColumnReference;
    readonly unit: "degC" | "degF" | "K";
  } & MissingMarks;
  /** A second clock beside the elapsed time: Unix time, or date and time with an offset. */
  readonly clock?: {
    readonly column: ColumnReference;
    readonly unit: "s" | "ms" | "iso-8601";
  } & MissingMarks;
}

/** What a column is read for. */
export type LogQuantity = keyof LogColumns;

/** @internal In the order in which cells are read. */
export const QUANTITIES: readonly LogQuantity[] = ["time", "voltage", "current", "temperature", "clock"];

/** @internal value = (number in the file + plus) × times ÷ over: dividing by 1000 rounds once, × 0.001 twice. */
export interface UnitScale {
  readonly times: number;
  readonly over: number;
  readonly plus: number;
}

const scale = (times: number, over = 1, plus = 0): UnitScale => ({ times, over, plus });

/** @internal Units of numbers; a unit missing here is a date and time. */
export const UNIT_SCALES: Readonly<Record<LogQuantity, Readonly<Record<string, UnitScale>>>> = {
  time: { ms: scale(1, 1000), s: scale(1), min: scale(60), h: scale(3600), d: scale(86_400) },
  voltage: { mV: scale(1, 1000), V: scale(1) },
  current: { mA: scale(1, 1000), A: scale(1) },
  temperature: { degC: scale(1), degF: scale(1, 1.8, -32), K: scale(1, 1, -273.15) },
  clock: { s: scale(1), ms: scale(1, 1000) },
};

const DATE_UNITS: Partial<Record<LogQuantity, readonly string[]>> = {
  time: ["iso-8601", "local-clock"],
  clock: ["iso-8601"],
};

/**
 * @internal Throws for a unit, sign or column that does not exist, and for a quantity that the map lacks or does not know.
 * @param dates whether the cells are texts, that may be dates
 */
export function requireColumns(columns: LogColumns, dates: boolean): void {
  for (const key of Object.keys(columns)) requireKey("columns", key, UNIT_SCALES);
  for (const quantity of QUANTITIES) {
    const one = columns[quantity];
    if (!one) {
      if (quantity === "time" || quantity === "voltage")
        wrongArgument(`columns.${quantity}`, one, "a column and its unit");
      continue;
    }
    const { column, unit } = one;
    const dated = dates ? (DATE_UNITS[quantity] ?? []) : [];
    requireKey(
      `columns.${quantity}.unit`,
      unit,
      Object.fromEntries([...Object.keys(UNIT_SCALES[quantity]), ...dated].map((key) => [key, 0])),
    );
    if (typeof column === "string" ? column === "" : !(Number.isInteger(column) && column >= 0))
      wrongArgument(`columns.${quantity}.column`, column, "a header, or a position from 0");
  }
  if (columns.current)
    requireKey("columns.current.positive", columns.current.positive, { charging: 0, discharging: 0 });
}

/** @internal The scale of a mapped quantity with the sign of its current; nothing for dates. */
export function scaleOf(columns: LogColumns, quantity: LogQuantity): UnitScale | undefined {
  const one = columns[quantity];
  const found = one && UNIT_SCALES[quantity][one.unit];
  if (!found || quantity !== "current") return found;
  return columns.current?.positive === "discharging" ? { ...found, times: -found.times } : found;
}

/** @internal A number of the file in SI units and °C; adding 0 keeps −0 out. */
export function convert(value: number, { times, over, plus }: UnitScale): number {
  return ((value + plus) * times) / over + 0;
}
