import {
  type Acid,
  type Chemistry,
  defaultAcid,
  fullChargeVolts,
  gravityFromVolts,
  type VoltageRefusal,
} from "../../charge-state/index.js";
import {
  type Estimate,
  type Interval,
  interval95,
  isRefusal,
  type Refusal,
  refuse,
  requireEstimate,
  requireFinite,
  requirePositive,
  requirePositiveEstimate,
} from "../../numeric/index.js";

/** A voltage read during a long rest. */
export interface LongRestReading {
  /** Since the charger or load went off [d] (≥ 0). */
  readonly days: number;
  /** Voltage at the posts, uncertainty of this reading against the others [V]. */
  readonly volts: Estimate;
  /** Of the electrolyte [°C]. Left out: 25 ± 5.8, which hides a slow loss. */
  readonly temperatureCelsius?: Estimate;
  /** Which rest it belongs to, where the readings are of several. Default 0. */
  readonly rest?: number;
}

/** Settings of {@link selfDischargeFromRests}. */
export interface SelfDischargeOptions {
  readonly chemistry: Chemistry;
  /** The battery's own acid, when known; otherwise the default of its chemistry. */
  readonly acid?: Acid;
  /** A reading earlier than this still relaxes and is left out [d]. Default 1 (our choice: after a charge the excess is seen for 8 to 24 h). */
  readonly settleDays?: number;
  /** Least time between first and last reading of a rest [d]. Default 7 (our choice: 3 % a month move 12 V by some 6 mV in a week). */
  readonly leastDays?: number;
}

/** How fast a battery loses charge by itself. */
export interface SelfDischarge {
  /** Share of full charge lost in a day, 1/d. */
  readonly chargePerDay: Estimate;
  /** The same in 30 days. */
  readonly chargePerMonth: Estimate;
  readonly intervalPerMonth: Interval;
  /** Loss of voltage referred to 25 °C [V/d]. */
  readonly voltsPerDay: Estimate;
  readonly readingsUsed: number;
  readonly readingsLeftOut: number;
  readonly days: number;
}

/** The loss does not show; what it is at most does. */
export interface WithinUncertainty extends Refusal<"drop-within-uncertainty"> {
  /** 97.5 % upper limit, share of full charge in 30 days. */
  readonly atMostPerMonth: number;
}

// As the room charge-state takes them: coefficient of the rest voltage and the temperature nobody measured.
const VOLTS_PER_KELVIN = 0.0012;
const VOLTS_PER_KELVIN_UNCERTAINTY = 0.0005;
const ASSUMED = { value: 25, standardUncertainty: 5.7735 } as const;
/** Relative densities of full and empty acid, standard uncertainty: they are the scale of the result. */
const FULL_GRAVITY_UNCERTAINTY = 0.01;
const EMPTY_GRAVITY_UNCERTAINTY = 0.02;
/** Above the full voltage by more, the battery holds surface charge [V]. */
const FULL_MARGIN_VOLTS = 0.12;
/** How much faster the first half may fall than the second. Our choice: doubling, beyond what the readings' uncertainty explains. */
const FASTEST_START = 2;

