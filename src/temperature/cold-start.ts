import {
  COVERAGE_FACTOR_95,
  type Estimate,
  type Interval,
  type Mutable,
  probabilityPositive,
  type Refusal,
  refuse,
  requireEstimate,
  requireFinite,
  requirePositiveEstimate,
} from "../numeric/index.js";
import { derive } from "../sources/derive.js";
import type { Derivation } from "../sources/index.js";
import { between, lerp, type Side, scaled } from "./cold-start-sides.js";
import { COLD_START_CHOICE, deriveIntervalEnd, deriveMorning, factorStep } from "./cold-start-steps.js";
import { abilityAgainstRating, crankingDemandTables } from "./cranking.data.js";
import type { AbilityTable } from "./cranking-ability.js";
import type { DemandTable } from "./cranking-demand.js";
import { bends, covers, type OutsideTable, outsideTable, readRatio, sharedRange } from "./table.js";

/** Temperature of the cold-cranking ratings [°C]. */
const RATING_CELSIUS = -18;
/** End voltage of the rating [V]. */
const RATING_VOLTS = 7.2;
/** Zero-current voltage of the straight line U(I) at −18 °C [V]: U0 − 7.2 is 4.0 to 4.6 V (from memory). */
const ZERO_CURRENT_VOLTS = 11.5;
const ZERO_CURRENT_UNCERTAINTY = 0.17;

/**
 * Loss of cranking ability from full to empty, as a share: illustrative, no published law for starter batteries.
 * Voltage and resistance alone take 0.4; an empty battery gives next to nothing (0.9). Middle and rectangular spread.
 */
export const chargeSensitivityDefault: Estimate = { value: 0.65, standardUncertainty: 0.15 };

/** What {@link coldStartMargin} works from. */
export interface ColdStartInput {
  /** Today's cranking ability when charged, at −18 °C and 7.2 V: ability ratio × rating [A] (> 0). */
  readonly abilityAmperes: Estimate;
  /** State of charge [1] (0.3..1.2); left out: charged, and said so. */
  readonly stateOfCharge?: Estimate;
  /** Current the starter draws in this vehicle [A] (> 0). */
  readonly demandAmperes: Estimate;
  /** Temperature at which that demand was found [°C]. */
  readonly demandReferenceCelsius: number;
  /** Coldest morning to expect [°C]. */
  readonly coldestMorningCelsius?: number;
  /** Voltage the battery must hold while cranking [V] (7.2..9.6), default 7.2, the end voltage of the rating. */
  readonly neededVolts?: number;
  /** Ability against temperature, any 100 % point; must cover −18 °C. */
  readonly abilityTable?: AbilityTable;
  readonly demandTable?: DemandTable;
  /** Share of ability lost from full to empty [1], default {@link chargeSensitivityDefault}. */
  readonly chargeSensitivity?: Estimate;
}

/** The crossing lies outside the tables: at or below their coldest, or above their warmest temperature. */
export interface CelsiusBound {
  readonly bound: "at-or-below" | "above";
  readonly celsius: number;
}

/** Ability against demand on one morning. */
export interface ColdMorning {
  readonly abilityAmperes: Estimate;
  readonly demandAmperes: Estimate;
  /** Ability minus demand [A]. */
  readonly marginAmperes: Estimate;
  /** Probability that ability exceeds demand, normal model. */
  readonly startProbability: number;
}

/** What the numbers rest on without having been measured. */
export type ColdStartAssumption =
  | "charged"
  | "charge-dependence-illustrative"
  | "voltage-of-rating"
  | "temperature-tables-of-the-trade";

export interface ColdStart {
  /** Lowest temperature at which ability still meets demand. */
  readonly lowestStartCelsius: Estimate | CelsiusBound;
  /** About 95 %; an end that lies outside the tables is absent. */
  readonly intervalCelsius: Partial<Interval>;
  /** Range both tables cover. */
  readonly coveredCelsius: Interval;
  readonly atColdestMorning?: ColdMorning | OutsideTable;
  readonly assumptions: readonly ColdStartAssumption[];
}

export type ColdStartRefusal = OutsideTable | Refusal<"charge-outside-range">;

