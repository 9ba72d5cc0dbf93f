import { checkLog, type LogChunk, type LogQuality } from "crankworthy/logs";

/** A log that tests may spoil: plain arrays, one value a row. */
export interface MadeLog {
  seconds: number[];
  volts: number[];
  amperes: number[];
  temperatureCelsius: number[];
  clockSeconds: number[];
}

/** Repeatable random numbers in 0..1 (xorshift). */
export function randomNumbers(seed: number): () => number {
  let state = seed | 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

export const OHMS = 0.01;

/** A sound log: one row a second, rests and loads by turns, noise and steps of a good logger, a second clock. */
export function soundLog(seed: number, rows: number): MadeLog {
  const random = randomNumbers(seed * 7919 + 12345);
  const log: MadeLog = { seconds: [], volts: [], amperes: [], temperatureCelsius: [], clockSeconds: [] };
  let [load, left, taken, polarized] = [0, 0, 0, 0];
  for (let i = 0; i < rows; i++) {
    if (left-- <= 0) {
      load = load === 0 ? -10 - Math.round(40 * random()) : 0;
      left = 40 + Math.round(100 * random());
    }
    polarized += (0.005 * load - polarized) / 20;
    taken -= load / 3600;
    const volts = 12.7 + OHMS * load + polarized - 0.02 * taken + 0.01 * (random() - 0.5);
    const amperes = load + (load === 0 ? 0.02 : 0.1) * (random() - 0.5);
    log.seconds.push(i);
    log.volts.push(Math.round(1000 * volts) / 1000);
    log.amperes.push(Math.round(200 * amperes) / 200);
    log.temperatureCelsius.push(20 + Math.round(10 * Math.sin(i / 500)) / 10);
    log.clockSeconds.push(1.7e9 + i);
  }
  return log;
}

/** The log as chunks of the given lengths, the last of which repeats until nothing is left. */
export function chunksOf(log: MadeLog, lengths: readonly number[], numbered = false): LogChunk[] {
  const chunks: LogChunk[] = [];
  const all = log.seconds.length;
  for (let from = 0, k = 0; from < all; k++) {
    const rows = Math.min(lengths[Math.min(k, lengths.length - 1)]!, all - from);
    const column = (name: keyof MadeLog) => Float64Array.from(log[name].slice(from, from + rows));
    chunks.push({
      firstRow: from + 1,
      rows,
      seconds: column("seconds"),
      volts: column("volts"),
      amperes: column("amperes"),
      temperatureCelsius: column("temperatureCelsius"),
      clockSeconds: column("clockSeconds"),
      ...(numbered && { rowNumbers: Float64Array.from({ length: rows }, (_, i) => from + i + 1) }),
    });
    from += rows;
  }
  return chunks;
}

export const check = (log: MadeLog, options?: Parameters<typeof checkLog>[1]): LogQuality =>
  checkLog(chunksOf(log, [log.seconds.length]), options);

/** Codes with rows, for comparing: "gap 5-6". */
export const found = (quality: LogQuality, severity?: string): string[] =>
  quality.defects
    .filter((one) => severity === undefined || one.severity === severity)
    .map((one) => `${one.code} ${one.firstRow}-${one.lastRow}`);
