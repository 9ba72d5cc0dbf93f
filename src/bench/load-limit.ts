import {
  type Estimate,
  type Refusal,
  refuse,
  requireEstimate,
  requireKey,
  requirePositive,
} from "../numeric/index.js";
import { derive } from "../sources/derive.js";
import type { Derivation } from "../sources/index.js";
import { fahrenheitFromCelsius } from "../temperature/index.js";
import { type LoadLimitProfile, loadLimitProfiles } from "./load-test.data.js";

export type LoadRule = "half-cranking-rating" | "three-times-capacity";

export interface LoadTestCurrent {
  readonly amperes: number;
  readonly rule: LoadRule;
  /** What three times the capacity would give, when both are known: up to a third apart [A]. */
  readonly otherRuleAmperes?: number;
}

/**
 * Current to draw in an adjustable-load test, and by which rule.
 *
 * @param known cold-cranking rating [A] and 20 h capacity [Ah], either or both (> 0)
 * @param derivation receives the step when given
 * @returns current [A]: half the rating; three times the capacity only when no rating is known; refusal with neither
 *
 * Source: vocational texts and workshop manuals (read); the order of the rules is our choice.
 * @example
 * ```ts
 * import { loadTestCurrentAmperes } from "crankworthy/bench";
 * loadTestCurrentAmperes({ coldCrankingAmperes: 520, capacityAmpereHours: 65 });
 * // { amperes: 260, rule: "half-cranking-rating", otherRuleAmperes: 195 }
 * const plain = loadTestCurrentAmperes({ capacityAmpereHours: 60 });
 * "amperes" in plain && plain.amperes; // => 180
 * ```
 */
export function loadTestCurrentAmperes(
  known: { readonly coldCrankingAmperes?: number; readonly capacityAmpereHours?: number },
  derivation?: Derivation,
): LoadTestCurrent | Refusal<"no-rating"> {
  const { coldCrankingAmperes: rating, capacityAmpereHours: capacity } = known;
  if (rating !== undefined) requirePositive("coldCrankingAmperes", rating);
  if (capacity !== undefined) requirePositive("capacityAmpereHours", capacity);
  if (rating !== undefined) {
    derive(derivation, "load of the load test", "rating / 2", { rating }, rating / 2, "A", HALF_RATING);
    const half = { amperes: rating / 2, rule: "half-cranking-rating" } as const;
    return capacity === undefined ? half : { ...half, otherRuleAmperes: 3 * capacity };
  }
  if (capacity !== undefined) {
    const inputs = { capacity };
    derive(derivation, "load of the load test", "3 × capacity", inputs, 3 * capacity, "A", THREE_CAPACITY);
    return { amperes: 3 * capacity, rule: "three-times-capacity" };
  }
  return refuse(
    "no-rating",
    "Neither cold-cranking rating nor capacity is known.",
    "The rating or the capacity on the label.",
  );
}

const HALF_RATING = { source: "load-half-rating", standing: "read" } as const;
const THREE_CAPACITY = { source: "load-three-capacity", standing: "read" } as const;
const COLUMNS = { 12: 1, 6: 2 } as const;

export type LoadLimitRefusal = Refusal<"temperature-outside-table" | "no-six-volt-column">;

/**
 * Minimum voltage 15 s into the load at a temperature.
 *
 * @param temperatureCelsius of the electrolyte with its uncertainty [°C]; −18 °C counts as the row printed "0 °F / −18 °C"
 * @param options profile (default `usual`), nominal voltage 12 or 6 V
 * @returns limit [V]; refused below 0 °F, where the table says nothing, and above a profile that ends
 *
 * The uncertainty holds what the sources disagree about, ±0.1 V from 10 °F up, widening to −0.5/+0 V at 0 °F (root mean
 * square deviation from the printed value; half of it for 6 V), and the temperature times the slope of the table.
 * Equation: straight line in °F (or printed °C) between rows, flat above 70 °F. Source: US Army TM 5-4210-230-14&P-1, Table 5 (read).
 * @example
 * ```ts
 * import { loadTestLimitVolts } from "crankworthy/bench";
 * const limit = loadTestLimitVolts({ value: 18.333, standardUncertainty: 0 });
 * "value" in limit && limit.value; // => 9.55
 * ```
 */
export function loadTestLimitVolts(
  temperatureCelsius: Estimate,
  options: { readonly profile?: keyof typeof loadLimitProfiles; readonly nominalVolts?: 12 | 6 } = {},
): Estimate | LoadLimitRefusal {
  const { profile = "usual", nominalVolts = 12 } = options;
  const celsius = temperatureCelsius.value;
  requireEstimate("temperatureCelsius", temperatureCelsius);
  requireKey("profile", profile, loadLimitProfiles);
  requireKey("nominalVolts", String(nominalVolts), COLUMNS);
  const table: LoadLimitProfile = loadLimitProfiles[profile];
  const column = COLUMNS[nominalVolts];
  if (table.rows[0]![column] === undefined)
    return refuse("no-six-volt-column", `The profile ${profile} has no 6 V column.`, "The profile usual.");
  const read = limitAt(table, column, celsius);
  if (read === undefined)
    return refuse(
      "temperature-outside-table",
      `The load-test table ${profile} says nothing about ${celsius} °C.`,
      "A battery brought to 0 to 30 °C before the test.",
    );
  const fahrenheit = fahrenheitFromCelsius(celsius);
  const spread = sourceSpreadVolts(fahrenheit) * (nominalVolts / 12);
  // Mean slope over ±2 K, so that the flat part next to a step is not taken for certain; the edges count one-sided.
  const reach = Math.max(2, temperatureCelsius.standardUncertainty);
  const warmer = limitAt(table, column, celsius + reach) ?? read;
  const colder = limitAt(table, column, celsius - reach) ?? 2 * read - warmer;
  const slope = (warmer - colder) / (2 * reach);
  return {
    value: read,
    standardUncertainty: Math.hypot(spread, slope * temperatureCelsius.standardUncertainty),
  };
}

function limitAt(table: LoadLimitProfile, column: 1 | 2, celsius: number): number | undefined {
  const { rows } = table;
  const last = rows[rows.length - 1]!;
  let x = table.unit === "F" ? fahrenheitFromCelsius(celsius) : celsius;
  // "0 °F / −18 °C" is one printed row.
  if (table.unit === "F" && rows[0]![0] === 0 && x < 0 && celsius >= -18) x = 0;
  if (x > last[0]) return table.flatAbove ? last[column] : undefined;
  if (x < rows[0]![0]) return column === 1 ? table.colderVolts : undefined;
  let i = 1;
  while (x > rows[i]![0]) i++;
  const [cold, warm] = [rows[i - 1]!, rows[i]!];
  return cold[column]! + ((x - cold[0]) / (warm[0] - cold[0])) * (warm[column]! - cold[column]!);
}

// Root mean square deviation of a rectangle from −a to +b about the printed value: √((a³ + b³)/(3(a + b))).
function sourceSpreadVolts(fahrenheit: number): number {
  const cold = Math.min(1, Math.max(0, (10 - fahrenheit) / 10));
  const below = 0.1 + 0.4 * cold;
  const above = 0.1 - 0.1 * cold;
  return Math.sqrt((below ** 3 + above ** 3) / (3 * (below + above)));
}
