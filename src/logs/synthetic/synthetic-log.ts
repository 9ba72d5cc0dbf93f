import type { LogChunk } from "../chunk.js";
import { checkPlan } from "./defaults.js";
import { record } from "./instrument.js";
import type { SyntheticPlan } from "./plan.js";
import { createRandom } from "./random.js";
import { type SyntheticTruth, truthOf } from "./truth.js";

/** An invented log, and what it hides. */
export interface SyntheticLog {
  /** Made while it is read, the same every time; of a log of any length only one chunk is held. */
  readonly chunks: Iterable<LogChunk>;
  readonly truth: SyntheticTruth;
}

/**
 * Makes a log out of a plan and a seed: **invented, not measured**.
 *
 * Scope: for demonstrations, and for tests that ask whether an estimate covers a truth that is known. It shows what the
 * formulas below show and nothing else; no open recording of an engine crank stands behind the shape of its starting
 * current, nothing in it depends on temperature, and it supports no claim about real starts or batteries. The same plan and
 * seed give the same numbers to the last bit on every machine.
 *
 * @param plan battery, phases and instrument; what is left out has a default
 * @param seed whole number (0..2⁵³ − 1): decides noise and random loads, nothing else
 * @returns chunks of rows, and the truth: resistance [Ω], charge [Ah], and for every stretch electromotive force, state of
 *   charge and least voltage of the continuous signal
 *
 * Throws RangeError for a plan that cannot be, or that leaves the state of charge 0..1.
 *
 * Equation: V = E + R·I + v₁ + v₂, E a straight line in the state of charge, dvₙ/dt = (rₙ·I − vₙ)/τₙ; while charging
 * r₁ grows by acceptance/(1.02 − s). Crank: −I = [P·(1 + a·sin 2πft)·(1 − e^(−t/2 ms)) + J·(e^(−t/60 ms) − e^(−t/2 ms))],
 * brought to nothing at the release. Source: our choice, all of it. Random numbers: xoshiro128++ seeded by SplitMix64
 * (Blackman & Vigna 2021, from memory).
 * @example
 * ```ts
 * import { syntheticLog } from "crankworthy/logs";
 * const plan = {
 *   phases: [
 *     { kind: "rest", seconds: 60 },
 *     { kind: "crank", seconds: 1, crankingAmperes: 150, intervalSeconds: 0.005 },
 *     { kind: "rest", seconds: 60 },
 *   ],
 * };
 * const { chunks, truth } = syntheticLog(plan, 1);
 * [...chunks][0].rows; // => 321
 * truth.segments[1].leastVolts; // => 10.47
 * ```
 */
export function syntheticLog(plan: SyntheticPlan, seed: number): SyntheticLog {
  const checked = checkPlan(plan);
  createRandom(seed); // a wrong seed shall throw here, not at the first row
  return { chunks: { [Symbol.iterator]: () => record(checked, seed) }, truth: truthOf(checked, seed) };
}
