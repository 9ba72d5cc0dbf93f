import { wrongArgument } from "../../numeric/index.js";
import type { CheckedPlan } from "./defaults.js";
import { HAIR_SECONDS, type Law, lawOf } from "./law.js";
import { decay } from "./portable.js";
import { createRandom } from "./random.js";

/** The battery of a plan at one time after another; rows do not change what happens, only what is seen of it. @internal */
export interface Simulation {
  /** Brings the reading to a time since the start [s], not before the one asked for last. */
  readonly readAt: (seconds: number) => void;
  readonly reading: { volts: number; amperes: number; temperatureCelsius: number };
  /** When the current next jumps, between or within phases, after the time read last; Infinity for never [s]. */
  readonly nextChange: () => number;
}

/** One step of the calculation, as it has just been made. @internal */
export interface Step {
  readonly phase: number;
  /** Start of the step and length [s]. */
  readonly seconds: number;
  readonly length: number;
  /** Current at its start, in its middle (or what stands for it) and at its end [A]. */
  readonly startAmperes: number;
  readonly amperes: number;
  readonly endAmperes: number;
  readonly endVolts: number;
  readonly electromotiveVolts: number;
  readonly stateOfCharge: number;
  /** The source gives less than it could: it holds its voltage. */
  readonly holds: boolean;
}

/**
 * V = E(q) + I·R + v₁ + v₂ with dvₙ/dt = (I·rₙ − vₙ)/τₙ, solved exactly for the current of each step; a source's current is
 * the one that brings the voltage at the end of the step to what it holds (implicit Euler).
 *
 * @param observe is told every whole step, in order
 * @internal
 */
export function simulate(plan: CheckedPlan, seed: number, observe?: (step: Step) => void): Simulation {
  const { battery, phases, borders } = plan;
  const { resistanceOhms: ohms, fastSeconds, slowOhms, slowSeconds, selfDischargeAmperes: leak } = battery;
  const span = battery.fullVolts - battery.emptyVolts;
  const ampereSeconds = battery.capacityAmpereHours * 3600;
  let [charge, fast, slow] = [battery.stateOfCharge, 0, 0];
  let index = 0;
  let law = lawAt(0);
  let time = 0; // of the last whole step, since the phase began
  let [celsiusFrom, celsiusTo] = [battery.temperatureCelsius, celsiusAfter(0, battery.temperatureCelsius)];
  const reading = { volts: Number.NaN, amperes: Number.NaN, temperatureCelsius: Number.NaN };

  function lawAt(phase: number): Law {
    return lawOf(phases[phase]!, fastSeconds, () => createRandom(seed, phase + 1));
  }
  function celsiusAfter(phase: number, before: number): number {
    return phases[phase]!.temperatureCelsius ?? before;
  }
  const celsius = (at: number) => celsiusFrom + ((celsiusTo - celsiusFrom) * at) / phases[index]!.seconds;

  // The step in hand, from `time`: shares left of both relaxations, current, and the state at its end.
  let [lastLength, fastLeft, slowLeft] = [Number.NaN, 1, 1];
  let [mean, holds] = [0, false];
  let [nextCharge, nextFast, nextSlow] = [charge, fast, slow];
  function step(length: number): void {
    if (length !== lastLength) {
      lastLength = length;
      fastLeft = decay(-length / fastSeconds);
      slowLeft = decay(-length / slowSeconds);
    }
    let fastOhms = battery.fastOhms;
    const { source } = law;
    if (source) {
      fastOhms += battery.acceptanceOhms / (1.02 - charge);
      const held = source.volts + source.voltsPerKelvin * (celsius(time + length) - 25);
      const electromotive = battery.emptyVolts + span * (charge - (leak * length) / ampereSeconds);
      const pull = held - electromotive - fast * fastLeft - slow * slowLeft;
      const against =
        ohms + fastOhms * (1 - fastLeft) + slowOhms * (1 - slowLeft) + (span * length) / ampereSeconds;
      const wanted = pull / against;
      holds = wanted < source.amperes;
      mean = Math.min(source.amperes, Math.max(0, wanted));
    } else mean = law.amperes(time + length / 2);
    nextCharge = charge + ((mean - leak) * length) / ampereSeconds;
    nextFast = fast * fastLeft + mean * fastOhms * (1 - fastLeft);
    nextSlow = slow * slowLeft + mean * slowOhms * (1 - slowLeft);
  }
  const electromotiveVolts = () => battery.emptyVolts + span * nextCharge;
  const voltsAt = (amperes: number) => electromotiveVolts() + ohms * amperes + nextFast + nextSlow;
  const amperesAt = (at: number) => (law.source ? mean : law.amperes(at));

  function nextStop(): number {
    return Math.min(time + law.stepSeconds, law.nextChange(time), phases[index]!.seconds);
  }
  let before = Number.NaN; // current at the end of the step before, within the phase
  function commit(to: number): void {
    const length = to - time;
    if (observe && Number.isNaN(before)) {
      step(0);
      before = amperesAt(time);
    }
    step(length);
    if (!(nextCharge > -1e-3 && nextCharge < 1.02))
      wrongArgument(`plan.phases[${index}]`, `state of charge ${nextCharge}`, "a plan that keeps it in 0..1");
    if (observe) {
      const ends = law.nextChange(time) <= to + HAIR_SECONDS;
      // At a jump the current just before it is that of the step.
      const endAmperes = ends ? mean : amperesAt(to);
      observe({
        phase: index,
        seconds: borders[index]! + time,
        length,
        startAmperes: before,
        amperes: mean,
        endAmperes,
        endVolts: voltsAt(endAmperes),
        electromotiveVolts: electromotiveVolts(),
        stateOfCharge: nextCharge,
        holds,
      });
      before = ends ? Number.NaN : endAmperes;
    }
    [charge, fast, slow] = [nextCharge, nextFast, nextSlow];
    time = to;
  }
  function enterNextPhase(): void {
    index++;
    time = 0;
    before = Number.NaN;
    law = lawAt(index);
    celsiusFrom = celsiusTo;
    celsiusTo = celsiusAfter(index, celsiusFrom);
  }

  const readAt = (seconds: number): void => {
    for (;;) {
      const stop = nextStop();
      const at = seconds - borders[index]!;
      if (stop > at + HAIR_SECONDS) break;
      const ends = stop >= phases[index]!.seconds - HAIR_SECONDS;
      if (ends && index === phases.length - 1) {
        // The end itself belongs to the last phase; the truth wants its last step all the same.
        if (observe && time < stop) commit(stop);
        break;
      }
      commit(stop);
      if (ends) enterNextPhase();
    }
    const at = Math.max(time, seconds - borders[index]!);
    step(at - time);
    const ripple = law.rippleVolts?.(at) ?? 0;
    const amperes = amperesAt(at);
    reading.volts = voltsAt(amperes) + ripple;
    reading.amperes = amperes + ripple / ohms;
    reading.temperatureCelsius = celsius(at);
  };
  const nextChange = (): number => {
    const change = Math.min(law.nextChange(time), phases[index]!.seconds);
    const last = index === phases.length - 1 && change >= phases[index]!.seconds;
    return last ? Number.POSITIVE_INFINITY : borders[index]! + change;
  };
  return { readAt, reading, nextChange };
}