/**
 * The lowest temperature at which a battery as it is today still meets what its engine asks for.
 *
 * In scope: a ranking of "how much reserve is left", with the uncertainty of tables that contradict each other. Out of
 * scope: oil grade, frozen electrolyte, engine electronics. Ability is a current at a fixed end voltage; it scales with
 * a table relative to its value at −18 °C, so at −18 °C only ability and charge count. Monotone in both.
 *
 * @param input see {@link ColdStartInput}
 * @param derivation receives the steps when given
 * @returns lowest start temperature [°C] with interval, and the coldest morning [A, 1]; refusals: charge outside 0.3..1.2 (charge
 *   first), a table that does not cover −18 °C or the reference of the demand
 *
 * Equations: ability(T) = A·(U0 − U)/(U0 − 7.2)·(1 − k·(1 − SoC))·a(T)/a(−18); demand(T) = D·d(T)/d(Tref);
 * lowest start: ability(T) = demand(T); start probability = Φ(margin/u), u from both sides in quadrature.
 * Source: our choice over published tables, see {@link abilityAgainstRating} and {@link crankingDemandTables}.
 * @example
 * ```ts
 * import { coldStartMargin } from "crankworthy/temperature";
 * const start = coldStartMargin({
 *   abilityAmperes: { value: 400, standardUncertainty: 30 },
 *   demandAmperes: { value: 180, standardUncertainty: 15 },
 *   demandReferenceCelsius: 20,
 *   coldestMorningCelsius: -10,
 * });
 * "lowestStartCelsius" in start && "value" in start.lowestStartCelsius && start.lowestStartCelsius.value; // => -19.5
 * ```
 */
