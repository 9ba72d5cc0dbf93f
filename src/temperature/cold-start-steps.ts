import type { Estimate } from "../numeric/index.js";
import { derive, deriveProbability } from "../sources/derive.js";
import type { Derivation } from "../sources/index.js";
import type { TemperatureTable } from "./table.js";

/** Provenance of what the cold-start model chooses itself. */
export const COLD_START_CHOICE = { source: "temperature-choice", standing: "our-choice" } as const;

/** What the steps of one morning are made from. */
export interface MorningGrounds {
  readonly celsius: number;
  /** At −18 °C, with the charge and the needed voltage in it [A]. */
  readonly ability: number;
  /** At its reference [A]. */
  readonly demand: number;
  readonly abilityRatio: number;
  readonly demandRatio: number;
  readonly abilityTable: TemperatureTable;
  readonly demandTable: TemperatureTable;
}

/** Steps of ability, demand, margin and probability on one morning. */
export function deriveMorning(
  derivation: Derivation,
  grounds: MorningGrounds,
  morning: {
    readonly abilityAmperes: Estimate;
    readonly demandAmperes: Estimate;
    readonly marginAmperes: Estimate;
    readonly startProbability: number;
  },
): void {
  const { celsius: temperature, ability, demand, abilityTable, demandTable } = grounds;
  const { abilityAmperes, demandAmperes, marginAmperes, startProbability } = morning;
  derive(
    derivation,
    "cranking ability on the coldest morning",
    "ability × ratio of the table to −18 °C",
    { ability, ratio: grounds.abilityRatio, table: abilityTable.id, temperature },
    abilityAmperes,
    "A",
    abilityTable,
  );
  derive(
    derivation,
    "cranking demand on the coldest morning",
    "demand × ratio of the table to its reference",
    { demand, ratio: grounds.demandRatio, table: demandTable.id, temperature },
    demandAmperes,
    "A",
    demandTable,
  );
  derive(
    derivation,
    "margin on the coldest morning",
    "ability − demand",
    { ability: abilityAmperes.value, demand: demandAmperes.value },
    marginAmperes,
    "A",
    COLD_START_CHOICE,
  );
  deriveProbability(
    derivation,
    "probability of a start on the coldest morning",
    marginAmperes,
    startProbability,
  );
}

/** Step of one end of the 95 % interval of the lowest start. */
export function deriveIntervalEnd(derivation: Derivation, end: "lower" | "upper", celsius: number): void {
  derive(
    derivation,
    `lowest temperature of a start, ${end} end of the 95 % interval`,
    "Φ(margin / u) = share",
    { share: end === "lower" ? 0.025 : 0.975 },
    celsius,
    "°C",
    { source: "jcgm-106", standing: "from-memory" },
  );
}

/** Step of one factor of the ability. */
export function factorStep(
  derivation: Derivation | undefined,
  quantity: string,
  formula: string,
  inputs: Readonly<Record<string, number>>,
  value: number,
  standardUncertainty: number,
): void {
  derive(derivation, quantity, formula, inputs, { value, standardUncertainty }, "1", COLD_START_CHOICE);
}
