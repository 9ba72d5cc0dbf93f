import type { CrankPhase, LoadStepsPhase, ParkedPhase, SyntheticPhase } from "./plan.js";
import { decay, sineOfTurns } from "./portable.js";
import type { Random } from "./random.js";

/** What a phase forces upon the battery; times are seconds since the phase began, asked for in rising order. @internal */
export interface Law {
  /** Longest step of the calculation [s]; Infinity where the current is steady between two changes. */
  readonly stepSeconds: number;
  /** When the current next jumps, after a time; Infinity for never. */
  readonly nextChange: (after: number) => number;
  /** The current forced [A], charging positive. Not asked for where there is a source. */
  readonly amperes: (time: number) => number;
  /** A source that holds a voltage with at most so much current, and never takes any. */
  readonly source?: { readonly volts: number; readonly voltsPerKelvin: number; readonly amperes: number };
  /** Voltage of a ripple too fast to move charge [V]. */
  readonly rippleVolts?: (time: number) => number;
}

const never = () => Number.POSITIVE_INFINITY;
/** Sums of decimal times end a hair beside each other. @internal */
export const HAIR_SECONDS = 1e-9;

/** @internal */
export function lawOf(phase: SyntheticPhase, fastSeconds: number, random: () => Random): Law {
  const steady = (amperes: number): Law => ({
    stepSeconds: Number.POSITIVE_INFINITY,
    nextChange: never,
    amperes: () => amperes,
  });
  switch (phase.kind) {
    case "rest":
      return steady(0);
    case "discharge":
      return steady(-phase.amperes);
    case "load-steps":
      return loadSteps(phase, random);
    case "parked":
      return parked(phase);
    case "crank":
      return crank(phase);
    default: {
      const { volts, voltsPerKelvin = 0, amperes } = phase;
      // A fortieth of the fast time constant keeps the taper true to about a percent of its current.
      const law = { ...steady(0), stepSeconds: fastSeconds / 40, source: { volts, voltsPerKelvin, amperes } };
      if (phase.kind === "charge") return law;
      const { ripplePeakToPeakVolts = 0.05, rippleHertz = 380 } = phase;
      return { ...law, rippleVolts: (time) => (ripplePeakToPeakVolts / 2) * sineOfTurns(rippleHertz * time) };
    }
  }
}

function loadSteps({ amperes, holdSeconds, random }: LoadStepsPhase, source: () => Random): Law {
  const least = Math.min(...amperes);
  const span = Math.max(...amperes) - least;
  const numbers = random ? source() : undefined;
  let at = -1;
  let load = 0;
  const slot = (time: number) => Math.floor((time + HAIR_SECONDS) / holdSeconds);
  return {
    stepSeconds: Number.POSITIVE_INFINITY,
    nextChange: (after) => (slot(after) + 1) * holdSeconds,
    amperes: (time) => {
      const wanted = slot(time);
      if (!numbers) return -amperes[wanted % amperes.length]!;
      for (; at < wanted; at++) load = least + span * numbers.uniform();
      return -load;
    },
  };
}

function parked({ settledAmperes, stairs = [], wakeUps }: ParkedPhase): Law {
  const asleepAt = stairs.at(-1)?.untilSeconds ?? 0;
  const every = wakeUps?.everySeconds ?? Number.POSITIVE_INFINITY;
  const length = wakeUps?.forSeconds ?? 0;
  const sinceWake = (time: number) => time - Math.floor((time + HAIR_SECONDS) / every) * every;
  return {
    stepSeconds: Number.POSITIVE_INFINITY,
    nextChange: (after) => {
      const stair = stairs.find(({ untilSeconds }) => untilSeconds > after + HAIR_SECONDS);
      if (stair) return stair.untilSeconds;
      if (!wakeUps) return Number.POSITIVE_INFINITY;
      const start = after - sinceWake(after);
      return start >= every - HAIR_SECONDS && after + HAIR_SECONDS < start + length
        ? start + length
        : start + every;
    },
    amperes: (time) => {
      if (time + HAIR_SECONDS < asleepAt)
        return -stairs.find(({ untilSeconds }) => untilSeconds > time + HAIR_SECONDS)!.amperes;
      const awake = wakeUps && time + HAIR_SECONDS >= every && sinceWake(time) + HAIR_SECONDS < length;
      return -(settledAmperes + (awake ? wakeUps.amperes : 0));
    },
  };
}

/** Rise of the current in the windings, and fall while the motor comes to speed [s]. Invented. */
const RISE_SECONDS = 0.002;
const SPIN_UP_SECONDS = 0.06;

function crank(phase: CrankPhase): Law {
  const { seconds, crankingAmperes, rippleShare = 0.15, rippleHertz = 7, releaseSeconds = 0.04 } = phase;
  const { inrushAmperes = 1.5 * crankingAmperes } = phase;
  return {
    stepSeconds: RISE_SECONDS / 4,
    nextChange: never,
    amperes: (time) => {
      const rise = decay(-time / RISE_SECONDS);
      const plateau = crankingAmperes * (1 + rippleShare * sineOfTurns(rippleHertz * time));
      const inrush = inrushAmperes * (decay(-time / SPIN_UP_SECONDS) - rise);
      const left = seconds - time;
      return (
        -(plateau * (1 - rise) + inrush) * (left < releaseSeconds ? Math.max(0, left) / releaseSeconds : 1)
      );
    },
  };
}
