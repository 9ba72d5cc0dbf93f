import type { LogChannel, LogDefectCode } from "crankworthy/logs";
import { type MadeLog, OHMS } from "./made-log.js";

/** Spoils a log at a row (index from 0, with 400 rows behind it) and says what must be found there. */
export interface Plant {
  readonly name: string;
  readonly code: LogDefectCode;
  readonly severity: "error" | "warning" | "note";
  readonly channel?: LogChannel;
  /** Returns the row numbers of the stretch; undefined for the whole log. */
  readonly spoil: (log: MadeLog, at: number) => readonly [number, number] | undefined;
}

const COLUMNS = ["seconds", "volts", "amperes", "temperatureCelsius", "clockSeconds"] as const;
const every = (column: number[], change: (value: number, i: number) => number) => {
  for (let i = 0; i < column.length; i++) column[i] = change(column[i]!, i);
};
/** Replaces four rows of a column by a number. */
const replaced =
  (column: "volts" | "amperes" | "temperatureCelsius", value: number) => (log: MadeLog, at: number) => {
    for (let i = at; i < at + 4; i++) {
      log[column][i] = value;
      // At rest, where 999 A leave the voltage unmoved.
      if (column === "amperes") log.volts[i] = log.volts[at - 1]!;
    }
    return [at + 1, at + 4] as const;
  };
const whole = (spoil: (log: MadeLog) => void) => (log: MadeLog) => {
  spoil(log);
  return undefined;
};
/** A load between two currents by turns of ten rows, as the battery would answer. */
function turns(log: MadeLog, at: number, rows: number, from: number, to: number): void {
  for (let i = at; i < at + rows; i++) {
    log.amperes[i] = (i - at) % 20 < 10 ? from : to;
    log.volts[i] = 12.6 + OHMS * log.amperes[i]! + ((i * 7) % 5) * 0.001;
  }
}

