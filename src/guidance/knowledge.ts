import type { Evaluation } from "../evaluate/evaluation.js";
import type { BatteryRecord } from "../evaluate/record.js";
import { type Estimate, normalCdf } from "../numeric/index.js";
import type { DecisionPolicy } from "../verdict/index.js";
import { LOAD_MODEL_UNCERTAINTY_VOLTS, loadTestMargin, SHOWN_WHEN_SHORT } from "./model.js";
import type { GuidancePrior } from "./prior.js";

/** Cells of the grids over charge (0 to 1) and ability (0.05 to 1.3), by their middles. */
const CHARGE_STEP = 0.05;
export const charges: readonly number[] = /* @__PURE__ */ Array.from(
  { length: 20 },
  (_, i) => (i + 0.5) * CHARGE_STEP,
);
export const ABILITY_STEP = 0.03125;
export const abilityCells: readonly number[] = /* @__PURE__ */ Array.from(
  { length: 40 },
  (_, i) => 0.05 + (i + 0.5) * ABILITY_STEP,
);

/**
 * What is known of charge and ability. Readings of ability depend on the charge only by whether it is sufficient, so the
 * joint distribution is two rows.
 */
export interface Knowledge {
  /** Probability of each cell of charge. */
  readonly charge: readonly number[];
  /** Probability of each cell of ability together with a sufficient charge; with {@link short} it adds up to 1. */
  readonly charged: readonly number[];
  /** The same together with too little charge. */
  readonly short: readonly number[];
}

/** After a completed charge nine batteries of ten are nearly full; the tenth did not take it. Our choice. */
const AFTER_CHARGE = { value: 0.95, standardUncertainty: 0.08, share: 0.9 } as const;

const bell = (x: number, value: number, u: number): number => Math.exp(-0.5 * ((x - value) / u) ** 2);

/** The share of a cell that lies above a limit. */
export const above = (middle: number, step: number, limit: number): number =>
  Math.min(1, Math.max(0, (middle + step / 2 - limit) / step));

// Density of a reading that shows any share of the ability, on the scale of `bell`.
function shownWhenShort({ value, standardUncertainty }: Estimate, ability: number): number {
  const u = Math.max(0.02, standardUncertainty);
  const { lower, upper } = SHOWN_WHEN_SHORT;
  const inside = normalCdf((upper * ability - value) / u) - normalCdf((lower * ability - value) / u);
  return (inside * u * Math.sqrt(2 * Math.PI)) / ((upper - lower) * ability);
}

/** The prior, weighed with what the evaluation's estimates say: charge, ability by every way, load test. */
export function knowledgeOf(
  record: BatteryRecord,
  evaluation: Evaluation | undefined,
  prior: GuidancePrior,
  policy: DecisionPolicy,
): Knowledge {
  const ofCharge = chargeWeights(record, evaluation, prior);
  const ofAbility = normalized(
    abilityCells.map((a) => bell(a, prior.ability.value, prior.ability.standardUncertainty)),
  );
  const margin = evaluation?.loadTest?.marginVolts;
  const limit = evaluation?.loadTest?.limitVolts ?? 0;
  const spread = Math.hypot(margin?.standardUncertainty ?? 0, LOAD_MODEL_UNCERTAINTY_VOLTS);
  const loaded = abilityCells.map((a, j) => {
    const weight = ofAbility[j]!;
    if (!margin) return weight;
    return weight * bell(margin.value, loadTestMargin(a, limit, policy.unserviceableFraction), spread);
  });
  const readings = evaluation?.ability ?? [];
  const whenCharged = abilityCells.map((a) =>
    readings.reduce(
      (weight, { ratio }) => weight * bell(ratio.value, a, Math.max(0.02, ratio.standardUncertainty)),
      1,
    ),
  );
  const whenShort = abilityCells.map((a) =>
    readings.reduce((weight, { ratio }) => weight * shownWhenShort(ratio, a), 1),
  );
  const sufficient = charges.map((s) => above(s, CHARGE_STEP, policy.sufficientCharge));
  const enough = total(ofCharge.map((weight, i) => weight * sufficient[i]!));
  const charged = loaded.map((weight, j) => enough * weight * whenCharged[j]!);
  const short = loaded.map((weight, j) => (1 - enough) * weight * whenShort[j]!);
  const sum = total(charged) + total(short);
  // Readings that no imagined battery could give leave the prior as it was.
  if (!(sum > 1e-12))
    return {
      charge: ofCharge,
      charged: ofAbility.map((weight) => enough * weight),
      short: ofAbility.map((weight) => (1 - enough) * weight),
    };
  const now = total(charged) / sum;
  const scale = [now / Math.max(enough, 1e-12), (1 - now) / Math.max(1 - enough, 1e-12)] as const;
  return {
    charge: ofCharge.map(
      (weight, i) => weight * (scale[0] * sufficient[i]! + scale[1] * (1 - sufficient[i]!)),
    ),
    charged: charged.map((weight) => weight / sum),
    short: short.map((weight) => weight / sum),
  };
}

