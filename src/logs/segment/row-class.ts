import type { LogChunk } from "../chunk.js";
import type { FullSegmentRule } from "./rule.js";

/**
 * @internal What a row looks like by itself and by the rows before it. `plateau` is a charge whose voltage has begun to
 * hold; every new level is a class of its own kind, told apart by its parity.
 */
export type RowClass = number;

export const REST = 0;
export const DISCHARGE = 1;
export const PULSE = 2;
export const ENGINE = 3;
/** Charge: 4 and 5 alternate with every level of voltage that is tried. */
export const CHARGE = 4;
/** Without current: 6 and 7 alternate in the same way. */
export const VOLTAGE_ONLY = 6;

/** @internal Tells the class of one row after the other, with hysteresis. */
export interface RowClasses {
  next(seconds: number, volts: number, amperes: number): RowClass;
  /**
   * First row from `from` on that may be of another class than the row before; a short way for the long stretches that logs
   * are made of.
   */
  skip(chunk: LogChunk, from: number): number;
}

/** Level of a voltage before a dip follows the readings with this time constant [s]. */
const LEVEL_SECONDS = 2;

/** @internal */
export function createRowClasses(rule: FullSegmentRule): RowClasses {
  let state = -1;
  let before = Number.NaN;
  // Peak of the pulse, end of the last pulse or engine run.
  let peak = 0;
  let engineUntil = Number.NEGATIVE_INFINITY;
  // Smoothed voltage of a charge, the level it is held against, and the parity of that level.
  let smoothed = 0;
  let level = 0;
  let parity = 0;
  // Without current: level before a dip.
  let calm = 0;
  let dippedFor = -1;

  const charging = (volts: number, step: number): RowClass => {
    if (state !== CHARGE && state !== CHARGE + 1) {
      smoothed = level = volts;
      parity ^= 1;
    } else smoothed += ((volts - smoothed) * step) / (step + rule.smoothingSeconds);
    if (Math.abs(smoothed - level) > rule.plateauVolts) {
      level = smoothed;
      parity ^= 1;
    }
    return CHARGE + parity;
  };

  const byCurrent = (volts: number, amperes: number, step: number): RowClass => {
    if (state === PULSE) {
      if (amperes < peak) peak = amperes;
      if (-amperes >= rule.crankLeaveAmperes || -amperes >= -0.1 * peak) return PULSE;
    } else if (-amperes >= rule.crankAmperes) {
      peak = amperes;
      return PULSE;
    }
    const limit = state === REST || state === -1 ? rule.restLeaveAmperes : rule.restEnterAmperes;
    if (Math.abs(amperes) <= limit) return REST;
    return amperes > 0 ? charging(volts, step) : DISCHARGE;
  };

  const byVoltage = (volts: number, step: number): RowClass => {
    if (Number.isNaN(before)) calm = level = volts;
    // A charging voltage that ends is no dip.
    if (state === ENGINE) calm = Math.min(calm, rule.engineLeaveVolts);
    const least = calm - (dippedFor >= 0 ? rule.crankDipVolts / 2 : rule.crankDipVolts);
    if (volts < least && dippedFor <= rule.crankMostSeconds) {
      dippedFor = dippedFor < 0 ? 0 : dippedFor + step;
      return PULSE;
    }
    if (volts < least) calm = volts;
    dippedFor = -1;
    calm += ((volts - calm) * step) / (step + LEVEL_SECONDS);
    if (state < VOLTAGE_ONLY || Math.abs(volts - level) > rule.restPlateauVolts) {
      level = volts;
      parity ^= 1;
    }
    return VOLTAGE_ONLY + parity;
  };

  const skipRest = ({ rows, seconds, volts, amperes }: LogChunk, from: number): number => {
    const most = rule.restLeaveAmperes;
    let [i, time] = [from, before];
    for (; i < rows; i++) {
      const current = amperes[i]!;
      if (!(current <= most && current >= -most && seconds[i]! >= time && volts[i]! > -1e9)) break;
      time = seconds[i]!;
    }
    before = time;
    return i;
  };

  const skipLoad = ({ rows, seconds, volts, amperes }: LogChunk, from: number): number => {
    const [least, most] = [-rule.crankAmperes, -rule.restEnterAmperes];
    let [i, time] = [from, before];
    for (; i < rows; i++) {
      const current = amperes[i]!;
      if (!(current < most && current > least && seconds[i]! >= time && volts[i]! > -1e9)) break;
      time = seconds[i]!;
    }
    before = time;
    return i;
  };

  const skipCharge = ({ rows, seconds, volts, amperes }: LogChunk, from: number): number => {
    const { restEnterAmperes: least, smoothingSeconds: tau, plateauVolts: band } = rule;
    let [i, time, smooth] = [from, before, smoothed];
    for (; i < rows; i++) {
      const step = seconds[i]! - time;
      const next = smooth + ((volts[i]! - smooth) * step) / (step + tau);
      if (!(amperes[i]! > least && step >= 0 && Math.abs(next - level) <= band)) break;
      smooth = next;
      time = seconds[i]!;
    }
    [before, smoothed] = [time, smooth];
    return i;
  };

  return {
    skip(chunk, from) {
      // While an engine may start to run, every row counts.
      if (before <= engineUntil) return from;
      if (state === REST) return skipRest(chunk, from);
      if (state === DISCHARGE) return skipLoad(chunk, from);
      return state === CHARGE || state === CHARGE + 1 ? skipCharge(chunk, from) : from;
    },
    next(seconds, volts, amperes) {
      const step = Number.isNaN(before) ? 0 : seconds - before;
      const plain = !Number.isNaN(amperes) ? byCurrent(volts, amperes, step) : byVoltage(volts, step);
      if (state === PULSE || state === ENGINE) engineUntil = before + rule.engineWithinSeconds;
      before = seconds;
      if (plain !== PULSE && seconds <= engineUntil) {
        const limit = state === ENGINE ? rule.engineLeaveVolts : rule.engineEnterVolts;
        // Right after a crank nothing but an alternator charges, whatever the voltage has reached by then.
        if (volts >= limit || amperes > rule.restLeaveAmperes) {
          state = ENGINE;
          return ENGINE;
        }
      }
      state = plain;
      return plain;
    },
  };
}
