import { BDF_DEPRECATED, BDF_TERMS } from "./bdf.data.js";
import type { LogColumns, LogQuantity } from "./columns.js";

/** How a header of the Battery Data Format was recognised. */
export type BdfMatch = "label" | "machine-name" | "deprecated" | "older-label" | "unqualified-temperature";

/** A header and the term of the Battery Data Format it stands for. */
export interface BdfHeader {
  /** Position counted from 0. */
  readonly position: number;
  readonly header: string;
  /** Machine name of the term. */
  readonly term: string;
  readonly match: BdfMatch;
  /** Divides the numbers under a deprecated header in milliseconds. */
  readonly over: number;
}

// Without regard to case (the schema writes "Ohm", the ontology "ohm") and to the number of blanks.
const folded = (text: string): string => text.trim().replace(/\s+/g, " ").toLowerCase();

/** @internal The terms of a header row, in its order. */
export function bdfHeaders(names: readonly string[]): BdfHeader[] {
  const found: BdfHeader[] = [];
  names.forEach((header, position) => {
    const one = termOf(folded(header));
    if (one) found.push({ position, header, ...one });
  });
  return found;
}

function termOf(name: string): Pick<BdfHeader, "term" | "match" | "over"> | undefined {
  for (const [label, machine] of BDF_TERMS) {
    if (folded(label) === name) return { term: machine, match: "label", over: 1 };
    if (machine === name) return { term: machine, match: "machine-name", over: 1 };
  }
  for (const [label, machine, replacement, over] of BDF_DEPRECATED)
    if (folded(label) === name || machine === name) return { term: replacement, match: "deprecated", over };
  // Labels before release 1.2.0 gave the numbered channels a place; it is not claimed any more.
  const older = /^surface temperature t([1-5]) \/ degc$/.exec(name);
  if (older) return { term: `temperature_t${older[1]}_celsius`, match: "older-label", over: 1 };
  if (/^(chamber|environment(al)?) temperature \/ degc$/.test(name))
    return { term: "ambient_temperature_celsius", match: "older-label", over: 1 };
  const bare =
    /^temperature ?t?([1-5]?) \/ degc$/.exec(name) ?? /^temperature_?t?([1-5]?)_celsius$/.exec(name);
  return bare
    ? { term: `temperature_t${bare[1] || "1"}_celsius`, match: "unqualified-temperature", over: 1 }
    : undefined;
}

/** @internal Which terms a quantity is read from, the first that is there. */
export const BDF_QUANTITIES: Readonly<Record<LogQuantity, readonly string[]>> = {
  time: ["test_time_second", "unix_time_second"],
  voltage: ["voltage_volt"],
  current: ["current_ampere"],
  // The nearest to the battery first; numbered channels claim no place.
  temperature: [
    "surface_temperature_celsius",
    "temperature_t1_celsius",
    "temperature_t2_celsius",
    "temperature_t3_celsius",
    "temperature_t4_celsius",
    "temperature_t5_celsius",
    "ambient_temperature_celsius",
  ],
  clock: ["unix_time_second"],
};

/** @internal What a header row gives: columns by position, a term that is missing, or two headers for one term. */
export type BdfColumns =
  | { readonly columns: LogColumns; readonly used: Partial<Record<LogQuantity, BdfHeader>> }
  | { readonly missing: string }
  | { readonly twice: readonly [BdfHeader, BdfHeader] };

/** @internal */
export function bdfColumns(headers: readonly BdfHeader[]): BdfColumns {
  const used: Partial<Record<LogQuantity, BdfHeader>> = {};
  for (const quantity of Object.keys(BDF_QUANTITIES) as LogQuantity[]) {
    const terms = BDF_QUANTITIES[quantity];
    const term = terms.find((name) => headers.some((one) => one.term === name));
    if (term === undefined) {
      if (quantity === "temperature" || quantity === "clock") continue;
      return { missing: BDF_TERMS.find(([, name]) => name === terms[0])![0] };
    }
    // A live header goes before a deprecated one of the same term; two of the same kind contradict each other.
    const all = headers.filter((one) => one.term === term);
    const live = all.filter((one) => one.match !== "deprecated");
    const [first, second] = live.length > 0 ? live : all;
    if (first && second) return { twice: [first, second] };
    used[quantity] = first!;
  }
  const at = (quantity: LogQuantity) => ({ column: used[quantity]!.position });
  const seconds = (quantity: "time" | "clock") => (used[quantity]!.over === 1 ? "s" : "ms");
  return {
    used,
    columns: {
      time: { ...at("time"), unit: seconds("time") },
      voltage: { ...at("voltage"), unit: "V" },
      current: { ...at("current"), unit: "A", positive: "charging" },
      ...(used.temperature ? { temperature: { ...at("temperature"), unit: "degC" } } : {}),
      ...(used.clock ? { clock: { ...at("clock"), unit: seconds("clock") } } : {}),
    },
  };
}