const total = (weights: readonly number[]): number => weights.reduce((sum, one) => sum + one, 0);

function chargeWeights(
  record: BatteryRecord,
  evaluation: Evaluation | undefined,
  prior: GuidancePrior,
): number[] {
  const before = normalized(
    charges.map((s) => bell(s, prior.charge.value, prior.charge.standardUncertainty)),
  );
  const { value, standardUncertainty, share } = AFTER_CHARGE;
  const after = normalized(charges.map((s) => bell(s, value, standardUncertainty)));
  const known =
    record.conditions?.chargeCompleted === true
      ? before.map((weight, i) => (1 - share) * weight + share * after[i]!)
      : before;
  const reading = evaluation?.charge;
  if (!reading) return known;
  const { stateOfCharge, bound } = reading;
  const weighed = charges.map((s, i) => {
    const away = (stateOfCharge.value - s) / stateOfCharge.standardUncertainty;
    return known[i]! * (bound === "upper" ? normalCdf(away) : Math.exp(-0.5 * away * away));
  });
  return weighed.some((weight) => weight > 1e-9) ? normalized(weighed) : nearest(stateOfCharge.value);
}

// A reading far outside 0..1: all weight goes to that end.
const nearest = (charge: number): number[] =>
  charges.map((_, i) => Number(i === (charge > 0.5 ? charges.length - 1 : 0)));

function normalized(weights: readonly number[]): number[] {
  const sum = total(weights);
  return weights.map((one) => one / sum);
}

/** Probability of each ability, whatever the charge. */
export const abilityMarginal = ({ charged, short }: Knowledge): number[] =>
  charged.map((weight, j) => weight + short[j]!);

/** Three points that have the mean, variance and third and fourth moment of a standard normal distribution. */
const NOISE = [
  [-1.7320508075688772, 1 / 6],
  [0, 2 / 3],
  [1.7320508075688772, 1 / 6],
] as const;

/**
 * A few equally probable values that stand for a distribution: the middles of its slices.
 *
 * @param values with their weights, in any order; `noise` standard deviation added to each
 */
export function representatives(
  values: readonly number[],
  weights: readonly number[],
  noise: (value: number) => number,
  count = 7,
): number[] {
  const points: (readonly [number, number])[] = [];
  values.forEach((value, i) => {
    if (weights[i]! > 1e-6)
      for (const [z, weight] of NOISE) points.push([value + z * noise(value), weight * weights[i]!]);
  });
  points.sort((one, other) => one[0] - other[0]);
  const whole = points.reduce((sum, [, weight]) => sum + weight, 0);
  const found: number[] = [];
  let passed = 0;
  for (const [value, weight] of points) {
    passed += weight;
    while (found.length < count && passed >= ((found.length + 0.5) / count) * whole) found.push(value);
  }
  return found;
}

/** Shares that stand for {@link SHOWN_WHEN_SHORT}. */
const SHARES = /* @__PURE__ */ [0.1, 0.3, 0.5, 0.7, 0.9].map(
  (part) => SHOWN_WHEN_SHORT.lower + part * (SHOWN_WHEN_SHORT.upper - SHOWN_WHEN_SHORT.lower),
);

/** What a cranking estimate would show as a fraction of the rating, before its own uncertainty. */
export function shownAbility({ charged, short }: Knowledge): {
  readonly values: readonly number[];
  readonly weights: readonly number[];
} {
  return {
    values: [...abilityCells, ...SHARES.flatMap((share) => abilityCells.map((a) => share * a))],
    weights: [...charged, ...SHARES.flatMap(() => short.map((weight) => weight / SHARES.length))],
  };
}
