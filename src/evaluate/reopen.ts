import { type DecisionPolicy, policyWith } from "../verdict/index.js";
import { type Dossier, type DossierCheck, type SealKey, verifyDossier } from "../warranty/index.js";
import { type Difference, differenceOf } from "./difference.js";
import { tryEvaluate } from "./evaluate.js";
import type { Evaluation } from "./evaluation.js";
import { type InputIssue, issue, picture } from "./issue.js";
import { LIBRARY_VERSION } from "./version.js";

/** A dossier opened by this version of the library. */
export interface ReopenedDossier {
  /** Whether it is as it was sealed. What follows is only as good as this. */
  readonly check: DossierCheck;
  /** Versions that sealed and that opened it. */
  readonly versions: { readonly sealed?: string; readonly opened: string };
  /** As sealed. */
  readonly before?: Evaluation;
  /** Of the sealed record, by this version and under the sealed policy. */
  readonly after?: Evaluation;
  /** Every number and verdict that moved. Empty also when there is nothing to compare: look at `before` and `after`. */
  readonly differences: readonly Difference[];
  /** Why this version does not take the sealed record or policy (path `policy`). */
  readonly issues?: readonly InputIssue[];
}

/**
 * Opens a dossier: verifies it, evaluates the sealed record with this version, and lists everything that moved.
 *
 * An altered dossier is evaluated all the same, so that both sides see what the alteration does; `check` says that it is
 * altered. The sealed policy is used, and a derivation is made when one was sealed.
 *
 * @param dossier its text, or the object
 * @param options `key`: the one it was sealed with
 * @returns check, both evaluations, differences; never throws for bad content
 * @throws RangeError for a key that is too short
 * @throws Error where there is no Web Crypto
 * @example
 * ```ts
 * import { evaluate, LIBRARY_VERSION, reopenDossier } from "crankworthy/evaluate";
 * import { sealDossier } from "crankworthy/warranty";
 * const record = {
 *   identity: { chemistry: "flooded", rating: { standard: "sae-j537", amperes: 600 } },
 *   measurements: { restVolts: 12.62 },
 * };
 * const dossier = await sealDossier({ record, evaluation: evaluate(record), libraryVersion: LIBRARY_VERSION });
 * const reopened = await reopenDossier(dossier);
 * reopened.check.answer; // => "intact"
 * reopened.differences; // => []
 * ```
 */
export async function reopenDossier(
  dossier: string | Dossier,
  options: { readonly key?: SealKey } = {},
): Promise<ReopenedDossier> {
  const check = await verifyDossier(dossier, options);
  if (!check.dossier) return { check, versions: { opened: LIBRARY_VERSION }, differences: [] };
  const { record, libraryVersion } = check.dossier;
  const versions = { sealed: String(libraryVersion), opened: LIBRARY_VERSION };
  // What a dossier holds is checked no further than its frame: nothing below may rely on the shape of the evaluation.
  const before = check.dossier.evaluation as Evaluation;
  const policy = check.dossier.policy as Partial<DecisionPolicy> | undefined;
  const unknownPolicy = policy && policyIssue(policy);
  if (unknownPolicy) return { check, versions, before, differences: [], issues: [unknownPolicy] };
  const result = tryEvaluate(record, {
    ...(policy && { policy }),
    ...(before.derivation && { explain: true }),
  });
  if (!result.ok) return { check, versions, before, differences: [], issues: result.issues };
  const after = result.evaluation;
  return { check, versions, before, after, differences: differenceOf(before, after) };
}

// A policy is an argument elsewhere, so a wrong one throws; here it came with the dossier.
function policyIssue(policy: Partial<DecisionPolicy>): InputIssue | undefined {
  try {
    policyWith(policy);
    return undefined;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return issue("out-of-range", "policy", picture(policy), "a policy of this version", error.message);
  }
}
