import {
  type Estimate,
  type Interval,
  normalCdf,
  type Refusal,
  refuse,
  requireEstimate,
  requireFinite,
  requirePositive,
} from "../numeric/index.js";
import type { Derivation, SourceId, Standing } from "../sources/index.js";

/** A parked vehicle. */
export interface ParkedVehicle {
  /** RC of the label [min] (> 0). */
  readonly reserveCapacityMinutes: number;
  /** Current out of the battery [A] (> 0). */
  readonly drawAmperes: Estimate;
  /** Charge when parked, as a fraction of full (0..1). Default: full. */
  readonly startingCharge?: Estimate;
}

/** Time until the engine no longer starts. */
export interface StandingTime {
  /** Middle of the range, with the range and the inputs in its uncertainty [d]. */
  readonly days: Estimate;
  /** From the least to the most the rule allows, widened by 1.96 u of the inputs [d]. */
  readonly interval: Interval;
  /** What the bulletin's formula gives [d]. */
  readonly bulletinDays: number;
  /** Both shorten the time and are left out. */
  readonly notIncluded: readonly ["self-discharge", "cold"];
  readonly source: SourceId;
  readonly standing: Standing;
}

const FULL: Estimate = { value: 1, standardUncertainty: 0 };
const LEFT_OUT = ["self-discharge", "cold"] as const;

/** A draw [A] or a charge [1] below a millionth is none. */
const LEAST = 1e-6;

type StandingRefusal = Refusal<"draw-not-established" | "charge-out-of-range">;

/** Fastest and slowest days to no start, and the relative uncertainty of the inputs. */
function range(vehicle: ParkedVehicle): readonly [number, number, number] | StandingRefusal {
  const { reserveCapacityMinutes: minutes, drawAmperes: draw, startingCharge: charge = FULL } = vehicle;
  requireEstimate("drawAmperes", draw);
  requireEstimate("startingCharge", charge);
  requirePositive("reserveCapacityMinutes", minutes);
  if (draw.value <= 2 * draw.standardUncertainty || draw.value < LEAST)
    return refuse("draw-not-established", "The draw cannot be told from zero.", "A finer reading.");
  if (!(charge.value >= LEAST && charge.value <= 1))
    return refuse("charge-out-of-range", "A starting charge lies in 0..1.", "The charge when parked.");
  const full = (0.4 * 0.6 * minutes) / (24 * draw.value);
  // 0.417 RC, the charge at 25 A, against the bulletin's 0.6 RC: -30 %. And where 40 % gone means no start, a battery
  // parked at 60 % has no time left: the strict reading bounds the linear one from below.
  const fastest = 0.7 * full * Math.max(0, (charge.value - 0.6) / 0.4);
  const relative = Math.hypot(
    draw.standardUncertainty / draw.value,
    charge.standardUncertainty / charge.value,
  );
  return [fastest, full * charge.value, relative];
}

/**
 * Days until a parked vehicle no longer starts because of its draw.
 *
 * Scope: sound battery at 25 °C; self-discharge (2-5 % a month) and cold, which shorten the time, are left out.
 *
 * @param vehicle reserve capacity [min], draw [A], charge when parked (0..1)
 * @returns days as an estimate, an interval and the plain result of the formula
 *
 * Refuses `draw-not-established` for a draw within 2 u of zero, `charge-out-of-range`.
 *
 * Equation: days = 0.4·0.6·RC·s / (24·I), −30/+0 % (our choice); s linear (our choice), bounded below by (s − 0.6)/0.4.
 * Source: a vehicle maker's service bulletin on battery drain.
 * @example
 * ```ts
 * import { daysUntilNoStart } from "crankworthy/vehicle";
 * const time = daysUntilNoStart({ reserveCapacityMinutes: 100, drawAmperes: { value: 0.05, standardUncertainty: 0 } });
 * time.bulletinDays; // => 20.0
 * time.interval.lower; // => 14.0
 * time.days.value; // => 17.0
 * ```
 */
export function daysUntilNoStart(
  vehicle: ParkedVehicle,
  derivation?: Derivation,
): StandingTime | StandingRefusal {
  const found = range(vehicle);
  if ("refused" in found) return found;
  const [fastest, slowest, relative] = found;
  const value = (fastest + slowest) / 2;
  const standardUncertainty = Math.hypot((slowest - fastest) / Math.sqrt(12), value * relative);
  derivation?.push({
    quantity: "days until no start",
    formula: "0.4 * 0.6 * RC * s / (24 * I), -30/+0 %",
    inputs: {
      RC: vehicle.reserveCapacityMinutes,
      I: vehicle.drawAmperes.value,
      s: (vehicle.startingCharge ?? FULL).value,
    },
    result: value,
    unit: "d",
    standardUncertainty,
    source: "draw-bulletin",
    standing: "read",
  });
  return {
    days: { value, standardUncertainty },
    interval: {
      lower: fastest * Math.max(0, 1 - 1.96 * relative),
      upper: slowest * (1 + 1.96 * relative),
    },
    bulletinDays: slowest,
    notIncluded: LEFT_OUT,
    source: "draw-bulletin",
    standing: "read",
  };
}