/**
 * Rate of self-discharge from voltages read days apart while nothing is connected.
 *
 * Scope: no load at all (a parasitic draw looks the same: what is measured is the loss of charge, not its cause), acid mixed,
 * voltage settled. Each voltage is referred to 25 °C and turned to a charge by the curve of the chemistry; what all
 * readings share (meter error, the battery's own curve) cancels. In the uncertainty: readings, temperatures,
 * scatter about the line, span of the acid. Not in it: how the loss depends on temperature, and one failing cell.
 *
 * @param rests readings of one or several rests; each rest has its own start, all share one rate
 * @param options see {@link SelfDischargeOptions}
 * @returns loss in a day and in 30 days
 * @throws RangeError for numbers that are none, uncertainty of a voltage 0, temperatures outside −55..60 °C, unknown chemistry
 *
 * Refuses `too-few-readings` (fewer than two after `settleDays` in a rest), `rest-too-short`, `still-relaxing` (above full charge, or
 * the first half falls at twice the rate of the second), `voltage-rises`, `drop-within-uncertainty` (with the upper limit), and
 * voltages no acid gives.
 *
 * Equation: z = (gravity(V + 0.0012·(25 − T)) − empty)/(full − empty); weighted line z = z₀ − rate·days. Source: Bode 1977 and
 * `charge-state`; limits our choice.
 * @example
 * ```ts
 * import { selfDischargeFromRests } from "crankworthy/logs";
 * const temperatureCelsius = { value: 20, standardUncertainty: 0.5 };
 * const rests = [[2, 12.700], [16, 12.685], [30, 12.670], [44, 12.655]].map(([days, value]) => (
 *   { days, volts: { value, standardUncertainty: 0.001 }, temperatureCelsius }));
 * const loss = selfDischargeFromRests(rests, { chemistry: "flooded-calcium" });
 * loss.chargePerMonth.value; // => 0.0375
 * ```
 */
export function selfDischargeFromRests(
  rests: readonly LongRestReading[],
  options: SelfDischargeOptions,
):
  | SelfDischarge
  | WithinUncertainty
  | VoltageRefusal
  | Refusal<"too-few-readings" | "rest-too-short" | "still-relaxing" | "voltage-rises"> {
  const { chemistry, settleDays = 1, leastDays = 7 } = options;
  requireFinite("settleDays", settleDays, 0, 1e6);
  requirePositive("leastDays", leastDays);
  const ofChemistry = defaultAcid(chemistry);
  const acid = options.acid ?? ofChemistry;
  const fullVolts = fullChargeVolts(acid);
  const span = acid.fullGravity - acid.emptyGravity;
  const points: Point[] = [];
  for (const [i, reading] of rests.entries()) {
    const { volts, temperatureCelsius: t = ASSUMED, rest = 0, days } = reading;
    requireFinite(`rests[${i}].days`, days, 0, 1e6);
    requireFinite(`rests[${i}].rest`, rest);
    requireEstimate(`rests[${i}].volts`, volts, 0, 1e6);
    requirePositiveEstimate(`rests[${i}].volts.standardUncertainty`, {
      value: volts.standardUncertainty,
      standardUncertainty: 0,
    });
    requireEstimate(`rests[${i}].temperatureCelsius`, t, -55, 60);
    if (days < settleDays) continue;
    const volts25 = volts.value + VOLTS_PER_KELVIN * (25 - t.value);
    if (volts25 > fullVolts + FULL_MARGIN_VOLTS) return relaxing();
    const [above, here, below] = [0.01, 0, -0.01].map((step) => gravityFromVolts(volts25 + step));
    if (isRefusal(here!)) return here;
    // At the last 10 mV of the model its slope is that on the inner side.
    const [upper, up] = isRefusal(above!) ? [here!, 0] : [above!, 0.01];
    const [lower, down] = isRefusal(below!) ? [here!, 0] : [below!, 0.01];
    const slope = ((upper as number) - (lower as number)) / (up + down) / span;
    const u = Math.hypot(
      volts.standardUncertainty,
      VOLTS_PER_KELVIN * t.standardUncertainty,
      VOLTS_PER_KELVIN_UNCERTAINTY * (t.value - 25),
    );
    const charge = ((here as number) - acid.emptyGravity) / span;
    points.push({ rest, days, volts: volts25, charge, chargeUncertainty: slope * u, voltsUncertainty: u });
  }
  const groups = groupsOf(points);
  if (groups.length === 0)
    return refuse(
      "too-few-readings",
      "No rest has two readings after the voltage settled.",
      "Readings days apart in one rest.",
    );
  const days = Math.max(...groups.map((group) => group.at(-1)!.days - group[0]!.days));
  if (days < leastDays)
    return refuse(
      "rest-too-short",
      "The readings lie too near to each other.",
      "A reading some weeks later.",
    );
  const early = slopeOf(
    groups.map((group) => group.slice(0, (group.length + 1) >> 1)),
    "charge",
  );
  const late = slopeOf(
    groups.map((group) => group.slice(group.length >> 1)),
    "charge",
  );
  if (early && late) {
    const more = late.value - early.value;
    const significant = more > 2 * Math.hypot(early.standardUncertainty, late.standardUncertainty);
    if (significant && early.value < FASTEST_START * Math.min(0, late.value)) return relaxing();
  }
  const charge = slopeOf(groups, "charge");
  const volts = slopeOf(groups, "volts");
  if (!charge || !volts)
    return refuse(
      "too-few-readings",
      "All readings are of the same day.",
      "Readings days apart in one rest.",
    );
  const rate = -charge.value;
  const ofSpan = (rate * Math.hypot(FULL_GRAVITY_UNCERTAINTY, EMPTY_GRAVITY_UNCERTAINTY)) / span;
  const perDay = { value: rate, standardUncertainty: Math.hypot(charge.standardUncertainty, ofSpan) };
  const perMonth = { value: 30 * rate, standardUncertainty: 30 * perDay.standardUncertainty };
  const intervalPerMonth = interval95(perMonth);
  if (rate < -1.96 * charge.standardUncertainty)
    return refuse(
      "voltage-rises",
      "The voltage rises during the rest.",
      "Whether a charger was on, and the temperatures.",
    );
  if (rate <= 1.96 * charge.standardUncertainty)
    return {
      ...refuse(
        "drop-within-uncertainty",
        "The drop is no larger than its uncertainty.",
        "A longer rest, or readings with measured temperature.",
      ),
      atMostPerMonth: Math.max(0, intervalPerMonth.upper),
    };
  return {
    chargePerDay: perDay,
    chargePerMonth: perMonth,
    intervalPerMonth,
    voltsPerDay: { value: -volts.value, standardUncertainty: volts.standardUncertainty },
    readingsUsed: groups.reduce((sum, group) => sum + group.length, 0),
    readingsLeftOut: rests.length - groups.reduce((sum, group) => sum + group.length, 0),
    days,
  };
}

