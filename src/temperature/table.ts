import {
  type Estimate,
  type Interval,
  type Refusal,
  refuse,
  requireFinite,
  wrongArgument,
} from "../numeric/index.js";
import type { SourceId, Standing } from "../sources/index.js";

/** One row of a {@link TemperatureTable}: temperature [°C], value [%], standard uncertainty of the value [%]. */
export type TemperatureRow = readonly [
  temperatureCelsius: number,
  percent: number,
  standardUncertainty: number,
];

/** A percentage against temperature, replaceable by the caller's own. Straight lines between rows. */
export interface TemperatureTable {
  readonly id: string;
  /** At least two, temperature strictly rising, percent > 0. */
  readonly rows: readonly TemperatureRow[];
  /** A key of the bibliography, or free text for a table of the caller's. */
  readonly source: SourceId | (string & {});
  readonly standing: Standing;
  /** Sources a chosen table lies between. */
  readonly leansOn?: readonly SourceId[];
}

/** Given when a temperature lies outside the rows of a table. */
export type OutsideTable = Refusal<"temperature-outside-table">;

export function outsideTable(table: TemperatureTable, temperatureCelsius: number): OutsideTable {
  return refuse(
    "temperature-outside-table",
    `The table ${table.id} says nothing about ${temperatureCelsius} °C; it covers ${table.rows[0]![0]} to ${table.rows[table.rows.length - 1]![0]} °C.`,
    "A table that covers this temperature.",
  );
}

export function covers({ id, rows }: TemperatureTable, temperatureCelsius: number): boolean {
  requireFinite("temperatureCelsius", temperatureCelsius);
  let before = Number.NEGATIVE_INFINITY;
  for (const [celsius, percent, u] of rows) {
    // Written so that NaN fails as well. 1e6: more than any table holds, little enough for every product.
    const good = celsius > before && celsius < 1e6 && percent > 1e-6 && percent < 1e6 && u >= 0 && u < 1e6;
    if (!good) wrongArgument(`table ${id}`, `${celsius}, ${percent}, ${u}`, "rising °C, % above 0, u ≥ 0");
    before = celsius;
  }
  if (rows.length < 2) wrongArgument(`table ${id}`, rows.length, "two rows or more");
  return temperatureCelsius >= rows[0]![0] && temperatureCelsius <= rows[rows.length - 1]![0];
}

// Share of row `index` in the straight-line value at a temperature: the hat function of that row.
function share(rows: readonly TemperatureRow[], index: number, celsius: number): number {
  const at = rows[index]![0];
  const neighbour = rows[celsius < at ? index - 1 : index + 1];
  return celsius === at ? 1 : neighbour ? Math.max(0, 1 - (celsius - at) / (neighbour[0] - at)) : 0;
}

// Index of the row at or before a temperature inside the table; only that row and the next one have a share there.
function rowBefore(rows: readonly TemperatureRow[], celsius: number): number {
  let i = 0;
  while (i < rows.length - 2 && rows[i + 1]![0] <= celsius) i++;
  return i;
}

/** Value at a temperature inside the table; the uncertainty runs straight between rows too. */
export function readTable({ rows }: TemperatureTable, celsius: number): Estimate {
  let value = 0;
  let standardUncertainty = 0;
  const first = rowBefore(rows, celsius);
  for (let i = first; i <= first + 1; i++) {
    const weight = share(rows, i, celsius);
    value += weight * rows[i]![1];
    standardUncertainty += weight * rows[i]![2];
  }
  return { value, standardUncertainty };
}

/**
 * Value at one temperature relative to the value at another. Errors of rows that both readings use cancel, so the
 * ratio is certain where the temperatures meet; what is left adds linearly, because published tables copy each other.
 */
export function readRatio(table: TemperatureTable, celsius: number, referenceCelsius: number): Estimate {
  const { rows } = table;
  const reference = readTable(table, referenceCelsius).value;
  const value = readTable(table, celsius).value / reference;
  let standardUncertainty = 0;
  const a = rowBefore(rows, celsius);
  const b = rowBefore(rows, referenceCelsius);
  for (let i = Math.min(a, b); i <= Math.max(a, b) + 1; i++) {
    const sensitivity = share(rows, i, celsius) - value * share(rows, i, referenceCelsius);
    standardUncertainty += (Math.abs(sensitivity) * rows[i]![2]) / reference;
  }
  return { value, standardUncertainty };
}

/** Range that two tables both cover; lower above upper when they do not meet. */
export function sharedRange({ rows: a }: TemperatureTable, { rows: b }: TemperatureTable): Interval {
  return {
    lower: Math.max(a[0]![0], b[0]![0]),
    upper: Math.min(a[a.length - 1]![0], b[b.length - 1]![0]),
  };
}

/** Temperatures within a range at which a line of two tables, or a ratio to a reference, may bend; warmest first. */
export function bends(
  { lower, upper }: Interval,
  a: TemperatureTable,
  b: TemperatureTable,
  references: readonly number[],
): number[] {
  const found = [lower, upper];
  const add = (celsius: number): void => {
    if (celsius > lower && celsius < upper && !found.includes(celsius)) found.push(celsius);
  };
  references.forEach(add);
  for (const { rows } of [a, b]) for (const row of rows) add(row[0]);
  return found.sort((x, y) => y - x);
}
