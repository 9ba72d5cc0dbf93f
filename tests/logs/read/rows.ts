import { type LogFormat, type OpenLogOptions, openLog, type ReadTally } from "crankworthy/logs";
import type { TextInput } from "crankworthy/streams";

/** All rows of a log in plain arrays. */
export interface AllRows {
  readonly seconds: readonly number[];
  readonly volts: readonly number[];
  readonly amperes: readonly number[];
  readonly celsius: readonly number[] | undefined;
  readonly clock: readonly number[] | undefined;
  readonly chunkRows: readonly number[];
  readonly tally: ReadTally;
}

export async function readAll(
  input: TextInput,
  format: LogFormat,
  options?: OpenLogOptions,
): Promise<AllRows> {
  const log = await openLog(input, format, options);
  const columns = { seconds: [], volts: [], amperes: [], celsius: [], clock: [] } as Record<string, number[]>;
  const chunkRows: number[] = [];
  let next = 1;
  for await (const chunk of log.chunks) {
    if (chunk.firstRow !== next) throw new Error(`chunk begins at row ${chunk.firstRow}, not ${next}`);
    next += chunk.rows;
    chunkRows.push(chunk.rows);
    columns.seconds!.push(...chunk.seconds);
    columns.volts!.push(...chunk.volts);
    columns.amperes!.push(...chunk.amperes);
    columns.celsius!.push(...(chunk.temperatureCelsius ?? []));
    columns.clock!.push(...(chunk.clockSeconds ?? []));
  }
  const optional = (name: string) => (columns[name]!.length > 0 ? columns[name] : undefined);
  return {
    seconds: columns.seconds!,
    volts: columns.volts!,
    amperes: columns.amperes!,
    celsius: optional("celsius"),
    clock: optional("clock"),
    chunkRows,
    tally: log.tally(),
  };
}

/** Elapsed seconds, volts, amperes by position. */
export const BY_POSITION = {
  time: { column: 0, unit: "s" },
  voltage: { column: 1, unit: "V" },
  current: { column: 2, unit: "A", positive: "charging" },
} as const;
