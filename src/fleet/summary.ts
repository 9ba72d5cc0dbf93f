import type { Evaluation } from "../evaluate/index.js";

/** Counts over many evaluations. Plain data: two summaries merge by adding, in any order. */
export interface Summary {
  /** Evaluated records. */
  readonly count: number;
  /** Records that could not be used. */
  readonly refused: number;
  readonly byCondition: Readonly<Record<string, number>>;
  readonly byAction: Readonly<Record<string, number>>;
  readonly byChemistry: Readonly<Record<string, number>>;
  readonly byRatingStandard: Readonly<Record<string, number>>;
  readonly byFinding: Readonly<Record<string, number>>;
}

const tables = ["byCondition", "byAction", "byChemistry", "byRatingStandard", "byFinding"] as const;

/** The summary of nothing: the neutral element of {@link mergeSummaries}. */
export const emptySummary: Summary = {
  count: 0,
  refused: 0,
  byCondition: {},
  byAction: {},
  byChemistry: {},
  byRatingStandard: {},
  byFinding: {},
};

/**
 * The summary of one evaluation, or of one refused record.
 *
 * @param evaluation leave out for a record that could not be used
 */
export function summaryOf(evaluation?: Evaluation): Summary {
  if (!evaluation) return { ...emptySummary, refused: 1 };
  const { verdict, identity, findings } = evaluation;
  const byFinding: Record<string, number> = {};
  for (const { code } of findings) byFinding[code] = 1;
  return {
    count: 1,
    refused: 0,
    byCondition: { [verdict.condition]: 1 },
    byAction: { [verdict.action]: 1 },
    byChemistry: { [identity.chemistry]: 1 },
    byRatingStandard: { [identity.rating?.standard ?? "none"]: 1 },
    byFinding,
  };
}

/**
 * Adds two summaries. Associative and commutative; `byFinding` counts records, not findings. The keys come out sorted,
 * so that equal summaries print equally.
 *
 * @example
 * ```ts
 * import { emptySummary, mergeSummaries, summaryOf } from "crankworthy/fleet";
 * mergeSummaries(emptySummary, summaryOf()).refused; // => 1
 * ```
 */
export function mergeSummaries(a: Summary, b: Summary): Summary {
  const merged = { count: a.count + b.count, refused: a.refused + b.refused } as Record<string, unknown>;
  for (const table of tables) {
    const sum: Record<string, number> = {};
    for (const key of [...new Set([...Object.keys(a[table]), ...Object.keys(b[table])])].sort())
      sum[key] = (a[table][key] ?? 0) + (b[table][key] ?? 0);
    merged[table] = sum;
  }
  return merged as unknown as Summary;
}
