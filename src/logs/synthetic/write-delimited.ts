import type { LogChunk } from "../chunk.js";

/**
 * Writes a log as delimited text with the preferred labels of the open Battery Data Format in its header.
 *
 * Scope: every digit is kept, so that reading the text gives the numbers back; a value not sampled is left empty. Columns are
 * those of the first chunk. Rows end in a line feed. A temperature of unknown place is written as channel T1.
 *
 * @param chunks from anywhere
 * @returns pieces of text, whole lines each; the header comes first, and alone where there are no chunks
 *
 * Source: Battery Data Format (LF Energy, Battery Data Alliance), term tables of release 1.3.0, read.
 * @example
 * ```ts
 * import { syntheticLog, writeDelimited } from "crankworthy/logs";
 * const { chunks } = syntheticLog({ phases: [{ kind: "rest", seconds: 10 }] }, 1);
 * [...writeDelimited(chunks)].join("").split("\n")[0]; // => "Test Time / s,Voltage / V,Current / A,Temperature T1 / degC"
 * ```
 */
export function* writeDelimited(chunks: Iterable<LogChunk>): Generator<string, void, undefined> {
  let keys: readonly (keyof typeof LABELS)[] | undefined;
  for (const chunk of chunks) {
    if (!keys) {
      keys = KEYS.filter((key) => chunk[key] !== undefined);
      yield header(keys);
    }
    let text = "";
    const columns = keys.map((key) => chunk[key]);
    for (let i = 0; i < chunk.rows; i++) {
      for (let c = 0; c < columns.length; c++) {
        const value = columns[c]?.[i] ?? Number.NaN;
        if (c > 0) text += ",";
        // ECMAScript fixes the shortest digits that give the number back.
        if (!Number.isNaN(value)) text += value;
      }
      text += "\n";
    }
    yield text;
  }
  if (!keys) yield header(KEYS.slice(0, 3));
}

const LABELS = {
  seconds: "Test Time / s",
  volts: "Voltage / V",
  amperes: "Current / A",
  temperatureCelsius: "Temperature T1 / degC",
  clockSeconds: "Unix Time / s",
} as const;
const KEYS = ["seconds", "volts", "amperes", "temperatureCelsius", "clockSeconds"] as const;

function header(keys: readonly (keyof typeof LABELS)[]): string {
  return `${keys.map((key) => LABELS[key]).join(",")}\n`;
}
