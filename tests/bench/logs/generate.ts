import { closeSync, openSync, writeSync } from "node:fs";

/** What was written, for the contenders to be held against. */
export interface GeneratedLog {
  readonly rows: number;
  readonly bytes: number;
}

const HEADER = "t_s,voltage_V,current_A,temperature_C\n";
const STEP_SECONDS = 0.1;
const CAPACITY_AMPERE_SECONDS = 60 * 3600;

/** One stretch of the battery's life: how long, which current, and up to which voltage where it is charged. */
interface Phase {
  readonly seconds: number;
  readonly amperes: number;
  readonly limitVolts: number;
}

/**
 * Writes a log as a logger on a bench would: 10 rows a second of a 60 Ah battery that rests, is discharged at several
 * currents, charged with limited current and voltage, and cranks engines. Plain arithmetic with a seed: the same file
 * everywhere. It only has to look like a log; what is measured on it here is speed.
 */
export function generateLog(path: string, leastBytes: number, seed = 20): GeneratedLog {
  const random = lehmer(seed);
  const file = openSync(path, "w");
  const buffer = Buffer.alloc(1 << 20);
  let at = buffer.write(HEADER);
  let bytes = 0;
  let rows = 0;
  let charge = 0.9 * CAPACITY_AMPERE_SECONDS;
  let polarization = 0;
  let celsius = 22;

  const put = (value: number, decimals: number): void => {
    let left = Math.round(Math.abs(value) * 10 ** decimals);
    if (value < 0 && left > 0) buffer[at++] = 45;
    let digits = decimals + 1;
    for (let power = 10 ** digits; left >= power; power *= 10) digits++;
    at += digits + 1;
    for (let i = at - 1, n = 0; n < digits; i--, n++) {
      if (n === decimals) buffer[i--] = 46;
      buffer[i] = 48 + (left % 10);
      left = Math.floor(left / 10);
    }
  };

  try {
    while (bytes + at < leastBytes) {
      for (const phase of life(random)) {
        const steps = Math.round(phase.seconds / STEP_SECONDS);
        for (let i = 0; i < steps; i++) {
          const filled = charge / CAPACITY_AMPERE_SECONDS;
          const open = 11.7 + 1.05 * Math.min(1, filled) + polarization;
          let amperes = phase.amperes;
          if (amperes > 0) amperes = Math.max(0.05, Math.min(amperes, (phase.limitVolts - open) / 0.02));
          if (filled < 0.2 && amperes < 0) amperes = 0;
          // Near full the battery takes less and less: the voltage rises to the charger's limit, then the current falls.
          const drag = amperes > 0 ? 0.015 + 0.25 * filled ** 16 : 0.015;
          polarization += (drag * amperes - polarization) * (amperes === 0 ? 2e-4 : 2e-3);
          charge = Math.min(1.1 * CAPACITY_AMPERE_SECONDS, charge + amperes * STEP_SECONDS);
          celsius += (22 + 0.02 * Math.abs(amperes) - celsius) * 1e-5;
          put(rows * STEP_SECONDS, 1);
          buffer[at++] = 44;
          put(open + 0.008 * amperes + (random() - 0.5) * 0.003, 4);
          buffer[at++] = 44;
          put(amperes + (random() - 0.5) * 0.02, 3);
          buffer[at++] = 44;
          put(celsius + (random() - 0.5) * 0.05, 2);
          buffer[at++] = 10;
          rows++;
          if (at > buffer.length - 100) {
            bytes += writeSync(file, buffer, 0, at);
            at = 0;
          }
        }
        if (bytes + at >= leastBytes) break;
      }
    }
    bytes += writeSync(file, buffer, 0, at);
  } finally {
    closeSync(file);
  }
  return { rows, bytes };
}

/** A few hours of it. */
function life(random: () => number): Phase[] {
  const minutes = (least: number, most: number): number => 60 * (least + (most - least) * random());
  const rest = (): Phase => ({ seconds: minutes(20, 90), amperes: 0, limitVolts: 0 });
  const drain = (): Phase => ({ seconds: minutes(20, 80), amperes: -(2 + 18 * random()), limitVolts: 0 });
  const start: readonly Phase[] = [
    { seconds: 0.2, amperes: -(350 + 150 * random()), limitVolts: 0 },
    { seconds: 0.4 + random(), amperes: -(120 + 80 * random()), limitVolts: 0 },
    { seconds: minutes(10, 40), amperes: 25 + 15 * random(), limitVolts: 14.2 + 0.3 * random() },
  ];
  const charger: Phase = { seconds: minutes(120, 240), amperes: 6 + 4 * random(), limitVolts: 14.4 };
  return [rest(), drain(), rest(), charger, rest(), ...start, rest(), drain(), drain(), charger];
}

/** Park and Miller's generator: 31 bits are plenty for noise. */
function lehmer(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