interface Point {
  readonly rest: number;
  readonly days: number;
  readonly volts: number;
  readonly charge: number;
  readonly voltsUncertainty: number;
  readonly chargeUncertainty: number;
}

const relaxing = () =>
  refuse(
    "still-relaxing",
    "The voltage still settles from the charge before the rest.",
    "Readings that begin later in the rest.",
  );

/** By rest, in order of time; a rest of a single reading says nothing of a rate. */
function groupsOf(points: readonly Point[]): Point[][] {
  const groups = new Map<number, Point[]>();
  for (const one of points) groups.set(one.rest, [...(groups.get(one.rest) ?? []), one]);
  return [...groups.values()]
    .map((group) => group.sort((a, b) => a.days - b.days))
    .filter((group) => group.length > 1);
}

/** Common slope of lines with their own starts, weighted; widened where the points scatter more than they should. */
function slopeOf(groups: readonly (readonly Point[])[], what: "charge" | "volts"): Estimate | undefined {
  const weightOf = (one: Point) =>
    1 / (what === "charge" ? one.chargeUncertainty : one.voltsUncertainty) ** 2;
  let [xx, xy, yy, spare] = [0, 0, 0, -1];
  for (const group of groups) {
    let [weights, meanDays, mean] = [0, 0, 0];
    for (const one of group) {
      const weight = weightOf(one);
      weights += weight;
      meanDays += weight * one.days;
      mean += weight * one[what];
    }
    meanDays /= weights;
    mean /= weights;
    for (const one of group) {
      const weight = weightOf(one);
      xx += weight * (one.days - meanDays) ** 2;
      xy += weight * (one.days - meanDays) * (one[what] - mean);
      yy += weight * (one[what] - mean) ** 2;
    }
    spare += group.length - 1;
  }
  if (!(xx > 0)) return undefined;
  const value = xy / xx;
  const scatter = spare > 0 ? Math.max(1, Math.max(0, yy - value * xy) / spare) : 1;
  return { value, standardUncertainty: Math.sqrt(scatter / xx) };
}