export function coldStartMargin(
  input: ColdStartInput,
  derivation?: Derivation,
): ColdStart | ColdStartRefusal {
  const {
    abilityAmperes,
    stateOfCharge,
    demandAmperes,
    demandReferenceCelsius,
    neededVolts = RATING_VOLTS,
    abilityTable = abilityAgainstRating,
    demandTable = crankingDemandTables.between,
    chargeSensitivity = chargeSensitivityDefault,
  } = input;
  requirePositiveEstimate("abilityAmperes", abilityAmperes);
  requirePositiveEstimate("demandAmperes", demandAmperes);
  requireEstimate("chargeSensitivity", chargeSensitivity, 0, 1);
  requireFinite("neededVolts", neededVolts, RATING_VOLTS, 9.6);
  if (!covers(abilityTable, RATING_CELSIUS)) return outsideTable(abilityTable, RATING_CELSIUS);
  if (!covers(demandTable, demandReferenceCelsius)) return outsideTable(demandTable, demandReferenceCelsius);

  let ability = abilityAmperes.value;
  let relative = abilityAmperes.standardUncertainty / ability;
  if (stateOfCharge) {
    requireEstimate("stateOfCharge", stateOfCharge);
    if (stateOfCharge.value < 0.3 || stateOfCharge.value > 1.2)
      return refuse(
        "charge-outside-range",
        "Cranking ability follows no published law below 30 % charge, and above 120 % the charge is wrong.",
        "A charged battery and a rested voltage.",
      );
    const missing = 1 - stateOfCharge.value;
    const factor = 1 - chargeSensitivity.value * missing;
    const u = Math.hypot(
      chargeSensitivity.standardUncertainty * missing,
      chargeSensitivity.value * stateOfCharge.standardUncertainty,
    );
    ability *= factor;
    relative = Math.hypot(relative, u / factor);
    const inputs = { sensitivity: chargeSensitivity.value, charge: stateOfCharge.value };
    const formula = "1 − sensitivity × (1 − charge)";
    factorStep(derivation, "charge factor", formula, inputs, factor, u);
  }
  if (neededVolts > RATING_VOLTS) {
    const span = ZERO_CURRENT_VOLTS - RATING_VOLTS;
    const share = (ZERO_CURRENT_VOLTS - neededVolts) / span;
    const u = ((1 - share) * ZERO_CURRENT_UNCERTAINTY) / span;
    ability *= share;
    relative = Math.hypot(relative, u / share);
    const inputs = { zeroCurrent: ZERO_CURRENT_VOLTS, needed: neededVolts, rating: RATING_VOLTS };
    const formula = "(zeroCurrent − needed) / (zeroCurrent − rating)";
    factorStep(derivation, "share of the current at the needed voltage", formula, inputs, share, u);
  }
  const demand = demandAmperes.value;
  const demandRelative = demandAmperes.standardUncertainty / demand;

  const at = (celsius: number): Side => ({
    celsius,
    ability: readRatio(abilityTable, celsius, RATING_CELSIUS),
    demand: readRatio(demandTable, celsius, demandReferenceCelsius),
  });
  const amperes = ({ ability: a, demand: d }: Side): ColdMorning => {
    const supplied = scaled(ability, relative, a.value, a.standardUncertainty);
    const asked = scaled(demand, demandRelative, d.value, d.standardUncertainty);
    const marginAmperes = {
      value: supplied.value - asked.value,
      standardUncertainty: Math.hypot(supplied.standardUncertainty, asked.standardUncertainty),
    };
    return {
      abilityAmperes: supplied,
      demandAmperes: asked,
      marginAmperes,
      startProbability: probabilityPositive(marginAmperes),
    };
  };

  // Between these temperatures both ratios are straight lines; their uncertainties are taken as such too.
  const covered = sharedRange(abilityTable, demandTable);
  if (!(covered.lower < covered.upper)) return outsideTable(demandTable, RATING_CELSIUS);
  const sides = bends(covered, abilityTable, demandTable, [RATING_CELSIUS, demandReferenceCelsius]).map(at);
  const shifted = (cold: Side, warm: Side, t: number, z: number): number => {
    const a = ability * lerp(cold.ability.value, warm.ability.value, t);
    const d = demand * lerp(cold.demand.value, warm.demand.value, t);
    if (z === 0) return a - d;
    const ua = ability * lerp(cold.ability.standardUncertainty, warm.ability.standardUncertainty, t);
    const ud = demand * lerp(cold.demand.standardUncertainty, warm.demand.standardUncertainty, t);
    return a - d + z * Math.sqrt((a * relative) ** 2 + ua * ua + (d * demandRelative) ** 2 + ud * ud);
  };
  // Coming from the warm side: where margin + z·u first falls below zero, and the slope of the margin there.
  const crossing = (z: number): { celsius: number; slope: number } | CelsiusBound => {
    let i = 0;
    while (i < sides.length && shifted(sides[i]!, sides[i]!, 0, z) >= 0) i++;
    if (i === 0) return { bound: "above", celsius: covered.upper };
    if (i === sides.length) return { bound: "at-or-below", celsius: covered.lower };
    const cold = sides[i]!;
    const warm = sides[i - 1]!;
    const atCold = shifted(cold, warm, 0, 0);
    const rise = shifted(cold, warm, 1, 0) - atCold;
    let low = 0;
    let high = 1;
    if (z === 0) high = -atCold / rise;
    else
      for (let step = 0; step < 24; step++) {
        const middle = (low + high) / 2;
        if (shifted(cold, warm, middle, z) < 0) low = middle;
        else high = middle;
      }
    return {
      celsius: lerp(cold.celsius, warm.celsius, high),
      slope: rise / (warm.celsius - cold.celsius),
    };
  };

  const centre = crossing(0);
  const upper = crossing(-COVERAGE_FACTOR_95);
  const lower = crossing(COVERAGE_FACTOR_95);
  const lowestStartCelsius =
    "bound" in centre
      ? centre
      : {
          value: centre.celsius,
          standardUncertainty:
            amperes(between(sides, centre.celsius)).marginAmperes.standardUncertainty / centre.slope,
        };
  if (derivation) {
    const inputs = { rating: abilityAmperes.value, factors: ability / abilityAmperes.value };
    const result = { value: ability, standardUncertainty: ability * relative };
    const quantity = "cranking ability at −18 °C";
    derive(derivation, quantity, "rating × factors", inputs, result, "A", COLD_START_CHOICE);
  }
  derivation?.push({
    quantity: "lowest temperature of a start",
    formula: "ability × a(T)/a(−18) = demand × d(T)/d(reference)",
    inputs: {
      ability,
      demand,
      reference: demandReferenceCelsius,
      abilityTable: abilityTable.id,
      demandTable: demandTable.id,
      coveredFrom: covered.lower,
      coveredTo: covered.upper,
    },
    result: "bound" in centre ? `${centre.bound} ${centre.celsius}` : centre.celsius,
    unit: "°C",
    ...("value" in lowestStartCelsius && { standardUncertainty: lowestStartCelsius.standardUncertainty }),
    ...COLD_START_CHOICE,
  });

  const coldest = input.coldestMorningCelsius;
  const outside =
    coldest !== undefined && [abilityTable, demandTable].find((table) => !covers(table, coldest));
  const intervalCelsius: Mutable<Partial<Interval>> = {};
  if (!("bound" in lower)) intervalCelsius.lower = lower.celsius;
  if (!("bound" in upper)) intervalCelsius.upper = upper.celsius;
  if (derivation)
    for (const [end, celsius] of Object.entries(intervalCelsius))
      deriveIntervalEnd(derivation, end as keyof Interval, celsius);
  const assumptions: ColdStartAssumption[] = [
    "temperature-tables-of-the-trade",
    stateOfCharge ? "charge-dependence-illustrative" : "charged",
  ];
  if (neededVolts === RATING_VOLTS) assumptions.push("voltage-of-rating");
  const start: Mutable<ColdStart> = {
    lowestStartCelsius,
    intervalCelsius,
    coveredCelsius: covered,
    assumptions,
  };
  if (coldest !== undefined) {
    if (outside) start.atColdestMorning = outsideTable(outside, coldest);
    else {
      const side = between(sides, coldest);
      const morning = amperes(side);
      start.atColdestMorning = morning;
      const ratios = { abilityRatio: side.ability.value, demandRatio: side.demand.value };
      const grounds = { celsius: coldest, ability, demand, abilityTable, demandTable, ...ratios };
      if (derivation) deriveMorning(derivation, grounds, morning);
    }
  }
  return start;
}