/** A vehicle that started when it was parked and did not start afterwards. */
export interface FlatBattery extends ParkedVehicle {
  readonly parkedDays: number;
  /** Charge found at the failed start, as a fraction of full (0..1), from rest voltage or gravity. */
  readonly chargeFound?: Estimate;
}

/** Which explanation the numbers support. */
export interface FlatBatteryExplanation {
  /**
   * `drain`: a sound battery and the measured draw. `worn-battery`: the same draw and a battery with 20-80 % of its
   * capacity. `undecided`: less than 10 to 1. `neither`: both fit badly; look at the starting circuit, or for a consumer
   * that was not on while measuring.
   */
  readonly code: "drain" | "worn-battery" | "undecided" | "neither";
  /** Likelihood of what was seen with a sound battery, divided by that with a worn one. */
  readonly likelihoodRatio: number;
  /** Probability that the draw alone keeps a sound battery from starting within the parked days. */
  readonly drainSufficesProbability: number;
  readonly standing: "our-choice";
}

/**
 * Compares two explanations of a flat battery: drain alone, or a worn battery.
 *
 * Scope: no statement on the battery's condition. Charge it, then test it. Without the charge found, the time alone can
 * speak against drain, never for it: a worn battery goes flat whenever a sound one does.
 *
 * @param seen reserve capacity [min], draw [A], parked time [d] (≥ 0), and where known the charge found
 * @returns code, likelihood ratio, and whether the draw alone suffices
 *
 * Refuses as {@link daysUntilNoStart}.
 *
 * Equation: L(w) = mean over the rule's range of Φ((D − w·T)/(u·w·T)) · N(s_found; s − 24·I·D/(0.6·RC·f·w), u), w = 1 for a
 * sound battery and averaged over 0.2..0.8 for a worn one; a floor of 5 % in time and 0.05 in charge (all our choice).
 * @example
 * ```ts
 * import { explainFlatBattery } from "crankworthy/vehicle";
 * const draw = { value: 0.03, standardUncertainty: 0.002 };
 * explainFlatBattery({ reserveCapacityMinutes: 100, drawAmperes: draw, parkedDays: 7 }).code; // => "worn-battery"
 * explainFlatBattery({ reserveCapacityMinutes: 100, drawAmperes: draw, parkedDays: 60 }).code; // => "undecided"
 * ```
 */
export function explainFlatBattery(seen: FlatBattery): FlatBatteryExplanation | StandingRefusal {
  const found = range(seen);
  if ("refused" in found) return found;
  const { parkedDays: days, chargeFound, startingCharge = FULL } = seen;
  requireFinite("parkedDays", days, 0, 1e6);
  if (chargeFound) requireEstimate("chargeFound", chargeFound);
  const [fastest, slowest, inputs] = found;
  const relative = Math.hypot(inputs, 0.05);
  const gone = (24 * seen.drawAmperes.value * days) / (0.6 * seen.reserveCapacityMinutes);
  let best = 0;
  const likelihood = (worn: number): readonly [likelihood: number, noStart: number] => {
    let sum = 0;
    let noStart = 0;
    for (let i = 0.5; i < STEPS; i++) {
      const time = worn * (fastest + ((slowest - fastest) * i) / STEPS);
      const flat = time > 0 ? normalCdf((days - time) / (relative * time)) : 1;
      let weight = 1;
      let fit = flat;
      if (chargeFound) {
        const loss = gone / (worn * (0.7 + (0.3 * i) / STEPS));
        const spread = Math.hypot(
          chargeFound.standardUncertainty,
          startingCharge.standardUncertainty,
          loss * inputs,
          0.05,
        );
        const z = (chargeFound.value - Math.max(0, startingCharge.value - loss)) / spread;
        fit *= Math.exp(-z * z * 0.5);
        weight = 1 / spread;
      }
      best = Math.max(best, fit);
      sum += fit * weight;
      noStart += flat;
    }
    return [sum / STEPS, noStart / STEPS];
  };
  const [drain, drainSufficesProbability] = likelihood(1);
  let worn = 0;
  for (let i = 0.5; i < STEPS; i++) worn += likelihood(0.2 + (0.6 * i) / STEPS)[0] / STEPS;
  // Both below 1 in 100 at their best: the ratio of two misfits says nothing.
  const neither = best < 0.01;
  const likelihoodRatio = worn > 0 ? drain / worn : drain > 0 ? Infinity : 1;
  let code: FlatBatteryExplanation["code"] = "undecided";
  if (neither) code = "neither";
  else if (likelihoodRatio >= 10) code = "drain";
  else if (likelihoodRatio <= 0.1) code = "worn-battery";
  return { code, likelihoodRatio, drainSufficesProbability, standing: "our-choice" };
}

const STEPS = 12;