export const PLANTS: readonly Plant[] = [
  {
    name: "two rows change places",
    code: "time-out-of-order",
    severity: "warning",
    spoil(log, at) {
      for (const name of COLUMNS) [log[name][at], log[name][at + 1]] = [log[name][at + 1]!, log[name][at]!];
      return [at + 2, at + 2];
    },
  },
  {
    name: "the clock is set back an hour",
    code: "clock-set-back",
    severity: "error",
    spoil(log, at) {
      every(log.seconds, (one, i) => (i < at ? one : one - 3600));
      return [at + 1, at + 1];
    },
  },
  {
    name: "a row is written twice",
    code: "duplicate-row",
    severity: "note",
    spoil(log, at) {
      for (const name of COLUMNS) log[name].splice(at + 1, 0, log[name][at]!);
      return [at + 2, at + 2];
    },
  },
  {
    name: "a time is written twice",
    code: "same-time-other-values",
    severity: "warning",
    spoil(log, at) {
      log.seconds[at + 1] = log.seconds[at]!;
      log.volts[at + 1] = log.volts[at]! - 0.01;
      return [at + 2, at + 2];
    },
  },
  {
    name: "one row is missing under load",
    code: "gap",
    severity: "warning",
    spoil(log, at) {
      turns(log, at - 20, 41, -30, -20);
      for (const name of COLUMNS) log[name].splice(at, 1);
      return [at, at + 1];
    },
  },
  {
    name: "an hour is missing",
    code: "gap",
    severity: "warning",
    spoil(log, at) {
      every(log.seconds, (one, i) => (i < at ? one : one + 3600));
      every(log.clockSeconds, (one, i) => (i < at ? one : one + 3600));
      log.amperes[at] = -5;
      return [at, at + 1];
    },
  },
  {
    name: "milliseconds under a header of seconds",
    code: "time-scale",
    severity: "error",
    spoil: whole((log) => every(log.seconds, (one) => 1000 * one)),
  },
  ...[999, -999.9, 0, 9999, 65_535, 32.767].map(
    (value): Plant => ({
      name: `${value} V`,
      code: "sentinel-number",
      severity: "error",
      channel: "volts",
      spoil: replaced("volts", value),
    }),
  ),
  ...[999.9, 32_767, -999].map(
    (value): Plant => ({
      name: `${value} A`,
      code: "sentinel-number",
      severity: "error",
      channel: "amperes",
      spoil: replaced("amperes", value),
    }),
  ),
  ...[85, -127, -999].map(
    (value): Plant => ({
      name: `${value} °C`,
      code: "sentinel-number",
      severity: "error",
      channel: "temperatureCelsius",
      spoil: replaced("temperatureCelsius", value),
    }),
  ),
  ...(["volts", "amperes", "temperatureCelsius"] as const).map(
    (column): Plant => ({
      name: `123456 in ${column}`,
      code: "out-of-range",
      severity: "error",
      channel: column,
      spoil: replaced(column, 123_456),
    }),
  ),
  {
    name: "voltage missing in four rows",
    code: "not-sampled-together",
    severity: "note",
    spoil: replaced("volts", Number.NaN),
  },
  {
    name: "voltage frozen under a changing load",
    code: "stuck-channel",
    severity: "error",
    channel: "volts",
    spoil(log, at) {
      turns(log, at, 100, -30, -5);
      log.volts.fill(12.3456, at + 1, at + 100);
      return [at + 2, at + 100];
    },
  },
  {
    name: "current frozen while the voltage goes up and down",
    code: "stuck-channel",
    severity: "error",
    channel: "amperes",
    spoil(log, at) {
      turns(log, at, 100, -40, 0);
      log.amperes.fill(-12.3456, at + 1, at + 100);
      return [at + 2, at + 100];
    },
  },
  {
    name: "current clipped at −100 A",
    code: "clipping",
    severity: "warning",
    channel: "amperes",
    spoil(log, at) {
      for (let i = at; i < at + 40; i++) {
        const load = -180 * Math.sin((Math.PI * (i - at)) / 40);
        log.amperes[i] = Math.max(-100, load);
        log.volts[i] = 12.6 + OHMS * load;
      }
      // 180·sin(π·k/40) ≥ 100 for k = 8..32.
      return [at + 9, at + 33];
    },
  },
  {
    name: "voltage clipped at 9 V",
    code: "clipping",
    severity: "warning",
    channel: "volts",
    spoil(log, at) {
      for (let i = at; i < at + 40; i++) {
        log.amperes[i] = -480 * Math.sin((Math.PI * (i - at)) / 40);
        log.volts[i] = Math.max(9, 12.6 + OHMS * log.amperes[i]!);
      }
      // 480·sin(π·k/40) ≥ 360 for k = 11..29.
      return [at + 12, at + 30];
    },
  },
  {
    name: "a rest with the meter off by 20 mA",
    code: "idle-current",
    severity: "note",
    channel: "amperes",
    spoil(log) {
      // A rest of an hour behind the log.
      const first = log.seconds.length;
      for (let i = first; i < first + 720; i++) {
        log.seconds.push(log.seconds[first - 1]! + i - first + 1);
        log.clockSeconds.push(log.clockSeconds[first - 1]! + i - first + 1);
        log.amperes.push(i % 3 ? -0.02 : -0.025);
        log.volts.push(12.6 + 0.001 * (i % 4));
        log.temperatureCelsius.push(20);
      }
      // The noise of the rest before may belong to it; the end does.
      return undefined;
    },
  },
  {
    name: "millivolts",
    code: "voltage-in-millivolts",
    severity: "error",
    channel: "volts",
    spoil: whole((log) => every(log.volts, (one) => 1000 * one)),
  },
  {
    name: "milliamperes",
    code: "current-in-milliamperes",
    severity: "error",
    channel: "amperes",
    spoil: whole((log) => every(log.amperes, (one) => 1000 * one)),
  },
  {
    name: "degrees Fahrenheit",
    code: "temperature-in-fahrenheit",
    severity: "warning",
    channel: "temperatureCelsius",
    spoil: whole((log) => every(log.temperatureCelsius, (one) => 1.8 * one + 32)),
  },
  {
    name: "kelvin",
    code: "temperature-in-kelvin",
    severity: "error",
    channel: "temperatureCelsius",
    spoil: whole((log) => every(log.temperatureCelsius, (one) => one + 273.15)),
  },
  {
    name: "positive = discharging",
    code: "current-sign",
    severity: "error",
    channel: "amperes",
    spoil: whole((log) => every(log.amperes, (one) => -one)),
  },
  {
    name: "leads the wrong way round for four rows",
    code: "reversed-polarity",
    severity: "error",
    channel: "volts",
    spoil: replaced("volts", -12.4),
  },
  {
    name: "24 V system",
    code: "system-voltage",
    severity: "error",
    channel: "volts",
    spoil: whole((log) => every(log.volts, (one) => 2 * one)),
  },
  {
    name: "6 V system",
    code: "system-voltage",
    severity: "warning",
    channel: "volts",
    spoil: whole((log) => every(log.volts, (one) => one / 2)),
  },
  {
    name: "current five rows late",
    code: "current-lag",
    severity: "warning",
    spoil: whole((log) => {
      log.amperes = [...log.amperes.slice(0, 5).fill(0), ...log.amperes.slice(0, -5)];
    }),
  },
];
