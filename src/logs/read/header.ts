import { type BdfHeader, bdfColumns, bdfHeaders } from "./bdf.js";
import type { LogColumns, LogQuantity } from "./columns.js";
import { QUANTITIES } from "./columns.js";
import type { DelimitedPlan } from "./format.js";
import { type LogInputProblem, shortened } from "./log-input-error.js";

/** Where a quantity is read from. */
export interface ReadColumn {
  readonly quantity: LogQuantity;
  /** Position counted from 0; missing for keys of JSON objects. */
  readonly position?: number;
  /** Header or key; missing where there is none. */
  readonly header?: string;
  /** Unit in the file. */
  readonly unit: string;
}

/** What the head of a log said, and what was made of it. */
export interface HeaderReading {
  /** Cells of the last line of the header; empty where there is none. */
  readonly names: readonly string[];
  readonly columns: readonly ReadColumn[];
  /** Headers that are terms of the Battery Data Format, read or not; empty for other formats. */
  readonly terms: readonly BdfHeader[];
  /** Headers that are no term of the Battery Data Format, or from which, in other formats, nothing is read. */
  readonly leftOver: readonly string[];
  /** What `seconds` counts: a column of elapsed time as it stands, or a clock since the first row that has a time. */
  readonly timeFrom: "elapsed" | "unix-time" | "iso-8601" | "local-clock";
  /** Where the temperature was taken, as far as a header of the Battery Data Format tells. */
  readonly temperaturePlace?: "surface" | "ambient" | "unplaced";
}

/** @internal A header with its columns found. */
export interface FoundColumns {
  readonly header: HeaderReading;
  readonly columns: LogColumns;
  readonly positions: ReadonlyMap<LogQuantity, number>;
}

/** @internal That, or what is wrong with it. */
export type HeaderResult =
  | FoundColumns
  | { readonly wrong: Pick<LogInputProblem, "code" | "received" | "expected" | "column"> };

/** @internal Finds the columns of the format in the names of a header (empty without one). */
export function readHeader(cells: readonly string[], plan: DelimitedPlan): HeaderResult {
  const names = cells.map((cell) => cell.trim());
  return plan.columns === "bdf" ? readBdf(names) : readMapped(names, plan.columns);
}

function readBdf(names: readonly string[]): HeaderResult {
  const terms = bdfHeaders(names);
  const found = bdfColumns(terms);
  if ("missing" in found) return { wrong: missing(found.missing, names) };
  if ("twice" in found) {
    const [first, second] = found.twice;
    const received = `${shortened(first.header)} and ${shortened(second.header)}`;
    return {
      wrong: {
        code: "ambiguous-column",
        column: second.header,
        received,
        expected: `one column for ${first.term}`,
      },
    };
  }
  const { columns, used } = found;
  const temperature = used.temperature?.term;
  const positions = new Map(
    QUANTITIES.flatMap((one) => (used[one] ? [[one, used[one].position] as const] : [])),
  );
  return {
    columns,
    positions,
    header: {
      names,
      columns: readColumns(columns, positions, names),
      terms,
      leftOver: names.filter((_, position) => !terms.some((one) => one.position === position)),
      timeFrom: used.time!.term === "unix_time_second" ? "unix-time" : "elapsed",
      ...(temperature === undefined
        ? {}
        : {
            temperaturePlace: temperature.startsWith("surface")
              ? "surface"
              : temperature.startsWith("ambient")
                ? "ambient"
                : "unplaced",
          }),
    },
  };
}

function readMapped(names: readonly string[], columns: LogColumns): HeaderResult {
  const positions = new Map<LogQuantity, number>();
  for (const quantity of QUANTITIES) {
    const column = columns[quantity]?.column;
    if (column === undefined) continue;
    if (typeof column === "number") {
      positions.set(quantity, column);
      continue;
    }
    const at = names.indexOf(column.trim());
    if (at < 0) return { wrong: missing(column, names) };
    if (names.lastIndexOf(column.trim()) !== at) {
      const received = `${shortened(column)} at positions ${at} and ${names.lastIndexOf(column.trim())}`;
      return { wrong: { code: "ambiguous-column", column, received, expected: "one column of this name" } };
    }
    positions.set(quantity, at);
  }
  const read = new Set(positions.values());
  const { unit } = columns.time;
  return {
    columns,
    positions,
    header: {
      names,
      columns: readColumns(columns, positions, names),
      terms: [],
      leftOver: names.filter((_, position) => !read.has(position)),
      timeFrom: unit === "iso-8601" || unit === "local-clock" ? unit : "elapsed",
    },
  };
}

function readColumns(
  columns: LogColumns,
  positions: ReadonlyMap<LogQuantity, number>,
  names: readonly string[],
): ReadColumn[] {
  return [...positions].map(([quantity, position]) => {
    const header = names[position];
    return { quantity, position, ...(header === undefined ? {} : { header }), unit: columns[quantity]!.unit };
  });
}

/** @internal */
export function missing(
  column: string,
  names: readonly string[],
): Pick<LogInputProblem, "code" | "received" | "expected" | "column"> {
  const shown = names.slice(0, 100).map((name) => shortened(name));
  const received = `the headers ${shown.join(", ")}${names.length > shown.length ? ", …" : ""}`;
  const near = nearest(column, names);
  const hint = near === undefined ? "" : `; the nearest is ${shortened(near)}`;
  return { code: "missing-column", column, received, expected: `a header ${shortened(column)}${hint}` };
}

/** The name with the fewest changed letters, if they are fewer than half. */
function nearest(wanted: string, names: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Math.ceil(wanted.length / 2);
  for (const name of names) {
    if (name.length > 60 || wanted.length > 60) continue;
    const changes = editDistance(wanted.toLowerCase(), name.toLowerCase());
    if (changes < least) [best, least] = [name, changes];
  }
  return best;
}

// Levenshtein with two rows.
function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++)
      current.push(
        Math.min(previous[j]! + 1, current[j - 1]! + 1, previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)),
      );
    previous = current;
  }
  return previous[b.length]!;
}
